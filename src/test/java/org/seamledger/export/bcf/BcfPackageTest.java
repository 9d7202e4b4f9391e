package org.seamledger.export.bcf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamledger.FarModel;
import org.seamledger.bcf.BcfReader;
import org.seamledger.bcf.BcfVersion;
import org.seamledger.bcf.SharedBcf;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Remark;
import org.seamledger.finding.Severity;
import org.seamledger.finding.TopicAnswer;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

class BcfPackageTest {

  private static final String EYE = "//PerspectiveCamera/CameraViewPoint/";
  private static final String FORWARD = "//PerspectiveCamera/CameraDirection/";
  private static final String UP = "//PerspectiveCamera/CameraUpVector/";

  private static final int RED = 0xD4151B;

  @TempDir
  private Path folder;

  private static Takeoff analysed(String... files) {
    return Analysis.run(Inputs.ofFiles(java.util.stream.Stream.of(files).map(Path::of).toList()), Progress.NONE);
  }

  private static void valid(Takeoff takeoff, BcfVersion version) throws Exception {
    Unzipped zip = Unzipped.of(takeoff, Unzipped.plain(version));
    SharedBcf.validate(version, "version.xsd", zip.files().get("bcf.version"));
    SharedBcf.validate(version, "project.xsd", zip.files().get("project.bcfp"));
    if (version == BcfVersion.V3_0) {
      SharedBcf.validate(version, "extensions.xsd", zip.files().get("extensions.xml"));
    }
    assertThat(zip.named("markup.bcf")).hasSameSizeAs(takeoff.findings());
    for (String markup : zip.named("markup.bcf")) {
      SharedBcf.validate(version, "markup.xsd", zip.files().get(markup));
      assertThat(zip.files()).containsKey(markup.replace("markup.bcf", ""));
    }
    for (String viewpoint : zip.named(".bcfv")) {
      SharedBcf.validate(version, "visinfo.xsd", zip.files().get(viewpoint));
      assertThat(zip.files()).containsKey(viewpoint.replace("viewpoint.bcfv", "snapshot.png"));
    }
  }

  @ParameterizedTest
  @EnumSource(BcfVersion.class)
  void validByTheStandardsSchemas(BcfVersion version) throws Exception {
    valid(analysed("ifc-samples/gatehouse.ifc"), version);
    valid(analysed("ifc-samples/infirmary/roof.ifc", "ifc-samples/infirmary/services.ifc"), version);
    valid(Takeoffs.boatHouse("Roof", List.of(new AcceptedFinding("kind/unclassified", "rake1", List.of("0roof"), 1,
        new Acceptance("A. Roofer", "2024-05-31", "seen")))), version);
  }

  /** Markup, control and right-to-left characters, and one that XML can't hold. */
  @ParameterizedTest
  @EnumSource(BcfVersion.class)
  void validWhateverNamesAre(BcfVersion version) throws Exception {
    String name = "<b>\"A\" & 'B'</b> ]]> \u0000\u0007\u001b[31m \u202eגג\u202c سقف \ud83c\udfe0 \uffff\ufffe \ud800";
    Takeoff hostile = Takeoffs.boatHouse(name);
    List<Finding> findings = new ArrayList<>(hostile.findings());
    findings.add(new Finding("design/" + name, Severity.WARNING, name, "", List.of("0roof", name, "0hGinPNwiSDrAurecV39RR"))
        .saying(List.of(new Remark(name, "", name), new Remark("", "2024-05-31", "\u0001so\n\u0002"))));
    findings.add(new Finding("design/blank", Severity.WARNING, " \u0000 ", "eave1", List.of()).accepted(new Acceptance(name, "", name)));
    valid(hostile.withFindings(findings), version);
    Unzipped zip = Unzipped.of(hostile.withFindings(findings), Unzipped.plain(version));
    assertThat(zip.named("markup.bcf")).allSatisfy(m -> assertThat(new String(zip.files().get(m), StandardCharsets.UTF_8))
        .doesNotContain("<b>", "\u202e", "\u0007"));
  }

  @ParameterizedTest
  @EnumSource(BcfVersion.class)
  void noFindings(BcfVersion version) throws Exception {
    valid(Takeoffs.boatHouse().withFindings(List.of()), version);
  }

  /** A model without a roof has findings, and nothing to be seen. */
  @ParameterizedTest
  @EnumSource(BcfVersion.class)
  void noRoof(BcfVersion version) throws Exception {
    Path model = Files.writeString(folder.resolve("bare.ifc"), """
        ISO-10303-21;HEADER;FILE_DESCRIPTION((''),'2;1');FILE_NAME('bare','','',(''),'','','');FILE_SCHEMA(('IFC4'));ENDSEC;DATA;
        #1=IFCPROJECT('0hGinPNwiSDrAurecV39RR',$,'Bare',$,$,$,$,$,$);
        ENDSEC;END-ISO-10303-21;
        """);
    Takeoff bare = analysed(model.toString());
    assertThat(bare.findings()).isNotEmpty();
    valid(bare, version);
    Unzipped zip = Unzipped.of(bare, Unzipped.plain(version));
    assertThat(zip.named(".png")).isEmpty();
    assertThat(zip.text(zip.named("markup.bcf").get(0), "//CreationDate")).isEqualTo("1970-01-01T00:00:00Z");
  }

  @Test
  void sameModelSameBytes() {
    byte[] one = Unzipped.bytes(analysed("ifc-samples/gatehouse.ifc"), Unzipped.plain(BcfVersion.V3_0));
    assertThat(Unzipped.bytes(analysed("ifc-samples/gatehouse.ifc"), Unzipped.plain(BcfVersion.V3_0))).isEqualTo(one);
  }

  /** What another program needs to know of a topic, for each finding in the order in which people read them. */
  @Test
  void topicSaysWhatTheFindingSays() throws Exception {
    Takeoff takeoff = analysed("ifc-samples/gatehouse.ifc");
    Unzipped zip =
        Unzipped.of(takeoff, new BcfOptions(BcfVersion.V3_0, "A. Planner", Optional.of(java.time.Instant.parse("2025-01-02T03:04:05Z"))));
    int place = 0;
    for (Finding f : takeoff.findings()) {
      String markup = takeoff.topicIds().get(place) + "/markup.bcf";
      assertThat(zip.text(markup, "//Topic/@Guid") + "/markup.bcf").isEqualTo(markup);
      assertThat(zip.text(markup, "//Topic/Title")).isEqualToIgnoringCase(f.message());
      assertThat(zip.text(markup, "//Topic/Description")).contains(f.code(), takeoff.advice().containsKey(f.code())
          ? takeoff.advice().get(f.code()).action() : "What to do: ");
      assertThat(zip.text(markup, "//Topic/Labels/Label[1]")).isEqualTo(f.code());
      assertThat(zip.text(markup, "//Topic/CreationAuthor")).isEqualTo("A. Planner");
      assertThat(zip.text(markup, "//Topic/CreationDate")).isEqualTo("2025-01-02T03:04:05Z");
      assertThat(zip.text(markup, "//Topic/@TopicStatus")).isEqualTo("Open");
      assertThat(zip.text("extensions.xml", "//TopicType[.='" + zip.text(markup, "//Topic/@TopicType") + "']")).isNotEmpty();
      assertThat(zip.text(markup.replace("markup.bcf", "viewpoint.bcfv"), "count(//Selection/Component)"))
          .isEqualTo(String.valueOf(selected(takeoff, f)));
      place++;
    }
    assertThat(zip.named("markup.bcf")).hasSize(place);
  }

  private static long selected(Takeoff takeoff, Finding f) {
    List<String> elements = !f.elements().isEmpty() || f.junction().isEmpty() ? f.elements()
        : takeoff.junctions().stream().filter(j -> j.junction().id().equals(f.junction())).findFirst().orElseThrow().junction().elements();
    return elements.stream().distinct().count();
  }

  /**
   * Projected by the camera that the file states, as the standard says (vertical field of view), the line that the file states is red
   * in the picture. The camera stands above the line, its vectors are unit vectors and square to each other.
   */
  @ParameterizedTest
  @EnumSource(BcfVersion.class)
  void pictureShowsTheLineThroughTheStatedCamera(BcfVersion version) throws Exception {
    Takeoff takeoff = analysed("ifc-samples/gatehouse.ifc");
    Unzipped zip = Unzipped.of(takeoff, Unzipped.plain(version));
    int lines = 0;
    for (String file : zip.named(".bcfv")) {
      Vec3 forward = vector(zip, file, FORWARD);
      Vec3 up = vector(zip, file, UP);
      assertThat(forward.length()).isCloseTo(1, within(1e-8));
      assertThat(up.length()).isCloseTo(1, within(1e-8));
      assertThat(forward.dot(up)).isCloseTo(0, within(1e-8));
      assertThat(zip.number(file, "//FieldOfView")).isBetween(45.0, 60.0);
      if (!zip.text(file, "//Line").isEmpty()) {
        Vec3 eye = vector(zip, file, EYE);
        int pieces = (int) zip.number(file, "count(//Line)");
        int red = 0;
        for (int i = 1; i <= pieces; i++) {
          Vec3 middle = vector(zip, file, "//Line[" + i + "]/StartPoint/").towards(vector(zip, file, "//Line[" + i + "]/EndPoint/"), 0.5);
          assertThat(eye.z()).isGreaterThan(middle.z() + 2);
          red += colour(zip, file, middle.minus(eye)) == RED ? 1 : 0;
        }
        // A pipe hides what of its line is behind it.
        assertThat(red).as("%s", file).isGreaterThan(pieces == 1 ? 0 : pieces / 3);
        lines++;
      }
    }
    assertThat(lines).isGreaterThan(1);
  }

  private static int colour(Unzipped zip, String viewpoint, Vec3 to) throws Exception {
    var picture = ImageIO.read(new ByteArrayInputStream(zip.files().get(viewpoint.replace("viewpoint.bcfv", "snapshot.png"))));
    assertThat(picture.getWidth()).isLessThanOrEqualTo(1500);
    Vec3 forward = vector(zip, viewpoint, FORWARD);
    Vec3 up = vector(zip, viewpoint, UP);
    double half = Math.tan(Math.toRadians(zip.number(viewpoint, "//FieldOfView") / 2));
    double across = to.dot(forward.cross(up)) / to.dot(forward) / half;
    double high = to.dot(up) / to.dot(forward) / half;
    double scale = picture.getHeight() / 2.0;
    return picture.getRGB((int) (picture.getWidth() / 2.0 + across * scale), (int) (scale - high * scale)) & 0xFFFFFF;
  }

  private static Vec3 vector(Unzipped zip, String file, String path) throws Exception {
    return new Vec3(zip.number(file, path + "X"), zip.number(file, path + "Y"), zip.number(file, path + "Z"));
  }

  /** The boat house lies at 450 km east and 5,100 km north of its origin: the camera does, too. */
  @Test
  void farFromTheOrigin() throws Exception {
    Takeoff takeoff = Takeoffs.boatHouse();
    Unzipped zip = Unzipped.of(takeoff, Unzipped.plain(BcfVersion.V3_0));
    Junction rake = takeoff.junctions().stream().map(j -> j.junction()).filter(j -> j.id().equals("rake1")).findFirst().orElseThrow();
    String file = zip.named(".bcfv").stream().filter(f -> hasLineTo(zip, f, takeoff.world(rake.path().get(0)))).findFirst().orElseThrow();
    assertThat(vector(zip, file, EYE).distance(takeoff.world(rake.path().get(0)))).isBetween(3.0, 40.0);
  }

  /**
   * A model read at a thousand kilometres from its origin: every line lies on a junction of the near one, moved by as much, within 1 mm.
   * (Which of a chimney's junctions a finding names goes by their ids, and these go by the place.)
   */
  @ParameterizedTest
  @EnumSource(BcfVersion.class)
  void linesAndCamerasOfAModelFarOff(BcfVersion version) throws Exception {
    Path model = Path.of("ifc-samples/gatehouse.ifc");
    Path moved = FarModel.of(model, 0.001, folder.resolve("gatehouse.ifc"));
    Takeoff still = analysed(model.toString());
    List<Vec3> near = still.junctions().stream().flatMap(j -> j.junction().path().stream()).map(still::world).toList();
    Unzipped zip = Unzipped.of(analysed(moved.toString()), Unzipped.plain(version));
    List<Vec3> far = corners(zip);
    assertThat(far).isNotEmpty();
    Vec3 by = new Vec3(FarModel.METRES, FarModel.METRES, 0);
    assertThat(far.stream().filter(f -> near.stream().noneMatch(n -> f.distance(n.plus(by)) < 1e-3)).toList()).isEmpty();
    for (String file : zip.named(".bcfv")) {
      if (!zip.text(file, "//Line").isEmpty()) {
        assertThat(vector(zip, file, EYE).distance(vector(zip, file, "//Line[1]/StartPoint/"))).isLessThan(100);
      }
    }
  }

  private static List<Vec3> corners(Unzipped zip) throws Exception {
    List<Vec3> corners = new ArrayList<>();
    for (String file : zip.named(".bcfv")) {
      for (int i = 1; i <= (int) zip.number(file, "count(//Line)"); i++) {
        corners.add(vector(zip, file, "//Line[" + i + "]/StartPoint/"));
        corners.add(vector(zip, file, "//Line[" + i + "]/EndPoint/"));
      }
    }
    return corners;
  }

  private static boolean hasLineTo(Unzipped zip, String file, Vec3 start) {
    try {
      return !zip.text(file, "//Line").isEmpty() && vector(zip, file, "//Line[1]/StartPoint/").distance(start) < 1e-5;
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  @Tag("slow")
  @Test
  void tenThousandFindings() throws Exception {
    Takeoff takeoff = analysed("ifc-samples/gatehouse.ifc");
    List<String> junctions = takeoff.junctions().stream().map(j -> j.junction().id()).toList();
    List<Finding> many = IntStream.range(0, 10_000).mapToObj(i -> new Finding("design/many", Severity.WARNING, "number " + i,
        junctions.get(i % junctions.size()), List.of("0hGinPNwiSDrAurecV39RR"))).toList();
    Takeoff large = takeoff.withFindings(many);
    Path file = Files.write(folder.resolve("many.bcf"), Unzipped.bytes(large, Unzipped.plain(BcfVersion.V3_0)));
    assertThat(BcfReader.read(file, "many.bcf").topics().stream().map(TopicAnswer::guid).distinct()).hasSize(10_000);
  }

  /** What was accepted and said comes back as it went out, and nothing of it twice. */
  @ParameterizedTest
  @EnumSource(BcfVersion.class)
  void reviewsComeBack(BcfVersion version) throws Exception {
    Takeoff plain = Takeoffs.boatHouse();
    Takeoff reviewed = plain.withFindings(plain.findings().stream().map(f -> switch (f.code()) {
      case "kind/unclassified" -> f.saying(List.of(new Remark("B", "2024-05-30T10:00:00Z", "look again")))
          .accepted(new Acceptance("A. Roofer", "2024-05-31T08:00:00Z", "measured on site"));
      case "design/by-hand" -> f.saying(List.of(new Remark("C", "2024-06-01T00:00:00Z", "why?")));
      default -> f;
    }).toList());
    Path file = Files.write(folder.resolve("back.bcf"), Unzipped.bytes(reviewed, Unzipped.plain(version)));
    List<TopicAnswer> answers = BcfReader.read(file, "back.bcf").topics();
    assertThat(plain.withAnswers(answers).findings()).isEqualTo(reviewed.findings());
    assertThat(reviewed.withAnswers(answers).findings()).isEqualTo(reviewed.findings());
  }
}
