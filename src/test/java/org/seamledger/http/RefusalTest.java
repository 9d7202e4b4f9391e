package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamledger.http.setting.Limits;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.StorageEngine;

/** What goes wrong, and what callers are told: always problem+json (RFC 9457) with a code, never a trace. */
@ParameterizedClass
@EnumSource
@Tag("slow")
class RefusalTest {

  @Parameter
  private StorageEngine engine;

  @TempDir
  private Path data;
  private TestService service;

  @BeforeEach
  void start() {
    Limits limits = new Limits(1000, 5000, 3, 2000, 1, 1, Duration.ofMillis(1500), 4, Duration.ofSeconds(1));
    service = new TestService(Options.of(new FixtureAnalyzer(), data).limits(limits).database(engine.newDatabase()));
  }

  @AfterEach
  void stop() {
    service.close();
  }

  private static void refused(HttpResponse<byte[]> answer, int status, String code) {
    String body = new String(answer.body(), StandardCharsets.UTF_8);
    assertThat(answer.statusCode()).as(body).isEqualTo(status);
    assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
    JsonNode problem = TestService.json(answer);
    assertThat(problem.path("code").textValue()).isEqualTo(code);
    assertThat(problem.path("status").intValue()).isEqualTo(status);
    assertThat(problem.path("detail").textValue()).isNotBlank().doesNotContain("Exception", "org.seamledger", "/tmp");
  }

  private void leavesNothing() throws Exception {
    for (Path folder : List.of(TestService.uploads(data), data.resolve("scratch"))) {
      try (Stream<Path> left = Files.list(folder)) {
        assertThat(left).as(folder.toString()).isEmpty();
      }
    }
    assertThat(TestService.json(service.get("/api/analyses")).path("analyses")).isEmpty();
  }

  @Test
  void uploadsThatAreNotWhatTheyShouldBe() throws Exception {
    refused(service.send("POST", "/api/analyses", "{}"), 415, "upload/type");
    refused(service.upload("system", "s.json", "{}"), 400, "upload/no-model");
    refused(service.upload("model", "a.ifc", "house", "roof", "b.ifc", "house"), 400, "upload/part");
    refused(service.upload("model", "a.ifc", ""), 400, "upload/empty");
    refused(service.upload("model", "a.ifc", "house", "system", "a", "{}", "system", "b", "{}"), 400, "upload/system");
    refused(service.upload("model", "a.ifc", "house", "project", "", "no-such-project"), 404, "not-found");
    refused(
        service.send("POST", "/api/analyses", "broken".getBytes(StandardCharsets.UTF_8), "Content-Type", "multipart/form-data; boundary=x"),
        400, "upload/broken");
    refused(service.send("POST", "/api/analyses", "broken".getBytes(StandardCharsets.UTF_8), "Content-Type", "multipart/form-data"), 400,
        "upload/broken");
    leavesNothing();
  }

  @Test
  void uploadsThatAreTooLargeOrTooMany() throws Exception {
    refused(service.upload("model", "a.ifc", "house" + " ".repeat(1000)), 413, "upload/too-large");
    String most = "house" + " ".repeat(900);
    refused(service.upload("model", "a", most, "model", "b", most, "model", "c", most, "model", "d", "house"), 413, "upload/too-many");
    refused(service.upload("model", "a", most, "model", "b", most, "model", "c", most, "model", "d", most, "model", "e", most, "model", "f",
        most), 413, "upload/too-large");
    leavesNothing();
  }

  @Test
  void namesOfFilesAreTextAndNothingElse() {
    for (String name : List.of("../../../../tmp/evil.ifc", "..\\\\..\\\\evil.ifc", "/etc/passwd", "<script>alert(1)</script>.ifc",
        "a\u202Eb.ifc")) {
      JsonNode a = TestService.json(service.upload("model", name, "house"));
      JsonNode ended = service.await(a.path("id").textValue());
      assertThat(ended.path("state").textValue()).isEqualTo("done");
      assertThat(ended.path("title").textValue()).doesNotContain("/", "\\", "\u202E").as("what is left of the name is kept").isNotBlank();
      assertThat(TestService.uploads(data).resolve(a.path("id").textValue()).resolve("0.ifc").toFile().isFile()
          || TestService.uploads(data).resolve(a.path("id").textValue()).toFile().list().length == 1).isTrue();
    }
  }

  @Test
  void thingsThatAreNotThere() {
    String none = "0".repeat(32);
    for (String path : List.of("", "/ledger", "/reviews", "/events", "/changes?from=" + none)) {
      refused(service.get("/api/analyses/" + none + path, "Accept", path.equals("/events") ? "text/event-stream" : "*/*"), 404,
          "not-found");
    }
    refused(service.get("/api/projects/" + none), 404, "not-found");
    refused(service.send("PATCH", "/api/projects/" + none, Map.of("name", "x")), 404, "not-found");
    refused(service.send("DELETE", "/api/analyses/" + none, null), 404, "not-found");
    refused(service.send("DELETE", "/api/analyses/" + none + "?remove=true", null), 404, "not-found");
    refused(service.send("POST", "/api/analyses/" + none + "/recompute", "{\"system\":{}}"), 404, "not-found");
    for (String path : List.of("/nothing", "/api/nothing", "/js/nothing.js", "/..%2f..%2fetc/passwd", "/js/..%2findex.html",
        "/web/index.html")) {
      assertThat(service.get(path).statusCode()).as(path).isIn(400, 404);
    }
    refused(service.get("/api/nothing"), 404, "not-found");
    refused(service.send("DELETE", "/api/health", null), 405, "method");
  }

  @Test
  void bodiesThatMakeNoSense() {
    String id = service.analyse("house").path("id").textValue();
    String junction = service.ledger(id).path("junctions").path(0).path("id").textValue();
    String path = "/api/analyses/" + id + "/reviews/" + junction;
    refused(service.send("PUT", path, "{not json"), 400, "body/not-json");
    refused(service.send("PUT", path, "{} {}"), 400, "body/not-json");
    refused(service.send("PUT", path, "[]"), 400, "body/not-an-object");
    refused(service.send("PUT", path, "{\"state\":\"checked\"}"), 400, "body/value");
    refused(service.send("PUT", path, "{\"state\":7,\"version\":0}"), 400, "body/value");
    refused(service.send("PUT", path, "{\"state\":\"checked\",\"version\":0,\"note\":\"" + "x".repeat(2000) + "\"}"), 413,
        "body/too-large");
    refused(service.send("PUT", path, "{}".getBytes(StandardCharsets.UTF_8), "Content-Type", "text/plain"), 415, "body/type");
    refused(service.review(id, junction, 0, Map.of("state", "splendid")), 422, "invalid");
    refused(service.review(id, junction, 0, Map.of("kind", "roundabout", "reason", "x")), 422, "invalid");
    refused(service.review(id, junction, 0, Map.of("kind", "hip")), 422, "invalid");
    refused(service.review(id, "J-not-there", 0, Map.of()), 404, "not-found");
    refused(service.review(id, junction, 5, Map.of()), 409, "conflict");
    refused(service.get("/api/analyses/" + id + "/changes"), 400, "query/from");
    refused(service.send("POST", "/api/analyses/" + id + "/recompute", "{\"system\":[]}"), 400, "body/value");
    refused(service.send("POST", "/api/projects", Map.of("name", "  ")), 422, "invalid");
    refused(service.send("PUT", "/api/analyses/" + id + "/findings/nothing", Map.of("state", "open", "version", 0)), 404, "not-found");
    String finding = service.reviews(id).path("findings").path(0).path("id").textValue();
    refused(service.send("PUT", "/api/analyses/" + id + "/findings/" + finding, Map.of("state", "gone", "version", 0)), 422, "invalid");
    refused(service.send("POST", "/api/analyses/" + id + "/findings/" + finding + "/comments", Map.of("text", " ")), 422, "invalid");
  }

  @Test
  void analysesThatFailSayWhy() {
    JsonNode unreadable = service.analyse("unreadable");
    assertThat(unreadable.path("state").textValue()).isEqualTo("failed");
    assertThat(unreadable.path("problem").path("code").textValue()).isEqualTo("model/unreadable");
    assertThat(unreadable.path("problem").path("detail").textValue())
        .isEqualTo("hall.ifc:7:12: expected a semicolon, found the end of the file");
    JsonNode fault = service.analyse("fault");
    assertThat(fault.path("problem").path("code").textValue()).isEqualTo("internal");
    assertThat(fault.toString()).doesNotContain("secret");
    JsonNode nonsense = service.analyse("nonsense");
    assertThat(nonsense.path("state").textValue()).as("half a result is no result").isEqualTo("failed");
    refused(service.get("/api/analyses/" + nonsense.path("id").textValue() + "/ledger"), 409, "conflict");
  }

  @Test
  void analysesThatTakeTooLongAreStopped() {
    JsonNode slow = service.analyse("house millis=20000");
    assertThat(slow.path("state").textValue()).isEqualTo("failed");
    assertThat(slow.path("problem").path("code").textValue()).isEqualTo("analysis/too-long");
  }

  @Test
  void aFullQueueIsSaidToBeFull() {
    String running = TestService.json(service.upload("model", "a.ifc", "house millis=1200")).path("id").textValue();
    TestService.pause(200);
    String waiting = TestService.json(service.upload("model", "a.ifc", "house")).path("id").textValue();
    refused(service.upload("model", "a.ifc", "house"), 503, "busy");
    service.await(running);
    service.await(waiting);
    assertThat(service.upload("model", "a.ifc", "house").statusCode()).isEqualTo(202);
  }
}
