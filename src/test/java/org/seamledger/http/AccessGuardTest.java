package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;

/** Who may come in, and what browsers are told to keep out. */
class AccessGuardTest {

  private static final String TOKEN = "a token of this test, long enough";

  @TempDir
  private Path data;

  private Options options() {
    return Options.of(new FixtureAnalyzer(), data);
  }

  /** Sends a request with exactly these header lines; the Java client would not let a test name another host. */
  private static String raw(Server server, String requestLine, String... headers) throws IOException {
    try (Socket s = new Socket("127.0.0.1", server.port())) {
      s.getOutputStream().write((requestLine + " HTTP/1.1\r\n" + String.join("\r\n", headers) + "\r\nConnection: close\r\n\r\n")
          .getBytes(StandardCharsets.ISO_8859_1));
      return new String(s.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void answersToItsOwnNamesOnly() throws IOException {
    try (TestService service = new TestService(options().hosts(List.of("roofs.example")))) {
      for (String host : List.of("localhost", "127.0.0.1:" + service.server.port(), "[::1]:80", "ROOFS.example:9")) {
        assertThat(raw(service.server, "GET /api/health", "Host: " + host)).as(host).startsWith("HTTP/1.1 200");
      }
      for (String host : List.of("evil.example", "localhost.evil.example", "127.0.0.1.evil.example", "10.0.0.1")) {
        assertThat(raw(service.server, "GET /api/health", "Host: " + host)).as(host).startsWith("HTTP/1.1 421")
            .contains("application/problem+json");
        assertThat(raw(service.server, "GET /", "Host: " + host)).as(host).startsWith("HTTP/1.1 421");
      }
      assertThat(raw(service.server, "GET /api/health")).startsWith("HTTP/1.1 400");
    }
  }

  @Test
  void refusesWhatAnotherSitesPageSends() {
    try (TestService service = new TestService(options())) {
      String own = service.server.url().replaceFirst("/$", "");
      Map<String, String> body = Map.of("name", "x");
      assertThat(service.send("POST", "/api/projects", body, "Origin", own).statusCode()).isEqualTo(201);
      assertThat(service.send("POST", "/api/projects", body, "Sec-Fetch-Site", "same-origin").statusCode()).isEqualTo(201);
      for (String origin : List.of("http://evil.example", "null", "http://127.0.0.1:1", "://")) {
        assertThat(service.send("POST", "/api/projects", body, "Origin", origin).statusCode()).as(origin).isEqualTo(403);
      }
      assertThat(service.send("POST", "/api/projects", body, "Sec-Fetch-Site", "cross-site").statusCode()).isEqualTo(403);
      assertThat(service.get("/api/analyses", "Origin", "http://evil.example").statusCode()).isEqualTo(403);
      assertThat(service.get("/api/analyses").headers().firstValue("Access-Control-Allow-Origin")).isEmpty();
    }
  }

  @Test
  void offLoopbackStartsWithATokenOnly() {
    assertThatThrownBy(() -> Server.start(options().port(0).bind("0.0.0.0", Optional.empty()))).isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("token is needed");
    assertThatThrownBy(() -> Server.start(options().port(0).bind("0.0.0.0", Optional.of("short"))))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("16 characters").hasMessageNotContaining("short,");
    assertThatThrownBy(() -> Server.start(options().port(0).bind("no.such.host.invalid", Optional.empty())))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void withATokenNothingOfAModelIsSeenWithoutIt() {
    try (TestService service = new TestService(options().bind("127.0.0.1", Optional.of(TOKEN)))) {
      for (String path : List.of("/api/analyses", "/api/projects", "/api/samples", "/api/start", "/metrics", "/api/nothing")) {
        HttpResponse<byte[]> answer = service.get(path);
        assertThat(answer.statusCode()).as(path).isEqualTo(401);
        assertThat(answer.headers().firstValue("WWW-Authenticate")).contains("Bearer");
      }
      assertThat(service.get("/api/analyses", "Authorization", "Bearer wrong").statusCode()).isEqualTo(401);
      assertThat(service.get("/").statusCode()).as("the page itself, to ask for the token").isEqualTo(200);
      assertThat(service.get("/api/health").statusCode()).isEqualTo(200);
      assertThat(service.send("POST", "/api/session", Map.of("token", "wrong")).statusCode()).isEqualTo(401);
      HttpResponse<byte[]> session = service.send("POST", "/api/session", Map.of("token", TOKEN));
      String cookie = session.headers().firstValue("Set-Cookie").orElseThrow();
      assertThat(session.statusCode()).isEqualTo(204);
      assertThat(cookie).contains("HttpOnly").containsIgnoringCase("SameSite=Strict");
      assertThat(service.get("/api/analyses", "Cookie", cookie.replaceFirst(";.*", "")).statusCode()).isEqualTo(200);
      service.token = TOKEN;
      assertThat(service.get("/api/analyses").statusCode()).isEqualTo(200);
    }
  }

  @Test
  void theAddressIsGuardedInEverySpelling() throws IOException {
    try (TestService service = new TestService(options().bind("127.0.0.1", Optional.of(TOKEN)))) {
      for (String path : List.of("/API/analyses", "//api/analyses", "/api;x/analyses", "/%61pi/analyses", "/./api/analyses",
          "/x/../api/analyses", "/api/analyses/", "/metrics/")) {
        assertThat(raw(service.server, "GET " + path, "Host: localhost")).as(path).doesNotStartWith("HTTP/1.1 200");
      }
    }
  }

  @Test
  void everyAnswerTellsBrowsersToRunNothingButThePage() {
    try (TestService service = new TestService(options())) {
      for (String path : List.of("/", "/api/health", "/api/nothing", "/js/main.js")) {
        HttpResponse<byte[]> answer = service.get(path);
        String policy = answer.headers().firstValue("Content-Security-Policy").orElse("");
        assertThat(policy).as(path).contains("default-src 'none'").doesNotContain("unsafe").doesNotContain("http:")
            .doesNotContain("https:");
        assertThat(answer.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
        assertThat(answer.headers().firstValue("Server")).isEmpty();
      }
      String html = new String(service.get("/").body(), StandardCharsets.UTF_8);
      Matcher scripts = Pattern.compile("<script([^>]*)>").matcher(html);
      while (scripts.find()) {
        assertThat(scripts.group(1)).as("a script of the page is a file, or the map of imports").containsAnyOf("src=\"/js/",
            "type=\"importmap\"");
      }
      assertThat(html).doesNotContainPattern("\\son\\w+=|style=\"|https?://");
    }
  }

  @Test
  void servesThePageAndItsLibrary() {
    try (TestService service = new TestService(options())) {
      Map<String, String> files =
          Map.of("/", "text/html", "/index.html", "text/html", "/js/main.js", "text/javascript", "/css/base.css", "text/css",
              "/icon.svg", "image/svg+xml", "/lib/three/three.module.min.js", "text/javascript", "/lib/three/controls/OrbitControls.js",
              "text/javascript");
      files.forEach((path, type) -> {
        HttpResponse<byte[]> answer = service.get(path);
        assertThat(answer.statusCode()).as(path).isEqualTo(200);
        assertThat(answer.headers().firstValue("Content-Type").orElse("")).startsWith(type);
        assertThat(service.get(path, "If-None-Match", answer.headers().firstValue("ETag").orElseThrow()).statusCode()).isEqualTo(304);
      });
    }
  }
}
