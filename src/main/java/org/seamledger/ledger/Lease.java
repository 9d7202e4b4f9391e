package org.seamledger.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.postgresql.Driver;

/**
 * What one process at a time does, of all that share a database: who has the lock of its name. The lock goes with the connection, so that
 * another gets it as soon as the process, or its way to the database, is gone.
 */
public final class Lease implements AutoCloseable {

  private static final String LOCK = "SELECT pg_try_advisory_lock(hashtextextended(current_schema() || ' ' || ?, 1936026991))";

  private final PostgresAddress address;
  private final String name;
  /** Null where this process does not have it. */
  private Connection held;

  Lease(PostgresAddress address, String name) {
    this.address = address;
    this.name = name;
  }

  /** Whether it is this process's turn, from now on if it was not before; false too where the database is away. */
  public synchronized boolean isMine() {
    if (held != null && answers(held)) {
      return true;
    }
    close();
    try {
      Connection fresh = new Driver().connect(address.url(), address.properties());
      if (isLocked(fresh)) {
        held = fresh;
      } else {
        fresh.close();
      }
    } catch (SQLException e) {
      close();
    }
    return held != null;
  }

  private static boolean answers(Connection c) {
    try (Statement s = c.createStatement(); ResultSet r = s.executeQuery("SELECT 1")) {
      return r.next();
    } catch (SQLException e) {
      return false;
    }
  }

  private boolean isLocked(Connection c) throws SQLException {
    try (Statement idle = c.createStatement(); PreparedStatement s = c.prepareStatement(LOCK)) {
      // Where this process vanishes, another has its turn within a minute.
      idle.execute("SET tcp_keepalives_idle = 20");
      idle.execute("SET tcp_keepalives_interval = 10");
      idle.execute("SET tcp_keepalives_count = 3");
      s.setString(1, name);
      try (ResultSet r = s.executeQuery()) {
        return r.next() && r.getBoolean(1);
      }
    }
  }

  @Override
  public synchronized void close() {
    if (held != null) {
      try {
        held.close();
      } catch (SQLException e) {
        // It is gone already, and the lock with it.
      }
      held = null;
    }
  }
}
