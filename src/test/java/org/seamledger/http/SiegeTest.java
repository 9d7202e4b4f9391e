package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;

/** What clients can do to the service that are slow, leave, guess, or make up words. */
class SiegeTest {

  private static final String TOKEN = "a token of this test, long enough";

  @TempDir
  private Path data;

  private Options options() {
    return Options.of(new FixtureAnalyzer(), data);
  }

  private static String raw(Server server, String request) throws IOException {
    try (Socket s = new Socket("127.0.0.1", server.port())) {
      s.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      s.shutdownOutput();
      return new String(s.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void slowBodiesLeaveRoomForTheOthers() throws IOException {
    try (TestService service = new TestService(options())) {
      List<Socket> slow = new ArrayList<>();
      for (int i = 0; i < 260; i++) {
        Socket s = new Socket("127.0.0.1", service.server.port());
        s.getOutputStream()
            .write("POST /api/session HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 900\r\n\r\n{"
                .getBytes(StandardCharsets.ISO_8859_1));
        slow.add(s);
      }
      assertThat(service.get("/api/health").statusCode()).isEqualTo(200);
      assertThat(service.get("/").statusCode()).isEqualTo(200);
      for (Socket s : slow) {
        s.close();
      }
    }
  }

  @Test
  void aBodyThatIsCutOffIsTheClientsFault() throws IOException {
    try (TestService service = new TestService(options())) {
      assertThat(raw(service.server,
          "POST /api/projects HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 90\r\n\r\n{\"name\":"))
          .startsWith("HTTP/1.1 400");
    }
  }

  @Test
  void inventedMethodsAreOneLabel() throws IOException {
    try (TestService service = new TestService(options())) {
      for (String word : List.of("AAAA", "AAAB", "AAAC", "BREW")) {
        raw(service.server, word + " /api/health HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n");
      }
      String metrics = new String(service.get("/metrics").body(), StandardCharsets.UTF_8);
      assertThat(metrics).doesNotContain("AAAA").doesNotContain("BREW").contains("method=\"other\"");
    }
  }

  @Test
  void whatTheServerItselfRefusesHasTheSameHeaders() throws IOException {
    try (TestService service = new TestService(options())) {
      for (String request : List.of("GET /%zz HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n", "nonsense\r\n\r\n",
          "GET / HTTP/1.1\r\nHost: localhost\r\nX: " + "y".repeat(20_000) + "\r\nConnection: close\r\n\r\n")) {
        assertThat(raw(service.server, request)).matches("(?s)HTTP/1.1 4\\d\\d.*").contains("X-Content-Type-Options: nosniff")
            .contains("Content-Security-Policy: default-src 'none'").contains("application/problem+json").doesNotContain("Jetty");
      }
    }
  }

  @Test
  void guessingIsSlowedDownAndSessionsGoOn() {
    try (TestService service = new TestService(options().bind("127.0.0.1", Optional.of(TOKEN)))) {
      String cookie = cookie(service.send("POST", "/api/session", Map.of("token", TOKEN)));
      for (int i = 0; i < GuessBrake.FREE; i++) {
        assertThat(service.get("/api/analyses", "Authorization", "Bearer wrong" + i).statusCode()).isEqualTo(401);
      }
      assertThat(service.get("/api/analyses", "Authorization", "Bearer " + TOKEN).statusCode()).as("not looked at").isEqualTo(429);
      assertThat(service.send("POST", "/api/session", Map.of("token", TOKEN)).statusCode()).isEqualTo(429);
      assertThat(service.get("/api/analyses", "Cookie", cookie).statusCode()).isEqualTo(200);
    }
  }

  @Test
  void aSessionIsRandomAndCanBeRevoked() {
    try (TestService service = new TestService(options().bind("127.0.0.1", Optional.of(TOKEN)))) {
      String one = cookie(service.send("POST", "/api/session", Map.of("token", TOKEN)));
      String other = cookie(service.send("POST", "/api/session", Map.of("token", TOKEN)));
      assertThat(one).isNotEqualTo(other);
      assertThat(service.send("DELETE", "/api/session", null, "Cookie", one).statusCode()).isEqualTo(204);
      assertThat(service.get("/api/analyses", "Cookie", one).statusCode()).isEqualTo(401);
      assertThat(service.get("/api/analyses", "Cookie", other).statusCode()).isEqualTo(200);
    }
  }

  @Test
  void theCookieIsSecureBehindAProxyThatTheOperatorNamed() {
    Options options = options().bind("127.0.0.1", Optional.of(TOKEN));
    try (TestService service = new TestService(options)) {
      assertThat(setCookie(service.send("POST", "/api/session", Map.of("token", TOKEN), "X-Forwarded-Proto", "https")))
          .as("anybody can write that").doesNotContain("Secure");
    }
    try (TestService service = new TestService(options.proxies(List.of("127.0.0.1")))) {
      assertThat(setCookie(service.send("POST", "/api/session", Map.of("token", TOKEN), "X-Forwarded-Proto", "https"))).contains("Secure");
    }
  }

  @Test
  void theDataFolderIsTheUsersOwn() throws IOException {
    Path own = data.resolve("own");
    try (TestService service = new TestService(Options.of(new FixtureAnalyzer(), own))) {
      assertThat(service.get("/api/health").statusCode()).isEqualTo(200);
      assertThat(Files.getPosixFilePermissions(own)).hasSize(3).allMatch(p -> p.name().startsWith("OWNER"));
    }
  }

  private static String setCookie(HttpResponse<byte[]> answer) {
    return answer.headers().firstValue("Set-Cookie").orElseThrow();
  }

  private static String cookie(HttpResponse<byte[]> answer) {
    return setCookie(answer).replaceFirst(";.*", "");
  }
}
