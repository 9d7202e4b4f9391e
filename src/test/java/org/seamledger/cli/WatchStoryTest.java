package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.bimserver.interfaces.objects.SExtendedData;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.Server;
import org.seamledger.http.setting.Options;
import org.seamledger.run.TakeoffAnalyzer;
import org.seamledger.source.KnownServers;
import org.seamledger.source.ModelServer;
import org.seamledger.source.RealBimServer;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;
import org.seamledger.takeoff.Analysis;
import org.seamledger.watch.Servers;

/**
 * The whole story against a real BIMserver: models are checked in, listed, analysed, watched, answered, and the answers are read back with
 * BIMserver's own client. The lengths come from the formulas of the sample ({@code gatehouse.expected.json}); the second revision's vent is
 * twice as thick, so that the line round it is twice as long (similar ellipses).
 */
@Tag("slow")
class WatchStoryTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final Path SAMPLES = Path.of("ifc-samples");

  @TempDir
  Path folder;
  RealBimServer real;
  Path list;
  String name;
  private long project;

  @AfterAll
  static void releaseTheServer() {
    RealBimServer.release();
  }

  @BeforeEach
  void checkInTheFirstRevision() {
    real = RealBimServer.shared();
    list = real.list(folder, "site");
    name = "Gatehouse " + System.nanoTime();
    project = real.addProject(name, "ifc4");
    real.checkIn(project, SAMPLES.resolve("gatehouse.ifc"), "as designed");
  }

  /** One run of the program: its exit status and what it said. */
  record Said(int status, String err) {
    List<String> events() {
      return err.lines().filter(l -> l.contains("event="))
          .map(l -> l.replaceFirst(".*event=(\\S+).*?( revision=\\d+)?( detail=.*)?$", "$1$2")).toList();
    }
  }

  private Said watch(String... more) {
    List<String> words = new ArrayList<>(
        List.of("watch", "site/" + name, "--servers", list.toString(), "--data", folder.resolve("data").toString(), "--once"));
    words.addAll(List.of(more));
    return program(words.toArray(String[]::new));
  }

  /** Runs the program with these words. */
  Said program(String... words) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int status = new Cli(Analysis::run, Environment.PLAIN).run(words, new ByteArrayOutputStream(),
        new PrintStream(err, true, StandardCharsets.UTF_8));
    return new Said(status, err.toString(StandardCharsets.UTF_8));
  }

  /** The service, with the data that the command keeps. */
  RunningService serve() throws IOException {
    Options options =
        Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).port(0).servers(Servers.of(KnownServers.read(list)))
            .watch(Duration.ofMillis(500));
    Server server = Server.start(options);
    return new RunningService() {
      @Override
      public String url() {
        return server.url();
      }

      @Override
      public void close() {
        server.close();
      }
    };
  }

  private void checkInTheVentMadeThicker() throws IOException {
    String ifc = Files.readString(SAMPLES.resolve("gatehouse.ifc"));
    String thicker = ifc.replaceFirst("(IFCCIRCLEPROFILEDEF\\([^)]*,)55\\.\\)", "$1110.)");
    assertThat(thicker).isNotEqualTo(ifc);
    real.checkIn(project, Files.writeString(folder.resolve("thicker.ifc"), thicker), "a thicker vent");
  }

  /**
   * What this program left with a revision, by title, as BIMserver's own client reads it; the server leaves reports of its own there too.
   */
  private Map<String, String> answers(int number) {
    return real.withClient(client -> {
      Map<String, String> found = new TreeMap<>();
      long revision = client.getServiceInterface().getAllRevisionsOfProject(project).stream().filter(r -> r.getId() == number).findFirst()
          .orElseThrow().getOid();
      for (SExtendedData data : client.getServiceInterface().getAllExtendedDataOfRevision(revision)) {
        if (!data.getTitle().startsWith("seamledger ")) {
          continue;
        }
        byte[] content = client.getServiceInterface().getFile(data.getFileId()).getData();
        assertThat(found.put(data.getTitle(), new String(content, StandardCharsets.UTF_8))).as("each document once").isNull();
      }
      return found;
    });
  }

  private static double length(JsonNode ledger, String kind) {
    double sum = 0;
    for (JsonNode j : ledger.path("junctions")) {
      sum += j.path("kind").textValue().equals(kind) ? j.path("lengthM").doubleValue() : 0;
    }
    return sum;
  }

  @Test
  void aRevisionIsAnsweredOnceAndTheNextOneComparedWithIt() throws IOException {
    JsonNode expected = MAPPER.readTree(SAMPLES.resolve("gatehouse.expected.json").toFile());
    try (ModelServer server = KnownServers.read(list).connect("site")) {
      assertThat(server.projects()).contains(new ServedProject(project, name, "IFC4"));
      assertThat(server.revisions(project)).extracting(ServedRevision::comment).containsExactly("as designed");
    }
    Said first = watch("--fail-on", "violation");
    assertThat(first.status()).as(first.err()).isZero();
    assertThat(first.events()).containsExactly("found revision=1", "downloaded revision=1", "analysing revision=1", "analysed revision=1",
        "answered revision=1");
    Map<String, String> one = answers(1);
    assertThat(one.keySet()).containsExactly("seamledger r0001 ledger.json", "seamledger r0001 report.txt");
    JsonNode ledger = MAPPER.readTree(one.get("seamledger r0001 ledger.json"));
    expected.path("lengthsM").properties().forEach(e -> {
      double sum = 0;
      for (JsonNode m : e.getValue()) {
        sum += m.doubleValue();
      }
      assertThat(length(ledger, e.getKey())).as(e.getKey()).isCloseTo(sum, within(1e-3 * sum));
    });
    assertThat(one.get("seamledger r0001 report.txt")).contains(name + ", revision 1", "Lengths by kind", "hip");

    checkInTheVentMadeThicker();
    Said second = watch("--fail-on", "warning");
    assertThat(second.status()).as("the roof has a warning: no cricket behind the chimney").isEqualTo(1);
    assertThat(second.events()).containsExactly("found revision=2", "downloaded revision=2", "analysing revision=2", "analysed revision=2",
        "answered revision=2");
    Map<String, String> two = answers(2);
    assertThat(two.keySet()).containsExactly("seamledger r0002 changes since r0001.json", "seamledger r0002 changes since r0001.txt",
        "seamledger r0002 ledger.json", "seamledger r0002 report.txt");
    JsonNode changes = MAPPER.readTree(two.get("seamledger r0002 changes since r0001.json"));
    assertThat(changes.path("added")).isEmpty();
    assertThat(changes.path("removed")).isEmpty();
    assertThat(changes.path("changed")).as("the line round the vent and no other").hasSize(1);
    assertThat(changes.path("same").intValue()).isEqualTo(13);
    JsonNode pipe = changes.path("changed").path(0);
    assertThat(pipe.path("after").path("kind").textValue()).isEqualTo("pipe");
    double round = expected.path("lengthsM").path("pipe").path(0).doubleValue();
    assertThat(pipe.path("before").path("lengthM").doubleValue()).isCloseTo(round, within(1e-3));
    assertThat(pipe.path("after").path("lengthM").doubleValue()).isCloseTo(2 * round, within(2e-3));
    assertThat(two.get("seamledger r0002 changes since r0001.txt")).contains(
        "what changed from revision 1 (as designed) to revision 2 (a thicker vent)",
        "0 added, 0 gone, 1 changed, 13 as before", "Difference in the order");

    Said third = watch();
    assertThat(third.status()).isZero();
    assertThat(third.events()).as("nothing is done twice over a restart").isEmpty();
    assertThat(answers(1)).isEqualTo(one);
    assertThat(answers(2)).isEqualTo(two);
  }

  @Test
  void theServiceShowsWhatTheCommandWatchedAndGoesOnWithIt() throws Exception {
    assertThat(watch().status()).isZero();
    try (RunningService service = serve()) {
      JsonNode before = json(service, "GET", "/api/watches", "").path("watches").path(0);
      assertThat(before.path("last").path("stage").textValue()).isEqualTo("answered");
      String at = "/api/servers/site/projects/" + project;
      assertThat(json(service, "PUT", at + "/watch", "{\"on\":true}").path("on").booleanValue()).isTrue();
      checkInTheVentMadeThicker();
      JsonNode after = until(() -> json(service, "GET", "/api/watches", "").path("watches").path(0).path("last"),
          last -> last.path("number").intValue() == 2 && last.path("stage").textValue().equals("answered"));
      assertThat(answers(2)).hasSize(4);
      JsonNode analysis = json(service, "GET", "/api/analyses/" + after.path("analysis").textValue(), "");
      assertThat(json(service, "GET", "/api/projects/" + analysis.path("project").textValue(), "").path("analyses")).hasSize(2);
      JsonNode revision = json(service, "GET", at + "/revisions", "").path("revisions").path(0);
      JsonNode begun = json(service, "POST", at + "/revisions/" + revision.path("id") + "/analyses", "");
      JsonNode done = until(() -> json(service, "GET", "/api/analyses/" + begun.path("id").textValue(), ""),
          a -> a.path("state").textValue().equals("done"));
      assertThat(done.path("files").path(0).path("name").textValue()).isEqualTo(name + ", revision 1");
      assertThat(answers(1)).as("asking again by hand leaves the answer alone").hasSize(2);
    }
    assertThat(watch().events()).isEmpty();
  }

  @Test
  void aWrongPasswordAProjectThatIsNotThereAndAServerThatIsDownAreLinesAndAStatus() {
    list = real.list(folder, "site", real.user(), "not the password");
    Said refused = watch();
    assertThat(refused.status()).isEqualTo(3);
    assertThat(refused.err()).contains("event=trouble server=site", "server/refused").doesNotContain("not the password").hasLineCount(1);
    list = real.list(folder, "site");
    name = "Nowhere";
    Said unknown = watch();
    assertThat(unknown.status()).isEqualTo(2);
    assertThat(unknown.err()).isEqualTo("seamledger: there is no project site/Nowhere\n");
  }

  @Test
  void aServerThatIsDownIsALineAndAStatus() throws IOException {
    list = Files.writeString(folder.resolve("down.properties"), "site.url=http://127.0.0.1:1\nsite.user=a\nsite.password=b\n");
    Files.setPosixFilePermissions(list, PosixFilePermissions.fromString("rw-------"));
    Said down = watch();
    assertThat(down.status()).isEqualTo(3);
    assertThat(down.err()).contains("event=trouble server=site", "server/unreachable").hasLineCount(1);
  }

  private static JsonNode json(RunningService service, String method, String path, String body) {
    try {
      HttpRequest request = HttpRequest.newBuilder(URI.create(service.url()).resolve(path)).header("Content-Type", "application/json")
          .method(method, HttpRequest.BodyPublishers.ofString(body)).build();
      HttpResponse<String> answer = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
      assertThat(answer.statusCode()).as(path + ": " + answer.body()).isLessThan(300);
      return MAPPER.readTree(answer.body());
    } catch (IOException | InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  private static JsonNode until(Supplier<JsonNode> question, Predicate<JsonNode> enough) throws InterruptedException {
    JsonNode answer = question.get();
    for (int i = 0; i < 240 && !enough.test(answer); i++) {
      Thread.sleep(250);
      answer = question.get();
    }
    assertThat(enough.test(answer)).as(answer.toString()).isTrue();
    return answer;
  }
}
