package org.seamledger.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.function.LongSupplier;
import javax.sql.DataSource;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The time that the processes on a database have in common, for what they agree upon by time: who is dead, what is due. What the clocks of
 * their machines say does not matter. It goes on by the database's clock, but never back, and never by more than {@link #MOST} from one
 * question to the next, so that nobody is taken for dead where that clock is set. So it is no time of the day: it stands still while no
 * process runs.
 */
public final class SharedTime {

  /** Less than a worker may be silent before others take it for dead. */
  static final Duration MOST = Duration.ofSeconds(2);
  private static final String ASK = "INSERT INTO shared_time(one, now, clock) VALUES(1, " + Processes.NOW + ", " + Processes.NOW
      + ") ON CONFLICT(one) DO UPDATE SET now = shared_time.now + LEAST(GREATEST(excluded.clock - shared_time.clock, 0), " + MOST.toMillis()
      + "), clock = excluded.clock RETURNING now";
  private static final Logger LOG = LoggerFactory.getLogger(SharedTime.class);
  private static final Duration BETWEEN = Duration.ofSeconds(1);

  private final DataSource database;
  private final LongSupplier nanos;
  private Instant told;
  private long toldAt;
  private long askedAt;

  SharedTime(DataSource database) {
    this(database, System::nanoTime);
  }

  /** @param nanos a clock of this process that never jumps */
  SharedTime(DataSource database, LongSupplier nanos) {
    this.database = database;
    this.nanos = nanos;
  }

  /**
   * What it is now: as the database said a second ago at most and this process counted since. While the database does not answer it goes
   * on for {@link #MOST}, and then stands.
   *
   * @throws IllegalStateException where the database has never answered
   */
  public synchronized Instant now() {
    if (told == null || nanos.getAsLong() - askedAt > BETWEEN.toNanos()) {
      try {
        ask();
      } finally {
        // Where it took long to get no answer, who waited meanwhile need not ask again.
        askedAt = nanos.getAsLong();
      }
    }
    return told.plusNanos(Math.min(nanos.getAsLong() - toldAt, MOST.toNanos()));
  }

  private void ask() {
    try (Connection c = database.getConnection(); Statement s = c.createStatement(); ResultSet r = s.executeQuery(ASK)) {
      r.next();
      Instant fresh = Instant.ofEpochMilli(r.getLong(1));
      told = told == null || fresh.isAfter(told) ? fresh : told;
      toldAt = nanos.getAsLong();
    } catch (SQLException e) {
      if (told == null) {
        throw new IllegalStateException("the database does not say what time it is", e);
      }
      LOG.debug("the database does not say what time it is", e);
    }
  }
}
