package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.ledger.TestPostgres;

/** A database that goes away and comes back, and two servers that want the same one. */
@Tag("slow")
class LostDatabaseTest {

  @TempDir
  private Path data;
  private String url;
  private TestService service;

  @BeforeEach
  void start() {
    url = TestPostgres.newUrl();
    service = new TestService(options(data.resolve("one")));
  }

  @AfterEach
  void stop() {
    TestPostgres.admitConnections(url);
    service.close();
  }

  private Options options(Path folder) {
    return Options.of(new FixtureAnalyzer(), folder).database(Optional.of(PostgresAddress.of(url, Optional.empty(), Optional.empty())))
        .port(0);
  }

  private void takeAway() {
    TestPostgres.refuseConnections(url);
    TestPostgres.cutConnections(url);
  }

  private JsonNode awaitAnswer(String path) {
    for (int i = 0; i < 100; i++) {
      HttpResponse<byte[]> answer = service.get(path);
      if (answer.statusCode() == 200) {
        return TestService.json(answer);
      }
      TestService.pause(100);
    }
    throw new AssertionError(path + " does not come back");
  }

  @Test
  void aConnectionThatWasCutIsOpenedAgainUnseen() {
    String id = service.analyse("house").path("id").textValue();
    for (int i = 0; i < 3; i++) {
      TestPostgres.cutConnections(url);
      assertThat(service.get("/api/analyses/" + id).statusCode()).isEqualTo(200);
    }
    String junction = service.ledger(id).path("junctions").path(0).path("id").textValue();
    TestPostgres.cutConnections(url);
    assertThat(service.review(id, junction, 0, Map.of("note", "kept")).statusCode()).isEqualTo(200);
    assertThat(service.reviews(id).path("reviews").path(0).path("note").textValue()).isEqualTo("kept");
  }

  @Test
  void whileItIsAwayCallersAreToldAndAfterwardsAllIsAsBefore() {
    String id = service.analyse("house").path("id").textValue();
    takeAway();
    for (String path : new String[] {"/api/health", "/api/analyses", "/api/analyses/" + id + "/ledger", "/api/projects"}) {
      HttpResponse<byte[]> answer = service.get(path);
      assertThat(answer.statusCode()).as(path).isEqualTo(503);
      assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
      JsonNode problem = TestService.json(answer);
      assertThat(problem.path("code").textValue()).isEqualTo("storage/unreachable");
      assertThat(problem.toString()).doesNotContain("postgres", "jdbc", "Exception", "localhost", "ledger1");
    }
    assertThat(service.upload("model", "a.ifc", "house").statusCode()).isEqualTo(503);
    assertThat(TestService.uploads(data.resolve("one")).resolve(id).getParent().toFile().list()).as("the refused upload is gone")
        .containsExactly(id);
    TestPostgres.admitConnections(url);
    assertThat(awaitAnswer("/api/health").path("status").textValue()).isEqualTo("ok");
    assertThat(service.ledger(id).path("junctions")).isNotEmpty();
    assertThat(service.analyse("house").path("state").textValue()).isEqualTo("done");
  }

  @Test
  void aResultThatIsReadyMeanwhileIsNotLost() {
    String id = TestService.json(service.upload("model", "a.ifc", "house millis=600")).path("id").textValue();
    TestService.pause(200);
    takeAway();
    TestService.pause(1500);
    TestPostgres.admitConnections(url);
    awaitAnswer("/api/health");
    assertThat(service.await(id).path("state").textValue()).isEqualTo("done");
    assertThat(service.ledger(id).path("junctions")).isNotEmpty();
  }

  @Test
  void aSecondServerIsRefusedUntilTheFirstEnds() {
    assertThatThrownBy(() -> Server.start(options(data.resolve("two")))).isInstanceOf(LedgerException.class)
        .hasMessageContaining("in use by another running server").hasMessageNotContaining("user=");
    service.close();
    service = new TestService(options(data.resolve("two")));
    assertThat(service.get("/api/health").statusCode()).isEqualTo(200);
  }

  @Test
  void aServerThatLostItsDatabaseToAnotherDoesNotWrite() {
    String id = service.analyse("house").path("id").textValue();
    String junction = service.ledger(id).path("junctions").path(0).path("id").textValue();
    takeAway();
    assertThat(service.get("/api/health").statusCode()).isEqualTo(503);
    TestPostgres.admitConnections(url);
    try (TestService other = new TestService(options(data.resolve("two")))) {
      assertThat(service.review(id, junction, 0, Map.of("note", "from the first")).statusCode()).isEqualTo(503);
      assertThat(other.review(id, junction, 0, Map.of("note", "from the second")).statusCode()).isEqualTo(200);
    }
    awaitAnswer("/api/health");
    assertThat(service.reviews(id).path("reviews").path(0).path("note").textValue()).isEqualTo("from the second");
  }

  @Test
  void anotherDatabaseDoesNotSweepAwayUploads() {
    String id = service.analyse("house").path("id").textValue();
    service.close();
    try (TestService embedded = new TestService(Options.of(new FixtureAnalyzer(), data.resolve("one")))) {
      assertThat(TestService.json(embedded.get("/api/analyses")).path("analyses")).isEmpty();
    }
    service = new TestService(options(data.resolve("one")));
    HttpResponse<byte[]> again = service.send("POST", "/api/analyses/" + id + "/recompute", Map.of("system", Map.of()));
    assertThat(service.await(TestService.json(again).path("id").textValue()).path("state").textValue()).isEqualTo("done");
  }
}
