package org.seamledger.ledger;

import java.util.HexFormat;
import org.seamledger.finding.Sha256;

/**
 * Browsers that showed the token, for all processes that share a database: a hash of what each has in its cookie, so that who reads the
 * table gets in nowhere.
 */
public final class SessionRows {

  /** How exact the last use is noted (ms): a row is not written with every request. */
  private static final long EXACT = 3_600_000;

  private final Database db;

  SessionRows(Database db) {
    this.db = db;
  }

  /** Begins one; forgets those that were not used for a time (ms). */
  public void open(String value, long life) {
    db.stepwise(() -> {
      db.run("DELETE FROM session WHERE used < " + Processes.NOW + " - ?", life);
      return db.run("INSERT INTO session(id, used) VALUES(?," + Processes.NOW + ")", hash(value));
    });
  }

  /** Whether there is one that was used within a time (ms). */
  public boolean isOpen(String value, long life) {
    return db.stepwise(() -> {
      boolean open =
          db.one("SELECT 1 FROM session WHERE id = ? AND used > " + Processes.NOW + " - ?", r -> 1, hash(value), life).isPresent();
      // One used "later" is from before that clock was set back, and would live as much longer.
      db.run("UPDATE session SET used = " + Processes.NOW + " WHERE id = ? AND NOT used BETWEEN " + Processes.NOW + " - " + EXACT + " AND "
          + Processes.NOW, hash(value));
      return open;
    });
  }

  private static String hash(String value) {
    return HexFormat.of().formatHex(Sha256.of(value));
  }

  /** Ends one. */
  public void revoke(String value) {
    db.stepwise(() -> db.run("DELETE FROM session WHERE id = ?", hash(value)));
  }
}
