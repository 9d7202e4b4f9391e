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

/** The command {@code check}: what it writes, and where, and its exit status, as promised to callers. */
class CheckCommandTest {

  private static final String GATEHOUSE = "ifc-samples/gatehouse.ifc";
  private static final String ROOF_MODEL = "shapes/ids/roof-model.ids";

  @TempDir
  private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private Path named;
  private Path broken;

  @BeforeEach
  void write() throws IOException {
    named = specification("named.ids", "<attribute><name><simpleValue>Name</simpleValue></name></attribute>");
    broken = specification("broken.ids", "<attribute><name><simpleValue>Colour</simpleValue></name></attribute>");
  }

  private Path specification(String file, String requirement) throws IOException {
    return Files.writeString(folder.resolve(file), "<ids xmlns='http://standards.buildingsmart.org/IDS'>\n"
        + "<info><title>t</title></info>\n"
        + "<specifications><specification name='n' ifcVersion='IFC4'>"
        + "<applicability minOccurs='1' maxOccurs='unbounded'><entity><name><simpleValue>IFCPROJECT</simpleValue></name></entity>"
        + "</applicability>\n<requirements>" + requirement + "</requirements>"
        + "</specification></specifications></ids>");
  }

  private int run(String... words) {
    return new Cli(null, Environment.PLAIN).run(words, out, new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private JsonNode json() throws IOException {
    return new ObjectMapper().readTree(out.toByteArray()).get("ids");
  }

  @Test
  void everySpecificationPasses() throws IOException {
    assertThat(run("check", GATEHOUSE, "--ids", named.toString(), "--format", "json")).as(err()).isZero();
    JsonNode specification = json().get(0).get("specifications").get(0);
    assertThat(specification.get("status").asText()).isEqualTo("pass");
    assertThat(specification.get("applicable").asInt()).isEqualTo(1);
    assertThat(specification.get("failed").asInt()).isZero();
    assertThat(err()).isEmpty();
  }

  @Test
  void oneThatFailsIsStatusOneAndNamesItsElements() throws IOException {
    assertThat(run("check", "--ids", ROOF_MODEL, named.toString(), GATEHOUSE, GATEHOUSE, "--format=json")).as(err()).isEqualTo(1);
    assertThat(json()).hasSize(2);
    JsonNode site = json().get(0).get("specifications").get(15);
    assertThat(site.get("identifier").asText()).isEqualTo("roof-16");
    assertThat(site.get("failed").asInt()).isEqualTo(site.get("elements").size());
    assertThat(json().get(1).get("specifications").get(0).get("applicable").asInt()).isEqualTo(2);
  }

  @Test
  void aFileThatIsNoValidOneIsStatusTwoWithItsPlace() throws IOException {
    assertThat(run("check", GATEHOUSE, "--ids", broken.toString(), "--format", "json")).isEqualTo(2);
    assertThat(json().get(0).get("valid").asBoolean()).isFalse();
    assertThat(json().get(0).get("problems").get(0).asText()).startsWith(broken + ":4:").contains("'Colour'");
    assertThat(json().get(0).get("specifications")).isEmpty();
    assertThat(err()).startsWith("seamledger: " + broken + ":4:").hasLineCount(1);
  }

  @Test
  void aModelThatCannotBeReadIsStatusThree() {
    assertThat(run("check", named.toString(), "--ids", named.toString())).isEqualTo(3);
    assertThat(err()).hasLineCount(1).contains(":1:1: expected a STEP file");
    assertThat(out.size()).isZero();
  }

  @Test
  void aWrongCommandLineIsStatusTwo() {
    assertThat(run("check", GATEHOUSE)).isEqualTo(2);
    assertThat(run("check", "--ids", named.toString())).isEqualTo(2);
    assertThat(run("check", GATEHOUSE, "--ids", folder.resolve("none.ids").toString())).isEqualTo(2);
    assertThat(err()).hasLineCount(3).contains("none.ids: expected a file, found none");
  }

  @Test
  void textSaysTheCountsAndGoesToAFile() throws IOException {
    Path file = folder.resolve("result.txt");
    assertThat(run("check", GATEHOUSE, "--ids", named.toString(), "--output", file.toString())).isZero();
    assertThat(Files.readString(file)).isEqualTo(named + ": t\n  pass  n: applies to 1 element\n  1 of 1 specification passes\n");
    assertThat(out.size()).isZero();
  }
}
