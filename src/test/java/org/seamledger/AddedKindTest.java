package org.seamledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.export.CsvLedger;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.PlanDrawing;
import org.seamledger.export.SectionDrawing;
import org.seamledger.export.TextReport;
import org.seamledger.shacl.ShapeExamplesTest;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Takeoff;

/** Adds a kind to a copy of the shapes as DEVELOPERS.md says, with the text that stands there, and looks for it in every output. */
class AddedKindTest {

  /** A gambrel: four of its rakes lie at faces of 60°, 12 ft long each by its own closed form. */
  private static final Path BARN = Path.of("ifc-samples", "barn.ifc");
  private static final String PREFIXES = """
      @prefix case: <#> .
      @prefix kind: <https://seamledger.org/kind#> .
      @prefix mf:   <http://www.w3.org/2001/sw/DataAccess/tests/test-manifest#> .
      @prefix owl:  <http://www.w3.org/2002/07/owl#> .
      @prefix rdfs: <http://www.w3.org/2000/01/rdf-schema#> .
      @prefix sh:   <http://www.w3.org/ns/shacl#> .
      @prefix sht:  <http://www.w3.org/ns/shacl-test#> .
      @prefix sl:   <https://seamledger.org/ns#> .

      """;

  @TempDir
  private static Path folder;
  private static Takeoff takeoff;

  @BeforeAll
  static void doWhatTheGuideSays() throws IOException {
    List<String> blocks = blocks();
    Path shapes = Path.of("shapes");
    String kinds = Files.readString(shapes.resolve("kinds.ttl"));
    String rake = "sh:node kind:FreeEdge ; sh:not kind:LevelFace , kind:FreeAcrossFall";
    assertThat(kinds).contains(rake);
    Files.writeString(folder.resolve("kinds.ttl"), kinds.replace(rake, rake + " , kind:SteepFace") + blocks.get(0));
    String details = Files.readString(shapes.resolve("details.ttl"));
    String asked = "sh:property [ sh:path sl:kind ; sh:hasValue \"rake\" ] ; sh:not case:Oblique";
    assertThat(details).contains(asked);
    Files.writeString(folder.resolve("details.ttl"),
        details.replace(asked, asked.replace("sh:hasValue \"rake\"", "sh:in ( \"rake\" \"steep-rake\" )")));
    Files.createDirectories(folder.resolve("tests/kinds"));
    Files.writeString(folder.resolve("tests/kinds/steep-rake.ttl"), PREFIXES + blocks.get(1));
    takeoff = Analysis.run(Inputs.ofFiles(List.of(BARN)).withShapes(Optional.of(folder)), Progress.NONE);
  }

  /** The Turtle in the paragraph about kinds. */
  private static List<String> blocks() throws IOException {
    String guide = Files.readString(Path.of("DEVELOPERS.md"));
    Matcher m = Pattern.compile("```turtle\n(.*?)```", Pattern.DOTALL).matcher(guide.substring(guide.indexOf("**A shape (a kind).**")));
    List<String> blocks = new ArrayList<>();
    while (m.find()) {
      blocks.add(m.group(1));
    }
    return blocks;
  }

  @Test
  void itsExamplesHold() throws Throwable {
    for (DynamicTest test : ShapeExamplesTest.tests(folder.resolve("tests/kinds/steep-rake.ttl")).toList()) {
      test.getExecutable().execute();
    }
  }

  @Test
  void linesAreOfIt() {
    assertThat(takeoff.junctions()).filteredOn(j -> j.kind().equals("steep-rake")).hasSize(4)
        .allSatisfy(j -> assertThat(j.junction().lengthM()).isCloseTo(12 * 0.3048, org.assertj.core.api.Assertions.within(1e-3)));
    assertThat(takeoff.junctions()).filteredOn(j -> j.kind().equals("rake")).hasSize(4);
    assertThat(takeoff.detailed()).filteredOn(j -> j.junction().kind().equals("steep-rake")).allMatch(j -> j.detail().id().equals("rake"));
  }

  @Test
  void everyOutputHasIt() throws IOException {
    String id = takeoff.junctions().stream().filter(j -> j.kind().equals("steep-rake")).findFirst().orElseThrow().junction().id();
    String json = written(JsonLedger::write);
    assertThat(json).contains("\"kind\" : \"steep-rake\"");
    assertThat(json.replaceAll("\\s+", " ")).contains("\"id\" : \"steep-rake\", \"label\" : \"steep rake\","
        + " \"meaning\" : \"free edge parallel to the slope of a steep face\", \"family\" : \"edge\", \"planLine\" : \"edge\"");
    assertThat(written(CsvLedger::write)).containsPattern("\\n" + id + ",steep-rake,");
    String report = written(TextReport::write);
    assertThat(report).containsPattern("steep-rake +4 +14\\.630 .*free edge parallel to the slope of a steep f");
    assertThat(report.indexOf("steep-rake")).as("in its place, after the rake").isGreaterThan(report.indexOf("  rake "));
    String plan = PlanDrawing.svg(takeoff);
    assertThat(plan).contains("rake; steep rake</text>").containsPattern("class=\"junction edge seal-tape\" data-id=\"" + id + "\"");
    assertThat(SectionDrawing.svg(takeoff, id)).contains("steep rake");
  }

  private interface Writer {
    void write(Takeoff takeoff, OutputStream out) throws IOException;
  }

  private static String written(Writer writer) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    writer.write(takeoff, out);
    return out.toString(StandardCharsets.UTF_8);
  }
}
