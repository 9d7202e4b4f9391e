package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
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

/** The service as its callers meet it. {@link TestService} holds every answer here against /openapi.json as well. */
@ParameterizedClass
@EnumSource
@Tag("slow")
class ServiceTest {

  @Parameter
  private StorageEngine engine;

  @TempDir
  private Path data;
  private TestService service;

  @BeforeEach
  void start() {
    service = new TestService(Options.of(new FixtureAnalyzer(), data).database(engine.newDatabase()));
  }

  @AfterEach
  void stop() {
    service.close();
  }

  @Test
  void describesExactlyTheAddressesThatItHas() {
    Set<String> described = new TreeSet<>();
    TestService.json(service.get("/openapi.json")).path("paths").properties()
        .forEach(p -> p.getValue().fieldNames().forEachRemaining(m -> described.add(m.toUpperCase(Locale.ROOT) + " " + p.getKey())));
    assertThat(described).isEqualTo(new TreeSet<>(service.server.addresses()));
  }

  @Test
  void tellsItsHealthAndCounts() {
    assertThat(TestService.json(service.get("/api/health")).path("status").textValue()).isEqualTo("ok");
    service.analyse("house");
    String counts = "";
    // The result is there a moment before its worker has ended and counted it.
    for (int i = 0; i < 200 && !counts.contains("seamledger_analyses_ended_total{"); i++) {
      TestService.pause(20);
      counts = new String(service.get("/metrics").body(), StandardCharsets.UTF_8);
    }
    assertThat(counts).contains("seamledger_analyses_ended_total{state=\"done\"} 1\n", "seamledger_analyses_stored{state=\"done\"} 1\n",
        "seamledger_requests_total{method=\"POST\",route=\"/api/analyses\",status=\"202\"} 1\n");
    assertThat(counts.lines().filter(l -> !l.startsWith("#"))).allMatch(l -> l.matches("[a-z_]+(\\{([a-z]+=\"[^\"]*\",?)+})? [0-9.]+"),
        "Prometheus text format 0.0.4");
  }

  @Test
  void answersAnUploadAtOnceAndTheResultLater() {
    HttpResponse<byte[]> answer = service.upload("model", "hall.ifc", "house millis=300");
    assertThat(answer.statusCode()).isEqualTo(202);
    JsonNode begun = TestService.json(answer);
    assertThat(answer.headers().firstValue("Location")).contains("/api/analyses/" + begun.path("id").textValue());
    assertThat(service.get(begun.path("links").path("self").textValue()).statusCode()).isEqualTo(200);
    JsonNode ended = service.await(begun.path("id").textValue());
    assertThat(ended.path("state").textValue()).isEqualTo("done");
    JsonNode ledger = TestService.json(service.get(begun.path("links").path("ledger").textValue()));
    assertThat(ledger).isEqualTo(LedgerFixtures.house(0.5, 14, true, "Chimney", ""));
  }

  @Test
  void takesSeveralModelsAndARoofSystem() {
    JsonNode a =
        service.analyse("house", "model", "pipes.ifc", "house", "system", "system.json", "{\"waste\":{\"tape\":\"20 %\"}}");
    assertThat(a.path("files")).extracting(f -> f.path("name").textValue() + " " + f.path("role").textValue())
        .containsExactly("hall.ifc model", "pipes.ifc model", "system.json system");
    assertThat(service.ledger(a.path("id").textValue()).path("system").path("waste").path("tape").textValue()).isEqualTo("20 %");
  }

  @Test
  void sendsTheResultCompressedAndOnlyWhenItIsNew() throws IOException {
    String path = "/api/analyses/" + service.analyse("house").path("id").textValue() + "/ledger";
    HttpResponse<byte[]> plain = service.get(path);
    HttpResponse<byte[]> packed = service.get(path, "Accept-Encoding", "gzip");
    assertThat(plain.headers().firstValue("Content-Encoding")).isEmpty();
    assertThat(packed.headers().firstValue("Content-Encoding")).contains("gzip");
    assertThat(packed.body().length).isLessThan(plain.body().length / 3);
    assertThat(new GZIPInputStream(new ByteArrayInputStream(packed.body())).readAllBytes()).isEqualTo(plain.body());
    String etag = plain.headers().firstValue("ETag").orElseThrow();
    HttpResponse<byte[]> again = service.get(path, "If-None-Match", "\"other\", W/" + etag);
    assertThat(again.statusCode()).isEqualTo(304);
    assertThat(again.body()).isEmpty();
    assertThat(service.get(path, "If-None-Match", "\"other\"").statusCode()).isEqualTo(200);
    assertThat(service.get(path, "Accept-Encoding", "gzip;q=0").headers().firstValue("Content-Encoding")).isEmpty();
  }

  @Test
  void tellsProgressAsItHappens() {
    String id = TestService.json(service.upload("model", "hall.ifc", "house millis=600")).path("id").textValue();
    HttpRequest watch = HttpRequest.newBuilder(URI.create(service.server.url()).resolve("/api/analyses/" + id + "/events"))
        .header("Accept", "text/event-stream").build();
    List<String> lines = service.client.sendAsync(watch, HttpResponse.BodyHandlers.ofLines()).join().body().toList();
    List<String> events = lines.stream().filter(l -> l.startsWith("event: ")).toList();
    assertThat(events).contains("event: progress").endsWith("event: end");
    assertThat(lines).anyMatch(l -> l.startsWith("data: ") && l.contains("Finding junctions"));
    assertThat(lines.stream().filter(l -> l.startsWith("data: ")).reduce((a, b) -> b).orElseThrow()).contains("\"state\":\"done\"");
  }

  @Test
  void tellsTheEndAtOnceToWhoComesLate() {
    String id = service.analyse("house").path("id").textValue();
    HttpRequest watch = HttpRequest.newBuilder(URI.create(service.server.url()).resolve("/api/analyses/" + id + "/events"))
        .header("Accept", "text/event-stream").build();
    assertThat(service.client.sendAsync(watch, HttpResponse.BodyHandlers.ofLines()).join().body()).contains("event: end");
  }

  @Test
  void stopsAnAnalysisOnRequest() {
    String id = TestService.json(service.upload("model", "hall.ifc", "house millis=20000")).path("id").textValue();
    HttpResponse<byte[]> stopped = service.send("DELETE", "/api/analyses/" + id, null);
    assertThat(stopped.statusCode()).isEqualTo(200);
    assertThat(service.await(id).path("state").textValue()).isEqualTo("cancelled");
    assertThat(service.get("/api/analyses/" + id + "/ledger").statusCode()).isEqualTo(409);
    long begun = System.nanoTime();
    service.analyse("house");
    assertThat(System.nanoTime() - begun).as("the worker is free again").isLessThan(10_000_000_000L);
  }

  @Test
  void stopsWhatWaitsBeforeItRuns() {
    int running = Limits.standard().running();
    List<String> ids = new ArrayList<>();
    for (int i = 0; i <= running; i++) {
      ids.add(TestService.json(service.upload("model", "hall.ifc", "house millis=1500")).path("id").textValue());
    }
    String last = ids.get(running);
    assertThat(service.send("DELETE", "/api/analyses/" + last, null).statusCode()).isEqualTo(200);
    ids.forEach(service::await);
    assertThat(service.await(last).path("state").textValue()).isEqualTo("cancelled");
    assertThat(service.await(ids.get(0)).path("state").textValue()).isEqualTo("done");
  }

  @Test
  void removesAnAnalysisWithItsFilesOnlyWhenAsked() throws IOException {
    String id = service.analyse("house").path("id").textValue();
    assertThat(service.send("DELETE", "/api/analyses/" + id, null).statusCode()).isEqualTo(409);
    assertThat(TestService.uploads(data).resolve(id)).isDirectory();
    assertThat(service.send("DELETE", "/api/analyses/" + id + "?remove=true", null).statusCode()).isEqualTo(204);
    assertThat(service.get("/api/analyses/" + id).statusCode()).isEqualTo(404);
    try (Stream<Path> left = Files.list(TestService.uploads(data))) {
      assertThat(left).isEmpty();
    }
    assertThat(TestService.json(service.get("/api/projects")).path("projects")).isEmpty();
  }

  @Test
  void computesAgainUnderAnotherRoofSystem() {
    JsonNode first = service.analyse("house");
    String id = first.path("id").textValue();
    HttpResponse<byte[]> answer =
        service.send("POST", "/api/analyses/" + id + "/recompute", "{\"system\":{\"waste\":{\"tape\":\"50 %\"}}}");
    JsonNode second = service.await(TestService.json(answer).path("id").textValue());
    assertThat(second.path("revision").asInt()).isEqualTo(2);
    assertThat(second.path("project")).isEqualTo(first.path("project"));
    JsonNode changes = TestService.json(service.get("/api/analyses/" + second.path("id").textValue() + "/changes?from=" + id));
    assertThat(changes.path("changed")).isEmpty();
    assertThat(changes.path("quantities")).anyMatch(q -> q.path("name").textValue().equals("tape.orderM")
        && Math.abs(q.path("after").doubleValue() / q.path("before").doubleValue() - 1.5 / 1.1) < 1e-7);
    // The models belong to both revisions: with the first gone, the second can still be computed again.
    service.send("DELETE", "/api/analyses/" + id + "?remove=true", null);
    HttpResponse<byte[]> third = service.send("POST", "/api/analyses/" + second.path("id").textValue() + "/recompute", "{\"system\":{}}");
    assertThat(service.await(TestService.json(third).path("id").textValue()).path("state").textValue()).isEqualTo("done");
  }

  @Test
  void keepsProjectsAndTheirNames() {
    JsonNode made = TestService.json(service.send("POST", "/api/projects", Map.of("name", "Village hall\r\nSet-Cookie: x")));
    assertThat(made.path("name").textValue()).isEqualTo("Village hall  Set-Cookie: x");
    String id = made.path("id").textValue();
    JsonNode a = service.analyse("house", "project", "", id);
    assertThat(a.path("project").textValue()).isEqualTo(id);
    service.send("PATCH", "/api/projects/" + id, Map.of("name", "Hall"));
    JsonNode project = TestService.json(service.get("/api/projects/" + id));
    assertThat(project.path("name").textValue()).isEqualTo("Hall");
    assertThat(project.path("analyses")).hasSize(1);
  }

  @Test
  void twoPeopleNeverOverwriteEachOtherUnseen() {
    String id = service.analyse("house").path("id").textValue();
    String junction = service.ledger(id).path("junctions").path(0).path("id").textValue();
    assertThat(service.review(id, junction, 0, Map.of("note", "looks right")).statusCode()).isEqualTo(200);
    assertThat(service.review(id, junction, 0, Map.of("note", "looks wrong")).statusCode()).isEqualTo(409);
    assertThat(service.reviews(id).path("reviews").path(0).path("note").textValue()).isEqualTo("looks right");
    assertThat(service.review(id, junction, 1, Map.of("kind", "hip", "reason", "seen on site")).statusCode()).isEqualTo(200);
    JsonNode review = service.reviews(id).path("reviews").path(0);
    assertThat(review.path("kind").textValue()).isEqualTo("hip");
    assertThat(review.path("version").asInt()).isEqualTo(2);
  }

  @Test
  void findingsAreAcceptedAssignedAndDiscussed() {
    String id = service.analyse("house").path("id").textValue();
    JsonNode mark = service.reviews(id).path("findings").path(0);
    String path = "/api/analyses/" + id + "/findings/" + mark.path("id").textValue();
    assertThat(service.send("PUT", path, Map.of("state", "accepted", "version", 0)).statusCode()).as("without a reason").isEqualTo(422);
    assertThat(service.send("PUT", path, Map.of("state", "accepted", "reason", "agreed", "version", 0)).statusCode()).as("by nobody")
        .isEqualTo(422);
    assertThat(
        service
            .send("PUT", path,
                Map.of("state", "accepted", "reason", "agreed with the designer", "acceptedBy", "A. Planner", "assignee", "roofer",
                    "version", 0))
            .statusCode())
        .isEqualTo(200);
    assertThat(service.send("POST", path + "/comments", Map.of("author", "estimator", "text", "See sheet 3.")).statusCode()).isEqualTo(201);
    JsonNode now = service.reviews(id).path("findings").path(0);
    assertThat(now.path("state").textValue()).isEqualTo("accepted");
    assertThat(now.path("acceptedBy").textValue()).isEqualTo("A. Planner");
    JsonNode file = TestService.json(service.get("/api/analyses/" + id + "/decisions"));
    JsonNode accepted = file.path("accepted").path(0);
    assertThat(accepted.path("by").textValue()).isEqualTo("A. Planner");
    assertThat(accepted.path("when").textValue()).isEqualTo(now.path("acceptedAt").textValue()).startsWith("20");
    JsonNode finding = service.ledger(id).path("findings").path(0);
    assertThat(accepted.path("finding").path("code")).isEqualTo(finding.path("code"));
    assertThat(accepted.path("finding").path("junction")).isEqualTo(finding.path("junction"));
    assertThat(accepted.path("finding").path("elements")).isEqualTo(finding.path("elements"));
    assertThat(now.path("comments").path(0).path("text").textValue()).isEqualTo("See sheet 3.");
  }

  @Test
  void theNextRevisionKeepsReviewsOfWhatDidNotChange() {
    JsonNode first = service.analyse("house width=14");
    String id = first.path("id").textValue();
    JsonNode junctions = service.ledger(id).path("junctions");
    for (JsonNode j : junctions) {
      service.review(id, j.path("id").textValue(), 0, Map.of());
    }
    JsonNode second = service.analyse("house width=15 pipe=no", "project", "", first.path("project").textValue());
    String next = second.path("id").textValue();
    Map<String, Long> states = new TreeMap<>();
    service.reviews(next).path("reviews").forEach(r -> states.merge(r.path("state").textValue(), 1L, Long::sum));
    JsonNode changes = TestService.json(service.get("/api/analyses/" + next + "/changes?from=" + id));
    assertThat(changes.path("removed")).extracting(l -> l.path("kind").textValue()).containsExactly("pipe");
    assertThat(changes.path("added")).isEmpty();
    assertThat(states).containsEntry("checked", changes.path("same").asLong()).containsEntry("recheck",
        (long) changes.path("changed").size());
    assertThat(changes.path("same").asInt() + changes.path("changed").size()).isEqualTo(junctions.size() - 1);
  }

  @Test
  void offersTheSamplesOfItsFolderAndNothingElse(@TempDir Path samples) throws IOException {
    Files.writeString(samples.resolve("hall.ifc"), "house");
    Files.writeString(samples.resolve("hall.txt"), "no model");
    Files.writeString(samples.resolve("README.md"),
        "| Sample | What it is | Schema |\n|---|---|---|\n| [`hall`](hall.ifc) | A hall. | IFC4 |\n");
    Files.writeString(samples.resolve("secret.key"), "secret");
    try (TestService other =
        new TestService(Options.of(new FixtureAnalyzer(), data.resolve("other")).database(engine.newDatabase()).samples(samples))) {
      JsonNode list = TestService.json(other.get("/api/samples")).path("samples");
      assertThat(list).hasSize(1);
      assertThat(list.path(0).path("about").textValue()).isEqualTo("A hall.");
      assertThat(other.send("POST", "/api/samples/hall.ifc/analyses", null).statusCode()).isEqualTo(202);
      for (String name : List.of("secret.key", "..%2Fhall.ifc", "%2e%2e", "other", "hall.txt")) {
        assertThat(other.send("POST", "/api/samples/" + name + "/analyses", null).statusCode()).as(name).isIn(400, 404);
      }
    }
  }

  @Test
  void opensOnTheModelsOfTheCommandLineOnce(@TempDir Path folder) throws IOException {
    Path model = Files.writeString(folder.resolve("hall.ifc"), "house");
    Options options = Options.of(new FixtureAnalyzer(), data.resolve("other")).database(engine.newDatabase()).models(List.of(model));
    String id;
    try (TestService other = new TestService(options)) {
      id = TestService.json(other.get("/api/start")).path("analysis").textValue();
      assertThat(other.await(id).path("state").textValue()).isEqualTo("done");
    }
    try (TestService other = new TestService(options)) {
      assertThat(TestService.json(other.get("/api/start")).path("analysis").textValue()).as("unchanged: nothing to do").isEqualTo(id);
    }
    Files.writeString(model, "house width=16");
    try (TestService other = new TestService(options)) {
      String next = TestService.json(other.get("/api/start")).path("analysis").textValue();
      assertThat(next).isNotEqualTo(id);
      assertThat(other.await(next).path("revision").asInt()).as("changed: the next revision").isEqualTo(2);
    }
  }
}
