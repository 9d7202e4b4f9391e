package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.ledger.TestPostgres;

/** Workers whose common clock is set ahead and back, by hours and days, while they work. */
@Tag("slow")
class SetClockTest {

  @TempDir
  private Path models;
  private final String database = TestPostgres.newUrl();
  private Fleet fleet;

  @AfterEach
  void end() {
    fleet.close();
  }

  /** As if the database's clock had been set ahead, or back, since somebody asked it last. */
  private void set(Duration ahead) {
    assertThat(TestPostgres.rows(database, "UPDATE shared_time SET clock = clock - " + ahead.toMillis() + " RETURNING 1")).hasSize(1);
  }

  @Test
  void nobodyIsTakenForDeadAndWhatWaitsIsNotForgotten() throws Exception {
    // A busy machine may be silent for some seconds; it is not to count as a death.
    fleet = new Fleet(database, models, "-Dseamledger.heartbeat=5000");
    Fleet.Member server = fleet.start("serve");
    fleet.start("work");
    fleet.start("work");
    String running = fleet.upload(server, "house millis=6000").path("id").textValue();
    for (int i = 0; i < 1200 && !fleet.get(server, "/api/analyses/" + running).path("state").textValue().equals("running"); i++) {
      Thread.sleep(50);
    }
    for (Duration jump : new Duration[] {Duration.ofDays(1), Duration.ofDays(-1), Duration.ofHours(-30), Duration.ofHours(3)}) {
      set(jump);
      String next = fleet.upload(server, "house").path("id").textValue();
      assertThat(fleet.await(server, next).path("state").textValue()).as("sent after it was set by %s", jump).isEqualTo("done");
    }
    assertThat(fleet.await(server, running).path("state").textValue()).isEqualTo("done");
    assertThat(TestPostgres.rows(database, "SELECT MAX(starts) FROM analysis")).as("each was begun once").containsExactly("1");
    assertThat(fleet.logs()).doesNotContain("its worker died");
  }
}
