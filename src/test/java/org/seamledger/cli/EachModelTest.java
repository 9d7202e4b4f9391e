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
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.takeoff.Analysis;

/** Many models in one go, with one exit status. */
class EachModelTest {

  private static final String ROOF_MODEL = "shapes/ids/roof-model.ids";

  @TempDir
  private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @BeforeEach
  void write() throws IOException {
    for (String sample : new String[] {"gatehouse", "lodge"}) {
      Files.copy(Path.of("ifc-samples", sample + ".ifc"), folder.resolve(sample + ".ifc"));
    }
  }

  private int run(String... words) {
    out.reset();
    err.reset();
    return new Cli(Analysis::run, Environment.PLAIN).run(words, out, new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8).replaceAll("(?m)^seamledger: .* …\\n", "");
  }

  @Test
  void everyModelOfAFolderHasItsRowAndTheWorstIsTheStatus() throws IOException {
    assertThat(run("analyze", "--each", folder.toString())).as(err()).isZero();
    assertThat(out()).contains("gatehouse.ifc").contains("lodge.ifc").endsWith("2 models: 2 pass, 0 fail, 0 can't be read\n");
    assertThat(run("analyze", "--each", folder.toString(), "--fail-on", "warning", "--format", "csv")).isEqualTo(1);
    assertThat(out().lines().filter(l -> l.contains(",fail,"))).hasSize(2);
    Files.writeString(folder.resolve("a.ifc"), "%PDF-1.7");
    assertThat(run("analyze", "--each", folder + "/*.ifc", "--fail-on", "violation", "--format", "json")).isEqualTo(3);
    JsonNode result = new ObjectMapper().readTree(out.toByteArray());
    assertThat(result.path("models").findValuesAsText("status")).containsExactly("unreadable", "pass", "fail");
    assertThat(result.path("summary").toString()).isEqualTo("{\"models\":3,\"pass\":1,\"fail\":1,\"unreadable\":1}");
    assertThat(err()).hasLineCount(1).contains("a.ifc:1:1: expected ").contains("found a PDF document");
  }

  @Test
  void checkTakesFoldersToo() {
    assertThat(run("check", "--each", folder.toString(), "--ids", ROOF_MODEL, "--format", "junit")).as(err()).isEqualTo(1);
    assertThat(out()).contains("<testsuite name=\"" + folder + "/gatehouse.ifc\" tests=\"16\"").contains("roof-model.ids/roof-16");
    assertThat(run("check", "--ids", ROOF_MODEL, folder.toString(), "--each")).as("a folder behind --ids").isEqualTo(1);
    assertThat(out()).endsWith("2 models: 0 pass, 2 fail, 0 can't be read\n");
  }

  /** An acceptance for one of the models is no fault of the other; one for none of them is in both. */
  @Test
  void decisionsAreOfTheModelThatTheyFit() throws IOException {
    Path file = Files.writeString(folder.resolve("decisions.json"), """
        {"decisions": [{"junction": "J0xcbxgtm", "detail": "none", "reason": "by others"},
          {"junction": "Jnowhere0", "detail": "none", "reason": "lost"}]}""");
    assertThat(run("analyze", "--each", folder.toString(), "--decisions", file.toString(), "--format", "json")).as(err()).isZero();
    for (JsonNode model : new ObjectMapper().readTree(out.toByteArray()).path("models")) {
      assertThat(model.path("issues").findValuesAsText("rule").stream().filter("review/unknown-junction"::equals)).hasSize(1);
      assertThat(model.path("issues").findValuesAsText("message").stream().filter(m -> m.contains("Jnowhere0"))).hasSize(1);
    }
  }

  @Test
  void whatCannotBeMeantIsSaid() {
    assertThat(run("analyze", folder.toString())).isEqualTo(3);
    assertThat(err()).contains("analyze --each");
    assertThat(run("analyze", "--each", folder + "/x*.ifc")).isEqualTo(2);
    assertThat(run("analyze", "--each", folder.toString(), "--format", "cuts")).isEqualTo(2);
    assertThat(run("analyze", "--each", folder.toString(), "--place", "lodge.ifc=1,2,3")).isEqualTo(2);
  }
}
