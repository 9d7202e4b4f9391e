package org.seamledger.ledger;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Waits at a start for a database that isn't up yet, and says so: at once, when the cause changes, and then once a minute. */
final class DatabaseWait {

  private static final Logger LOG = LoggerFactory.getLogger(DatabaseWait.class);
  private static final long PAUSE_MILLIS = 1000;
  private static final long REMINDER_SECONDS = 60;

  private final Engine engine;
  private final Duration patience;
  private final long begun = System.nanoTime();
  private String said = "";
  private long saidAfter;

  DatabaseWait(Engine engine, Duration patience) {
    this.engine = engine;
    this.patience = patience;
  }

  /** An attempt to connect. */
  interface Attempt {
    Connection connect() throws SQLException;
  }

  /**
   * The first connection.
   *
   * @throws LedgerException where there is none within the time allowed, or waiting would not help
   */
  Connection first(Attempt attempt) {
    while (true) {
      try {
        Connection c = attempt.connect();
        if (!said.isEmpty()) {
          LOG.info("{} is there now, after {} s", engine.name(), seconds());
        }
        return c;
      } catch (SQLException e) {
        waitAfter(engine.explain(e), e);
      }
    }
  }

  private void waitAfter(StorageFault fault, SQLException e) {
    boolean over = System.nanoTime() - begun >= patience.toNanos();
    if (over || !fault.passes() || !pause(fault.text())) {
      String waited = fault.passes() && !said.isEmpty() ? " Waited " + seconds() + " s for it." : "";
      throw new LedgerException(fault.reason(), engine.name() + " " + fault.text() + waited, e);
    }
  }

  /** Reports what it waits for, where that is news, and waits; false where the process is asked to stop waiting. */
  private boolean pause(String text) {
    if (!text.equals(said) || seconds() - saidAfter >= REMINDER_SECONDS) {
      String waiting = said.isEmpty() ? "Waiting for it" : "Still waiting, after " + seconds() + " s";
      LOG.warn("{} {} {}, up to {} s; Ctrl-C ends it.", engine.name(), text, waiting, patience.toSeconds());
      said = text;
      saidAfter = seconds();
    }
    try {
      Thread.sleep(PAUSE_MILLIS);
      return true;
    } catch (InterruptedException interrupt) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private long seconds() {
    return Duration.ofNanos(System.nanoTime() - begun).toSeconds();
  }
}
