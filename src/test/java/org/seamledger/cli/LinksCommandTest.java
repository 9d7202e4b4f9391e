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
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.Server;
import org.seamledger.http.setting.Options;
import org.seamledger.run.TakeoffAnalyzer;
import org.seamledger.takeoff.Takeoffs;

/** The operator's commands about the roof, against a service that runs. */
@Tag("slow")
class LinksCommandTest {

  @TempDir
  private Path folder;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(Object... words) {
    out.reset();
    err.reset();
    return new Cli((inputs, progress) -> Takeoffs.boatHouse(), Environment.PLAIN).run(
        Arrays.stream(words).map(Object::toString).toArray(String[]::new), out, new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String said() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String complained() {
    return err.toString(StandardCharsets.UTF_8);
  }

  @Test
  void linksAreMadeListedAndRevokedAndTheRecordIsTakenAndChecked() throws IOException {
    try (Server server = Server.start(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).port(0)
        .models(List.of(Path.of("ifc-samples", "gatehouse.ifc"))))) {
      String url = server.url();
      Path record = folder.resolve("record.json");
      while (run("record", "--service", url, "--output", record) != ExitStatus.DONE) {
        assertThat(complained()).contains("no result yet");
      }
      assertThat(run("record", record)).isEqualTo(ExitStatus.DONE);
      assertThat(said()).startsWith("whole: 0 events");
      assertThat(run("links", "--service", url, "--make", "tick", "--name", "crew A", "--days", "2", "--format", "json")).isZero();
      JsonNode made = new ObjectMapper().readTree(said());
      assertThat(made.path("url").asText()).startsWith(url + "roof/#roof-");
      assertThat(run("links", "gatehouse.ifc", "--service", url)).isZero();
      assertThat(said()).contains(made.path("id").asText()).contains("tick").contains("valid").contains("crew A")
          .doesNotContain(made.path("token").asText());
      assertThat(run("links", "--service", url, "--revoke", made.path("id").asText())).isZero();
      run("links", "--service", url);
      assertThat(said()).contains("revoked").doesNotContain("valid");
      assertThat(run("record", "--service", url, "--format", "pdf", "--output", folder.resolve("record.pdf"))).isZero();
      assertThat(Files.readAllBytes(folder.resolve("record.pdf"))).startsWith("%PDF".getBytes(StandardCharsets.US_ASCII));
      assertThat(run("links", "elsewhere", "--service", url)).isEqualTo(ExitStatus.USAGE);
      assertThat(complained()).contains("no project elsewhere").contains("gatehouse.ifc");
      assertThat(run("links", "--service", url, "--make", "tick", "--name", "x", "--days", "9999")).isEqualTo(ExitStatus.USAGE);
      assertThat(complained()).contains("422").contains("days");
      assertThat(run("links", "--service", url, "--revoke", "0".repeat(32))).isEqualTo(ExitStatus.USAGE);
      assertThat(complained()).contains("no such link");
    }
  }

  @Test
  void whatCantBeAskedIsSaidInOneLine() {
    for (List<String> wrong : List.of(List.of("links", "--service", "http://127.0.0.1:1"), List.of("links", "--service", "ftp://x"),
        List.of("links", "--service", "http://192.0.2.1"), List.of("links", "--name", "x"),
        List.of("links", "--make", "all", "--name", "x"),
        List.of("links", "--make", "tick", "--name", "x", "--revoke", "y"), List.of("record", "a.json", "--format", "pdf"),
        List.of("record", "--format", "docx"))) {
      assertThat(run(wrong.toArray())).as("%s", wrong).isEqualTo(ExitStatus.USAGE);
      assertThat(complained().lines()).as("%s", wrong).hasSize(1);
    }
  }
}
