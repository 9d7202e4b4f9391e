package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Clocks that are set while processes work. */
@Tag("slow")
class SharedTimeTest {

  private static final long DAY = Duration.ofDays(1).toMillis();

  private final String url = TestPostgres.newUrl();
  private final PostgresAddress address = PostgresAddress.of(url, Optional.empty(), Optional.empty());
  private final Database db = Database.open(new PostgresEngine(address, true));
  private final PostgresConnections connections = new PostgresConnections(address);
  private final AtomicLong nanos = new AtomicLong();

  @AfterEach
  void close() {
    connections.close();
    db.close();
  }

  private SharedTime process() {
    return new SharedTime(connections, nanos::get);
  }

  private void passes(Duration time) {
    nanos.addAndGet(time.toNanos());
  }

  /** As if the database's clock had been set ahead (or back) since it was asked last. */
  private void set(long millis) {
    db.stepwise(() -> db.run("UPDATE shared_time SET clock = clock - ?", millis));
  }

  /** By no more than a few questions can take it on. */
  private static void requireLater(Instant now, Instant before) {
    assertThat(Duration.between(before, now)).isBetween(Duration.ZERO, SharedTime.MOST.multipliedBy(4));
  }

  @Test
  void aClockThatIsSetMovesNobodyFar() {
    SharedTime one = process();
    SharedTime other = process();
    Instant first = one.now();
    assertThat(Duration.between(first, other.now()).abs()).isLessThanOrEqualTo(SharedTime.MOST);
    for (long jump : new long[] {DAY, -DAY, 365 * DAY, -365 * DAY}) {
      Instant before = one.now();
      set(jump);
      passes(Duration.ofSeconds(2));
      requireLater(one.now(), before);
      requireLater(other.now(), before);
      requireLater(process().now(), before);
    }
  }

  @Test
  void itGoesOnByTheDatabasesClockAndNeverBack() {
    SharedTime time = process();
    Instant last = time.now();
    for (int i = 0; i < 10; i++) {
      set(1500);
      passes(Duration.ofMillis(1500));
      Instant now = time.now();
      assertThat(Duration.between(last, now)).isBetween(Duration.ofMillis(1499), Duration.ofMillis(2001));
      last = now;
    }
  }

  @Test
  void withoutADatabaseItStandsSoon() {
    SharedTime time = process();
    Instant first = time.now();
    connections.close();
    TestPostgres.refuseConnections(url);
    TestPostgres.cutConnections(url);
    try {
      passes(Duration.ofHours(3));
      assertThat(time.now()).isEqualTo(first.plus(SharedTime.MOST));
      assertThatThrownBy(() -> process().now()).isInstanceOf(IllegalStateException.class);
    } finally {
      TestPostgres.admitConnections(url);
    }
  }

  @Test
  void whoDiedBeforeTheClockWasSetBackDoesNotSeemToLive() {
    Processes processes = new Processes(db);
    processes.seen(Processes.Member.here("work", "1.0", ""));
    assertThat(processes.alive()).hasSize(1);
    db.stepwise(() -> db.run("UPDATE process SET seen = seen + ?", DAY));
    assertThat(processes.alive()).isEmpty();
  }

  @Test
  void aSessionFromBeforeTheClockWasSetBackLivesNoLongerForIt() {
    SessionRows sessions = new SessionRows(db);
    long life = Duration.ofHours(12).toMillis();
    sessions.open("value", life);
    db.stepwise(() -> db.run("UPDATE session SET used = used + ?", DAY));
    assertThat(sessions.isOpen("value", life)).isTrue();
    long used = Long.parseLong(TestPostgres.rows(url, "SELECT used FROM session").get(0));
    long now = Long.parseLong(TestPostgres.rows(url, "SELECT " + Processes.NOW).get(0));
    assertThat(used).isLessThanOrEqualTo(now);
  }

  @Test
  void whatWasWrittenJustNowIsNotOldByAClockThatWasSetAhead() {
    AtomicReference<Instant> wall = new AtomicReference<>(Instant.parse("2026-03-01T08:00:00Z"));
    InstantSource source = wall::get;
    CautiousClock clock = new CautiousClock(source, nanos::get);
    passes(Duration.ofMinutes(1));
    wall.set(wall.get().plus(Duration.ofDays(30)));
    assertThat(clock.now()).isEqualTo("2026-03-01T08:01:00Z");
    wall.set(Instant.parse("2026-02-01T08:00:00Z"));
    assertThat(clock.now()).isEqualTo("2026-02-01T08:00:00Z");
  }
}
