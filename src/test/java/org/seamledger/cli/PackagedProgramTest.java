package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program as people start it: the launcher, a process, its streams and its exit status. */
@Tag("packaged")
class PackagedProgramTest {

  private static final Path LAUNCHER = Path.of("seamledger").toAbsolutePath();
  private static final Path SAMPLES = Path.of("ifc-samples").toAbsolutePath();

  @TempDir
  private Path elsewhere;

  private record Ended(int status, String out, String err) {
  }

  /** Runs a line of shell in a folder that is not the checkout, {@code $0} the launcher and {@code $1} the samples. */
  private Ended shell(String line) throws Exception {
    Path err = elsewhere.resolve("stderr");
    Process process = new ProcessBuilder("bash", "-c", "set -o pipefail; " + line, LAUNCHER.toString(), SAMPLES.toString())
        .directory(elsewhere.toFile()).redirectError(err.toFile()).start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
    return new Ended(process.exitValue(), out, Files.readString(err).replaceAll("(?m)^seamledger: .* …\\n", ""));
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

  @Test
  void aLinkAndAFileForTheResult() throws Exception {
    Ended ended = shell("ln -s \"$0\" roof && ./roof analyze \"$1/gatehouse.ifc\" --format csv --output 'the result.csv' && cat 'the result.csv'");
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
    Ended shapes = shell("mkdir own && echo 'kind:Ridge a sh:NodeShape ; .' > own/kinds.ttl; \"$0\" analyze \"$1/gatehouse.ifc\" --shapes own");
    assertThat(shapes.status()).isEqualTo(2);
    assertThat(shapes.err()).matches("seamledger: own/kinds\\.ttl:1:.+\\n");
    Ended system = shell("echo '{\"panel\": {\"coverage\": \"16 elephants\"}}' > own.json; \"$0\" analyze \"$1/gatehouse.ifc\" --system own.json");
    assertThat(system.status()).isEqualTo(2);
    assertThat(system.err()).startsWith("seamledger: own.json: panel.coverage: expected ").hasLineCount(1);
  }

  @Test
  void servesThePageAndEndsWhenAsked() throws Exception {
    Process server = new ProcessBuilder(LAUNCHER.toString(), "serve", "--port", "0", "--data", "data").directory(elsewhere.toFile()).start();
    try (BufferedReader err = new BufferedReader(new InputStreamReader(server.getErrorStream(), StandardCharsets.UTF_8))) {
      String line = err.lines().filter(l -> l.startsWith("seamledger: open ")).findFirst().orElseThrow();
      String url = line.replaceAll(".*(http://\\S+).*", "$1");
      HttpClient client = HttpClient.newHttpClient();
      for (String path : List.of("", "api/health", "openapi.json")) {
        HttpResponse<String> answer = client.send(HttpRequest.newBuilder(URI.create(url + path)).build(),
            HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).as(path).isEqualTo(200);
      }
    } finally {
      server.destroy();
      assertThat(server.waitFor(1, TimeUnit.MINUTES)).isTrue();
    }
    assertThat(elsewhere.resolve("data")).isDirectory();
  }
}
