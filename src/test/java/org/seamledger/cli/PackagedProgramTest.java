package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamledger.cli.InstalledProgram.Ended;

/** The program as people start it: the launcher, a process, its streams and its exit status. */
@Tag("packaged")
class PackagedProgramTest {

  @TempDir
  private Path elsewhere;

  /** Runs a line of shell in a folder that is not the checkout, {@code $0} the launcher and {@code $1} the samples. */
  private Ended shell(String line) {
    return InstalledProgram.run(elsewhere, List.of("bash", "-c", "set -o pipefail; " + line, InstalledProgram.launcher().toString(),
        InstalledProgram.samples().toString()));
  }

  @Test
  void jsonIsAllThatIsOnStandardOutputAndTheSameEachTime() throws Exception {
    Ended first = shell("\"$0\" analyze \"$1/gatehouse.ifc\" --format json");
    assertThat(first.status()).isZero();
    assertThat(first.err()).isEmpty();
    JsonNode ledger = new ObjectMapper().readTree(first.out());
    assertThat(ledger.at("/models/0/file").asText()).isEqualTo("gatehouse.ifc");
    assertThat(ledger.at("/junctions")).hasSize(14);
    assertThat(shell("\"$0\" analyze \"$1/gatehouse.ifc\" --format json").out()).isEqualTo(first.out());
  }

  /** As it is written by the same classes before they are packaged: nothing that an output needs was left behind. */
  @ParameterizedTest
  @EnumSource
  void everyFormIsThatOfTheUnpackedProgram(OutputFormat format) throws IOException {
    String model = InstalledProgram.samples().resolve("school.ifc").toString();
    Ended ended = InstalledProgram.run(elsewhere, "analyze", model, "--format", format.name(), "--output", "packaged");
    assertThat(ended).isEqualTo(new Ended(0, "", ""));
    assertThat(elsewhere.resolve("packaged")).isNotEmptyFile().hasBinaryContent(unpacked("analyze", model, "--format", format.name()));
  }

  @Test
  void drawingsAndExplanationsAreThoseOfTheUnpackedProgram() {
    String model = InstalledProgram.samples().resolve("gatehouse.ifc").toString();
    for (List<String> words : List.of(List.of("plan", model), List.of("section", model, "Jexw"), List.of("explain", model, "Jcm4"))) {
      Ended ended = InstalledProgram.run(elsewhere, words.toArray(String[]::new));
      assertThat(ended).as(words.get(0))
          .isEqualTo(new Ended(0, new String(unpacked(words.toArray(String[]::new)), StandardCharsets.UTF_8), ""));
      assertThat(ended.out()).as(words.get(0)).contains("J").hasSizeGreaterThan(1000);
    }
  }

  private static byte[] unpacked(String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertThat(new Cli(Analyzer.ANALYSIS, Environment.PLAIN).run(words, out, new PrintStream(OutputStream.nullOutputStream()))).isZero();
    return out.toByteArray();
  }

  @Test
  void aLinkAndAFileForTheResult() throws Exception {
    Ended ended =
        shell("ln -s \"$0\" roof && ./roof analyze \"$1/gatehouse.ifc\" --format csv --output 'the result.csv' && cat 'the result.csv'");
    assertThat(ended.status()).isZero();
    assertThat(ended.out().lines()).hasSize(15);
  }

  @Test
  void packedModelsGiveTheSameLedgerButForTheirName() throws Exception {
    Ended ended = shell("gzip -c \"$1/gatehouse.ifc\" > gatehouse.ifc && \"$0\" analyze gatehouse.ifc --format json > packed.json"
        + " && \"$0\" analyze \"$1/gatehouse.ifc\" --format json | cmp - packed.json");
    assertThat(ended).isEqualTo(new Ended(0, "", ""));
  }

  @Test
  void aModelThatCannotBeReadIsOneLine() throws Exception {
    Ended ended = shell("head -c 3000 \"$1/gatehouse.ifc\" > cut.ifc; \"$0\" analyze cut.ifc");
    assertThat(ended.status()).isEqualTo(3);
    assertThat(ended.out()).isEmpty();
    assertThat(ended.err()).matches("seamledger: cut\\.ifc:\\d+:\\d+: expected .+, found .+\\n");
    assertThat(shell("\"$0\" analyze nowhere.ifc").status()).isEqualTo(3);
  }

  @Test
  void findingsDecideTheStatusWhereAsked() throws Exception {
    assertThat(shell("\"$0\" analyze \"$1/gatehouse.ifc\" --fail-on warning > /dev/null").status()).isEqualTo(1);
    assertThat(shell("\"$0\" analyze \"$1/gatehouse.ifc\" --fail-on violation > /dev/null").status()).isZero();
  }

  @Test
  void aReaderMayLeave() throws Exception {
    Ended ended = shell("\"$0\" analyze \"$1/school.ifc\" --format json | head -n 1");
    assertThat(ended).isEqualTo(new Ended(0, "{\n", ""));
  }

  @Test
  void brokenShapesAndSystemsAreSaidWithTheirPlace() throws Exception {
    Ended shapes =
        shell("mkdir own && echo 'kind:Ridge a sh:NodeShape ; .' > own/kinds.ttl; \"$0\" analyze \"$1/gatehouse.ifc\" --shapes own");
    assertThat(shapes.status()).isEqualTo(2);
    assertThat(shapes.err()).matches("seamledger: own/kinds\\.ttl:1:.+\\n");
    Ended system =
        shell("echo '{\"panel\": {\"coverage\": \"16 elephants\"}}' > own.json; \"$0\" analyze \"$1/gatehouse.ifc\" --system own.json");
    assertThat(system.status()).isEqualTo(2);
    assertThat(system.err()).startsWith("seamledger: own.json: panel.coverage: expected ").hasLineCount(1);
  }

  @Test
  void servesThePageAndEndsWhenAsked() throws Exception {
    try (RunningService service = InstalledProgram.serve(elsewhere, "--data", "data")) {
      HttpClient client = HttpClient.newHttpClient();
      for (String path : List.of("", "api/health", "openapi.json")) {
        HttpResponse<String> answer = client.send(HttpRequest.newBuilder(URI.create(service.url() + path)).build(),
            HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).as(path).isEqualTo(200);
      }
    }
    assertThat(elsewhere.resolve("data")).isDirectory();
  }
}
