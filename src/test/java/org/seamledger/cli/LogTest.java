package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

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
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamledger.http.Server;
import org.seamledger.http.setting.Options;
import org.seamledger.progress.Progress;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Result;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.slf4j.LoggerFactory;

/** What a server's log tells, and what it keeps to itself. */
class LogTest {

  private static final String TOKEN = "open-sesame-open-sesame";
  private static final String TYPED = "a-secret-typed-in-the-wrong-place";
  private static final ObjectMapper MAPPER = new ObjectMapper();

  @TempDir
  private Path folder;
  private final ByteArrayOutputStream log = new ByteArrayOutputStream();
  private final HttpClient client = HttpClient.newHttpClient();

  /** Fails like a program with a fault, in a message that tries to look like a line of the log. */
  private static final class Faulty implements Analyzer<Result> {
    @Override
    public Result analyze(Inputs inputs, Progress progress) {
      throw new IllegalStateException("a fault\n2026-01-01T00:00:00.000Z INFO  Monitor: request status=\"200\"");
    }
  }

  @AfterEach
  void restore() {
    Logging.asCommand();
  }

  private HttpResponse<String> send(Server server, String method, String path, String... headers) throws IOException, InterruptedException {
    HttpRequest.Builder b =
        HttpRequest.newBuilder(URI.create(server.url()).resolve(path)).method(method, HttpRequest.BodyPublishers.noBody());
    b.header("Authorization", "Bearer " + TOKEN);
    for (int i = 0; i < headers.length; i += 2) {
      b.setHeader(headers[i], headers[i + 1]);
    }
    return client.send(b.build(), HttpResponse.BodyHandlers.ofString());
  }

  /** A server whose only analysis fails; some requests, most of them wrong. */
  private List<String> served(LogForm form) throws Exception {
    Path model = Files.writeString(folder.resolve("hall.ifc"), "hall");
    Logging.asService(form, log);
    try (Server server = Server
        .start(Options.of(new Faulty(), folder.resolve("data")).port(0).bind("127.0.0.1", Optional.of(TOKEN)).models(List.of(model)))) {
      send(server, "GET", "/api/analyses?token=" + TYPED);
      send(server, "GET", "/api/analyses/" + TYPED);
      send(server, "GET", "/" + TYPED + "?token=" + TYPED);
      send(server, "GET", "/api/projects", "Authorization", "Bearer " + TYPED);
      send(server, "GET", "/api/projects", "Cookie", "seamledger=" + TYPED);
      send(server, "GET", "/");
      for (int i = 0; i < 200 && !log.toString(StandardCharsets.UTF_8).contains("analysis ended"); i++) {
        Thread.sleep(20);
      }
    }
    return log.toString(StandardCharsets.UTF_8).lines().toList();
  }

  @Test
  void jsonIsOneObjectALine() throws Exception {
    List<JsonNode> events = new ArrayList<>();
    for (String line : served(LogForm.json)) {
      JsonNode event = MAPPER.readTree(line);
      assertThat(event.isObject()).as(line).isTrue();
      assertThat(event.path("time").textValue()).matches("\\d{4}-\\d\\d-\\d\\dT.*Z");
      events.add(event);
    }
    JsonNode request =
        of(events, "request").stream().filter(e -> e.path("route").textValue().equals("/api/analyses")).findFirst().orElseThrow();
    assertThat(request.path("method").textValue()).isEqualTo("GET");
    assertThat(request.path("status").intValue()).isEqualTo(200);
    assertThat(request.path("ms").isIntegralNumber()).isTrue();
    JsonNode begun = of(events, "analysis begins").get(0);
    assertThat(begun.path("bytes").intValue()).isEqualTo(4);
    JsonNode ended = of(events, "analysis ended").get(0);
    assertThat(ended.path("analysis")).isEqualTo(begun.path("analysis"));
    assertThat(ended.path("state").textValue()).isEqualTo("failed");
    assertThat(ended.path("seconds").isNumber()).isTrue();
    JsonNode failed = of(events, "analysis failed").get(0);
    assertThat(failed.path("level").textValue()).isEqualTo("ERROR");
    assertThat(failed.path("trace").textValue()).contains("java.lang.IllegalStateException: a fault",
        "LogTest$Faulty.analyze(LogTest.java:");
  }

  private static List<JsonNode> of(List<JsonNode> events, String message) {
    return events.stream().filter(e -> e.path("message").textValue().equals(message)).toList();
  }

  @Test
  void textHasEventsAtTheLeftAndTracesIndented() throws Exception {
    List<String> lines = served(LogForm.text);
    String time = "\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d\\.\\d{3}Z ";
    assertThat(lines).allMatch(l -> l.matches(time + "(INFO |WARN |ERROR) \\w+: .*") || l.startsWith("    "));
    assertThat(lines)
        .anyMatch(l -> l.matches(time + "INFO  Monitor: request method=\"GET\" route=\"/api/analyses\" status=\"200\" ms=\"\\d+\""));
    assertThat(lines).anyMatch(l -> l.matches(time + "ERROR Jobs: analysis failed analysis=\"[0-9a-f]{32}\""));
    assertThat(lines).contains("    java.lang.IllegalStateException: a fault")
        .anyMatch(l -> l.matches("\\s+at org.seamledger.cli.LogTest\\$Faulty.analyze\\(LogTest.java:\\d+\\)"));
    assertThat(lines).as("a message can't forge a line").contains("    2026-01-01T00:00:00.000Z INFO  Monitor: request status=\"200\"");
  }

  @ParameterizedTest
  @EnumSource
  void noSecretGetsIntoTheLog(LogForm form) throws Exception {
    assertThat(String.join("\n", served(form))).contains("request").doesNotContain(TOKEN, TYPED);
  }

  @Test
  void filesOfThePageAreNotWorthALine() throws Exception {
    assertThat(served(LogForm.text)).noneMatch(l -> l.contains("route=\"/\""));
  }

  @Test
  void aCommandThatRunsOnceShowsWarningsInOneLine() {
    Logging.asService(LogForm.text, log);
    Logging.asCommand();
    LoggerFactory.getLogger("org.seamledger.http.job.Jobs").info("not for the log");
    assertThat(log.toString(StandardCharsets.UTF_8)).isEmpty();
  }

  /** What the query's parser warns of by itself would be a second line. */
  @Test
  void aQueryThatIsWrongTwiceIsOneLine(@TempDir Path folder) throws Exception {
    Path query = Files.writeString(folder.resolve("a.rq"), "PREFIX a: <http://h:port/ns#>\nSELECT ?x WHERE { ?x a \\ }");
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream usual = System.err;
    PrintStream stream = new PrintStream(err, true, StandardCharsets.UTF_8);
    System.setErr(stream);
    try {
      int status = new Cli(Analysis::run, Environment.PLAIN).run(
          new String[] {"query", "ifc-samples/cart-shed.ifc", "--sparql", query.toString()}, new ByteArrayOutputStream(), stream);
      assertThat(status).isEqualTo(2);
    } finally {
      System.setErr(usual);
    }
    assertThat(err.toString(StandardCharsets.UTF_8).lines().filter(l -> !l.endsWith("…"))).singleElement().asString().contains("a.rq:2:");
  }
}
