package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.ledger.TestPostgres;

/** Two servers and a worker as real processes on one database. */
@Tag("slow")
class WorkersTest {

  @TempDir
  private static Path models;
  private static Fleet fleet;
  private static Fleet.Member one;
  private static Fleet.Member two;
  private static Fleet.Member worker;

  @BeforeAll
  static void begin() throws Exception {
    fleet = new Fleet(TestPostgres.newUrl(), models, "-Dseamledger.longest=4");
    one = fleet.start("serve");
    two = fleet.start("serve");
    String early = fleet.upload(one, "house").path("id").textValue();
    assertThat(fleet.get(two, "/api/analyses/" + early).path("progress").path("stage").textValue())
        .isEqualTo("Waiting: no worker is running");
    assertThat(fleet.get(two, "/api/health").path("status").textValue()).isEqualTo("degraded");
    worker = fleet.start("work");
    assertThat(fleet.await(two, early).path("state").textValue()).as(fleet.logs()).isEqualTo("done");
  }

  @AfterAll
  static void end() {
    fleet.close();
  }

  private static String upload(Fleet.Member server, String words, String... fields) throws Exception {
    return fleet.upload(server, words, fields).path("id").textValue();
  }

  /** One process, with the same made-up analyses, is what the ledger is compared with. */
  @Test
  void theLedgerIsThatOfOneProcessToTheByte(@TempDir Path data) throws Exception {
    String id = upload(one, "house pitch=0.7 width=11");
    fleet.await(two, id);
    JsonNode alone;
    try (TestService service = TestService.on(data)) {
      alone = service.analyse("house pitch=0.7 width=11");
    }
    assertThat(fleet.get(two, "/api/analyses/" + id).path("ledgerSha256")).isEqualTo(alone.path("ledgerSha256"));
  }

  @Test
  void progressReachesAStreamOfTheOtherServerUntilTheEnd() throws Exception {
    String id = upload(one, "house millis=2500");
    HttpResponse<Stream<String>> events = HttpClient.newHttpClient().send(
        HttpRequest.newBuilder(URI.create(two.url).resolve("/api/analyses/" + id + "/events")).header("Accept", "text/event-stream")
            .build(),
        HttpResponse.BodyHandlers.ofLines());
    List<String> lines = events.body().filter(l -> l.startsWith("data:") || l.startsWith("event:")).toList();
    assertThat(lines).anyMatch(l -> l.contains("Finding junctions")).contains("event: end");
    assertThat(lines.get(lines.size() - 1)).contains("\"state\":\"done\"", "\"fraction\":1.0");
  }

  @Test
  void whatIsCancelledAtOneServerEndsInTheWorker() throws Exception {
    String id = upload(one, "house millis=20000");
    awaitState(two, id, "running");
    JsonNode after = fleet.call(two, "DELETE", "/api/analyses/" + id, "application/json", "");
    assertThat(after.path("state").textValue()).isEqualTo("cancelled");
    assertThat(fleet.await(one, upload(one, "house")).path("state").textValue()).as("the worker is free again").isEqualTo("done");
  }

  private static void awaitState(Fleet.Member server, String id, String state) throws Exception {
    for (int i = 0; i < 400 && !fleet.get(server, "/api/analyses/" + id).path("state").textValue().equals(state); i++) {
      Thread.sleep(25);
    }
    assertThat(fleet.get(server, "/api/analyses/" + id).path("state").textValue()).isEqualTo(state);
  }

  @Test
  void aDecisionTakenAtOneServerIsFollowedForTheOther() throws Exception {
    String id = upload(one, "house");
    fleet.await(one, id);
    String before = fleet.get(two, "/api/analyses/" + id).path("ledgerSha256").textValue();
    String junction = fleet.get(one, "/api/analyses/" + id + "/ledger").path("junctions").path(0).path("id").textValue();
    fleet.call(one, "PUT", "/api/analyses/" + id + "/reviews/" + junction, "application/json",
        "{\"state\":\"checked\",\"note\":\"\",\"version\":0,\"kind\":\"valley\",\"reason\":\"seen\"}");
    for (int i = 0; i < 400 && !fleet.get(two, "/api/analyses/" + id).path("decisions").path("followed").booleanValue(); i++) {
      Thread.sleep(25);
    }
    JsonNode after = fleet.get(two, "/api/analyses/" + id);
    assertThat(after.path("decisions").path("followed").booleanValue()).as(fleet.logs()).isTrue();
    assertThat(after.path("ledgerSha256").textValue()).isNotEqualTo(before);
  }

  /** Eight models of one project, then one of another: the worker takes that one next, though it came last. */
  @Test
  void manyModelsOfOneProjectDontHoldUpAnother() throws Exception {
    JsonNode first = fleet.upload(one, "house millis=300");
    List<String> many = new ArrayList<>(List.of(first.path("id").textValue()));
    for (int i = 0; i < 7; i++) {
      many.add(upload(one, "house millis=300", "project", first.path("project").textValue()));
    }
    String other = upload(two, "house");
    String urgent = upload(two, "house", "project", first.path("project").textValue(), "priority", "high");
    fleet.await(one, other);
    fleet.await(one, urgent);
    long waiting = 0;
    for (String id : many) {
      waiting += fleet.get(one, "/api/analyses/" + id).path("state").textValue().equals("queued") ? 1 : 0;
    }
    assertThat(waiting).as("of the eight that came before").isGreaterThanOrEqualTo(3);
    String metrics = HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(one.url).resolve("/metrics")).build(),
        HttpResponse.BodyHandlers.ofString()).body();
    assertThat(metrics).containsPattern("seamledger_analyses_waiting [1-9]")
        .containsPattern("oldest_waiting_seconds (0\\.[0-9]*[1-9]|[1-9])")
        .contains("seamledger_workers 1");
    for (String id : many) {
      assertThat(fleet.await(two, id).path("state").textValue()).isEqualTo("done");
    }
  }

  @Test
  void theSameModelTwiceIsOneFile() throws Exception {
    fleet.await(one, upload(one, "house chimney=Twice"));
    fleet.await(one, upload(two, "house chimney=Twice"));
    try (Stream<Path> files = Files.walk(models.resolve("sha256"))) {
      assertThat(files.filter(Files::isRegularFile).filter(f -> {
        try {
          return Files.readString(f).contains("chimney=Twice");
        } catch (java.io.IOException e) {
          return false;
        }
      })).hasSize(1);
    }
  }

  @Test
  void aBadModelIsAFindingAndNotTheEndOfTheWorker() throws Exception {
    JsonNode ended = fleet.await(two, upload(one, "unreadable"));
    assertThat(ended.path("state").textValue()).isEqualTo("failed");
    assertThat(ended.path("problem").path("code").textValue()).isEqualTo("model/unreadable");
    assertThat(fleet.await(two, upload(one, "fault")).path("problem").path("code").textValue()).isEqualTo("internal");
    assertThat(worker.isAlive()).isTrue();
  }

  @Test
  void oneThatTakesTooLongIsEndedAndSaysSo() throws Exception {
    JsonNode ended = fleet.await(two, upload(one, "house millis=60000"));
    assertThat(ended.path("problem").path("code").textValue()).isEqualTo("analysis/too-long");
    assertThat(worker.isAlive()).isTrue();
  }
}
