package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.ledger.TestPostgres;

/** Servers and workers as real processes on one database. */
@Tag("slow")
class WorkersTest {

  @TempDir
  private Path models;
  private String database;
  private Fleet fleet;

  @BeforeEach
  void begin() {
    database = TestPostgres.newUrl();
    fleet = new Fleet(database, models);
  }

  @AfterEach
  void end() {
    fleet.close();
  }

  @Test
  void whatOneServerTakesInAWorkerDoesAndAnotherServerShows() throws Exception {
    Fleet.Member one = fleet.start("serve");
    Fleet.Member two = fleet.start("serve");
    String id = fleet.upload(one, "house millis=300").path("id").textValue();
    assertThat(fleet.get(two, "/api/analyses/" + id).path("progress").path("stage").textValue()).contains("no worker is running");
    assertThat(fleet.get(two, "/api/health").path("status").textValue()).isEqualTo("degraded");
    fleet.start("work");
    JsonNode done = fleet.await(two, id);
    assertThat(done.path("state").textValue()).as(fleet.logs()).isEqualTo("done");
    assertThat(fleet.get(two, "/api/analyses/" + id + "/ledger")).isEqualTo(fleet.get(one, "/api/analyses/" + id + "/ledger"));
  }
}
