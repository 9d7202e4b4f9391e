package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.takeoff.Analysis;

/**
 * Two revisions of the gatehouse, the first before its chimney was drawn. The chimney is 0.8 m wide and 0.6 m deep in plan, and stands in
 * a roof that rises 1 in 2 (ifc-samples/README.md): its sides are 0.6·√5/2 = 0.670820 m long on the slope.
 */
class CompareCommandTest {

  private static final String GATEHOUSE = "ifc-samples/gatehouse.ifc";
  private static final String SHAPED = "IFCCHIMNEY('1N2KbnKcnVdM4S7vhoc46V',$,'chimney',$,$,#127,#135,";

  @TempDir
  private Path folder;
  private Path first;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @BeforeEach
  void write() throws IOException {
    String model = Files.readString(Path.of(GATEHOUSE));
    assertThat(model).contains(SHAPED);
    first = Files.writeString(folder.resolve("first.ifc"), model.replace(SHAPED, SHAPED.replace("#135,", "$,")));
  }

  private int run(String... words) {
    out.reset();
    err.reset();
    return new Cli(Analysis::run, Environment.PLAIN).run(words, out, new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8).replaceAll("(?m)^seamledger: .* …\\n", "");
  }

  private JsonNode json() throws IOException {
    return new ObjectMapper().readTree(out.toByteArray());
  }

  private static List<String> texts(JsonNode list, String field) {
    return StreamSupport.stream(list.spliterator(), false).map(n -> n.path(field).asText()).sorted().toList();
  }

  @Test
  void aChimneyBringsItsCurbsItsOrderAndItsFindings() throws IOException {
    assertThat(run("compare", first.toString(), GATEHOUSE, "--format", "json", "--fail-on", "new-warning")).as(err()).isEqualTo(1);
    assertThat(err()).isEqualTo("seamledger: " + GATEHOUSE + " has 2 findings that " + first
        + " had not and nobody accepted: drainage/no-cricket, penetration/no-opening\n");
    assertThat(texts(json().path("added"), "kind")).containsExactly("curb-downslope", "curb-side", "curb-side", "curb-upslope");
    assertThat(texts(json().path("added"), "lengthM")).containsExactly("0.67082", "0.67082", "0.8", "0.8");
    assertThat(json().path("removed")).isEmpty();
    assertThat(texts(json().path("newFindings"), "code")).containsExactly("drainage/no-cricket", "penetration/no-opening");
    assertThat(texts(json().path("goneFindings"), "code")).containsExactly("roof/neighbour-without-shape");
    assertThat(json().path("stillFindings")).isNotEmpty();
    JsonNode curbs = StreamSupport.stream(json().path("quantities").spliterator(), false)
        .filter(q -> q.path("name").asText().startsWith("curbs.")).findFirst().orElseThrow();
    assertThat(curbs.toString()).isEqualTo("{\"name\":\"curbs.800 × 600 mm.count\",\"before\":null,\"after\":1}");
  }

  @Test
  void resultsAreComparedLikeTheirModels() throws IOException {
    String result = folder.resolve("kept").toString();
    assertThat(run("analyze", GATEHOUSE, "--format", "json", "--output", result)).isZero();
    assertThat(run("compare", GATEHOUSE, result)).as(err()).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).contains("0 added, 0 gone, 0 changed, 14 as before").contains("as before");
    assertThat(run("compare", result, first.toString(), "--fail-on", "new-warning", "--format", "csv")).as("better, not worse").isZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).startsWith("about,change,id,kind,field,before,after,difference,")
        .contains(",curb-side,lengthM,0.67082,,-0.67082,").contains("order,gone,,,curbs.800 × 600 mm.count,1,,")
        .contains("finding,gone,").contains("finding,still,");
  }

  @Test
  void whatSomebodyAcceptedShutsNoGate() throws IOException {
    assertThat(run("compare", first.toString(), GATEHOUSE, "--format", "json")).isZero();
    StringBuilder accepted = new StringBuilder();
    for (JsonNode f : json().path("newFindings")) {
      accepted.append(accepted.length() > 0 ? "," : "").append("{\"finding\": {\"code\": ").append(f.path("code"))
          .append(", \"junction\": ")
          .append(f.path("junction")).append(", \"elements\": ").append(f.path("elements"))
          .append("}, \"by\": \"A. Planner\", \"when\": \"2024-05-31\", \"reason\": \"drawn by hand\"}");
    }
    Path file = Files.writeString(folder.resolve("decisions.json"), "{\"accepted\": [" + accepted + "]}");
    assertThat(run("analyze", GATEHOUSE, "--decisions", file.toString(), "--fail-on", "warning")).as("what is older is a note").isZero();
    assertThat(run("compare", first.toString(), GATEHOUSE, "--decisions", file.toString(), "--fail-on", "new-warning")).as(err()).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).contains("  warning  drainage/no-cricket").contains("(accepted)");
  }

  @Test
  void whatIsNoResultIsSaidWithItsPlace() throws IOException {
    Path other = Files.writeString(folder.resolve("other.json"), "{\"a\": 1}");
    assertThat(run("compare", other.toString(), GATEHOUSE)).isEqualTo(3);
    assertThat(err()).isEqualTo("seamledger: " + other
        + ": expected a result as analyze --format json writes it, found other JSON, without the field contract\n");
    Path cut = Files.writeString(folder.resolve("cut.json"), "{\"contract\": 1,\n \"junctions\": [");
    assertThat(run("compare", first.toString(), cut.toString())).isEqualTo(3);
    assertThat(err()).startsWith("seamledger: " + cut + ":2:").hasLineCount(1);
    assertThat(run("compare", first.toString(), folder.resolve("none.ifc").toString())).isEqualTo(3);
    assertThat(run("compare", first.toString())).isEqualTo(2);
    assertThat(run("compare", GATEHOUSE, GATEHOUSE, "--fail-on", "warning")).isEqualTo(2);
    assertThat(err()).contains("expected new-violation or new-warning");
  }
}
