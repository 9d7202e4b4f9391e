package org.seamledger.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.bimserver.interfaces.objects.SExtendedData;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.SharedModels;
import org.seamledger.junction.Junction;
import org.seamledger.source.ModelServerException.Reason;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Takeoff;

/** The whole story against a real BIMserver: check in, list, download, analyse, answer, read the answer back. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
@Tag("slow")
class BimServerStoryTest {

  private static final Path GATEHOUSE = Path.of("ifc-samples/gatehouse.ifc");
  private static final Path SCHOOL = Path.of("ifc-samples/school.ifc");
  /** A hundredth of a millimetre: what STEP text keeps of a length in millimetres and more. */
  private static final double EXACT_M = 1e-5;

  @TempDir
  private Path folder;

  private final RealBimServer real = RealBimServer.shared();

  @AfterAll
  static void releaseTheServer() {
    RealBimServer.release();
  }

  private ModelServer connect() {
    return KnownServers.read(real.list(folder, "site")).connect("site");
  }

  private static Takeoff analyze(ModelSource model) {
    return Analysis.run(Inputs.of(List.of(model)), Progress.NONE);
  }

  /** Each junction's kind and length by its id. */
  private static Map<String, String> lines(Takeoff takeoff) {
    Map<String, String> lines = new TreeMap<>();
    takeoff.detailed().forEach(d -> lines.put(d.junction().junction().id(), d.junction().kind().toString()));
    return lines;
  }

  private static Map<String, Double> lengths(Takeoff takeoff) {
    Map<String, Double> lengths = new TreeMap<>();
    for (var detailed : takeoff.detailed()) {
      Junction junction = detailed.junction().junction();
      lengths.put(junction.id(), junction.lengthM());
    }
    return lengths;
  }

  private static void assertSame(Takeoff served, Takeoff fromFile) {
    assertThat(lines(served)).isNotEmpty().isEqualTo(lines(fromFile));
    Map<String, Double> expected = lengths(fromFile);
    lengths(served).forEach((id, length) -> assertThat(length).as(id).isCloseTo(expected.get(id), within(EXACT_M)));
    assertThat(served.findings()).extracting(f -> f.code())
        .containsExactlyElementsOf(fromFile.findings().stream().map(f -> f.code()).toList());
  }

  private static byte[] bytes(ModelSource source) throws IOException {
    try (OpenModel model = source.open()) {
      return Channels.newInputStream(model.channel()).readAllBytes();
    }
  }

  @Test
  @Order(1)
  void whatIsCheckedInIsListedDownloadedAnalysedAndAnswered() throws Exception {
    long project = real.addProject("Gate house", "ifc4");
    real.checkIn(project, GATEHOUSE, "as designed");
    real.checkIn(project, SCHOOL, "grown into a school");
    try (ModelServer server = connect()) {
      assertThat(server.projects()).contains(new ServedProject(project, "Gate house", "IFC4"));
      List<ServedRevision> revisions = server.revisions(project);
      assertThat(revisions).extracting(ServedRevision::number).containsExactly(1, 2);
      assertThat(revisions).extracting(ServedRevision::comment).containsExactly("as designed", "grown into a school");
      assertThat(revisions.get(0).id()).isLessThan(revisions.get(1).id());

      ModelSource first = server.model(revisions.get(0));
      assertThat(first.name()).isEqualTo("Gate house, revision 1");
      Takeoff served = analyze(first);
      assertSame(served, analyze(new ModelFile(GATEHOUSE)));
      assertThat(served.models()).singleElement().satisfies(m -> assertThat(m.file()).isEqualTo("Gate house, revision 1"));
      assertSame(analyze(server.model(revisions.get(1))), analyze(new ModelFile(SCHOOL)));
      assertThat(lines(analyze(first))).as("another download of the same").isEqualTo(lines(served));

      answer(server, revisions);
    }
  }

  private void answer(ModelServer server, List<ServedRevision> revisions) {
    byte[] ledger = "{\"contract\": 1, \"name\": \"Traufe, Ortgang – ü\"}".getBytes(StandardCharsets.UTF_8);
    assertThat(server.attachments(revisions.get(0))).isEmpty();
    server.attach(revisions.get(0), new Attachment("seamledger ledger", "application/json", ledger));
    server.attach(revisions.get(0), new Attachment("seamledger report", "text/plain", "ridge".getBytes(StandardCharsets.UTF_8)));
    assertThat(server.attachments(revisions.get(0))).extracting(Attachment::title, Attachment::mediaType)
        .containsExactly(tuple("seamledger ledger", "application/json"),
            tuple("seamledger report", "text/plain"));
    assertThat(server.attachments(revisions.get(0)).get(0).content()).isEqualTo(ledger);
    assertThat(server.attachments(revisions.get(1))).isEmpty();
    // The same with the library's own client, as any other program would read it.
    byte[] read = real.withClient(client -> {
      SExtendedData data = client.getServiceInterface().getAllExtendedDataOfRevision(revisions.get(0).id()).stream()
          .filter(d -> d.getTitle().equals("seamledger ledger")).findFirst().orElseThrow();
      return client.getServiceInterface().getFile(data.getFileId()).getData();
    });
    assertThat(read).isEqualTo(ledger);
  }

  @Test
  @Order(2)
  void downloadsOfOneRevisionDifferInNoIdThatThisProgramUses() throws IOException {
    long project = real.addProject("Twice", "ifc4");
    real.checkIn(project, GATEHOUSE, "one");
    real.checkIn(project, GATEHOUSE, "the same again");
    try (ModelServer server = connect()) {
      List<ServedRevision> both = server.revisions(project);
      Map<String, String> expected = lines(analyze(new ModelFile(GATEHOUSE)));
      for (ServedRevision revision : both) {
        String text = new String(bytes(server.model(revision)), StandardCharsets.UTF_8);
        assertThat(text).isNotEqualTo(Files.readString(GATEHOUSE));
        assertThat(lines(analyze(server.model(revision)))).isEqualTo(expected);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"d01, ifc4", "d04_, ifc4", "d05, ifc2x3tc1", "d10, ifc2x3tc1", "d13, ifc2x3tc1"})
  @Order(3)
  void modelsOfAuthoringToolsComeBackAsTheyWere(String prefix, String schema) throws IOException {
    Path file = SharedModels.named(prefix);
    long project = real.addProject("From a tool, " + prefix, schema);
    real.checkIn(project, file, "");
    try (ModelServer server = connect()) {
      assertSame(analyze(server.model(server.revisions(project).get(0))), analyze(new ModelFile(file)));
    }
  }

  @Test
  @Order(4)
  void whoMayNotIsRefused() {
    long project = real.addProject("Private", "ifc4");
    real.checkIn(project, GATEHOUSE, "");
    ServedRevision revision;
    try (ModelServer server = connect()) {
      revision = server.revisions(project).get(0);
    }
    ModelServerException wrong = catchThrowableOfType(ModelServerException.class,
        () -> KnownServers.read(real.list(folder, "site", real.user(), "not-the-password")).connect("site"));
    assertThat(wrong.reason()).isEqualTo(Reason.REFUSED);
    assertThat(wrong).hasMessageEndingWith("refuses user \"" + real.user() + "\" with this password");

    real.addUser("guest@seamledger.test", "guest-password");
    try (ModelServer guest = KnownServers.read(real.list(folder, "site", "guest@seamledger.test", "guest-password")).connect("site")) {
      assertThat(guest.projects()).extracting(ServedProject::name).doesNotContain("Private");
      assertThatThrownBy(() -> guest.model(revision).open()).isInstanceOf(ModelServerException.class)
          .hasMessageContaining("guest@seamledger.test");
    }
  }

  @Test
  @Order(5)
  void aServerThatIsKilledIsUnreachable() {
    try (ModelServer server = connect()) {
      long project = real.addProject("Short-lived", "ifc4");
      real.checkIn(project, SCHOOL, "");
      ServedRevision revision = server.revisions(project).get(0);
      ModelSource model = server.model(revision);
      real.kill();
      long begin = System.nanoTime();
      ModelServerException said = catchThrowableOfType(ModelServerException.class, () -> model.open());
      assertThat(said.reason()).isEqualTo(Reason.UNREACHABLE);
      assertThat(TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - begin)).isLessThan(30);
    }
  }
}
