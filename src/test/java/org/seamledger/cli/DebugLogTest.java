package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The most talkative log that can be asked for, of the command as people start it. */
@Tag("slow")
class DebugLogTest {

  private static final String TOKEN = "open-sesame-open-sesame";
  private static final String TYPED = "a-secret-typed-in-the-wrong-place";

  @TempDir
  private Path folder;
  private final HttpClient client = HttpClient.newHttpClient();

  private HttpResponse<String> send(URI at, String method, String body, String... headers) throws Exception {
    HttpRequest.Builder request = HttpRequest.newBuilder(at).method(method, HttpRequest.BodyPublishers.ofString(body));
    for (int i = 0; i < headers.length; i += 2) {
      request.header(headers[i], headers[i + 1]);
    }
    return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  private static URI address(Path log) throws Exception {
    for (int i = 0; i < 600; i++) {
      String said = Files.readString(log);
      int at = said.indexOf("http://127.0.0.1:");
      if (at >= 0 && said.indexOf('/', at + 8) > 0) {
        return URI.create(said.substring(at, said.indexOf('/', at + 8) + 1));
      }
      Thread.sleep(50);
    }
    throw new AssertionError(Files.readString(log));
  }

  @ParameterizedTest
  @ValueSource(strings = {"debug", "trace"})
  void hasNoTokenAndNoSession(String level) throws Exception {
    Path log = folder.resolve("log");
    ProcessBuilder command = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"), Main.class.getName(), "serve", "--port", "0", "--data",
        folder.resolve("data").toString()).redirectErrorStream(true).redirectOutput(log.toFile());
    command.environment().put("SEAMLEDGER_TOKEN", TOKEN);
    command.environment().put("SEAMLEDGER_LOG", level);
    Process process = command.start();
    String cookie;
    try {
      URI at = address(log);
      assertThat(send(at.resolve("/api/analyses"), "GET", "", "Authorization", "Bearer " + TOKEN).statusCode()).isEqualTo(200);
      send(at.resolve("/api/analyses"), "GET", "", "Authorization", "Bearer " + TYPED, "Cookie", "seamledger=" + TYPED);
      send(at.resolve("/api/" + TYPED + "?token=" + TYPED), "GET", "");
      HttpResponse<String> session = send(at.resolve("/api/session"), "POST", "{\"token\":\"" + TOKEN + "\"}", "Content-Type",
          "application/json");
      cookie = session.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst("[^=]*=", "").replaceFirst(";.*", "");
      assertThat(send(at.resolve("/api/analyses"), "GET", "", "Cookie", "seamledger=" + cookie).statusCode()).isEqualTo(200);
    } finally {
      process.destroy();
      process.waitFor();
    }
    assertThat(Files.readString(log, StandardCharsets.UTF_8)).contains("request").doesNotContain(TOKEN, TYPED, cookie);
  }
}
