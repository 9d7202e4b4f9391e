package org.seamledger.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.postgresql.Driver;

/**
 * A PostgreSQL database, version 11 or later, used by one server at a time: every connection first takes an advisory lock that lives as
 * long as it does. The lock belongs to the schema in use, so that two servers may share a database where each has a schema of its own. A
 * pooler between must keep sessions together.
 */
final class PostgresEngine implements Engine {

  private static final String KEY = "(hashtextextended(current_schema(), 1936026989))";
  private static final String LOCK = "SELECT pg_try_advisory_lock" + KEY;
  private static final String SHARE = "SELECT pg_try_advisory_lock_shared" + KEY;
  /** What another transaction does at the same time: serialization failure, deadlock. */
  private static final Set<String> CONFLICTS = Set.of("40001", "40P01");
  /** A killed server's connection ends a moment after it. */
  private static final int LOCK_TRIES = 20;
  private static final int LOCK_PAUSE_MILLIS = 150;
  /** Operator intervention, and a transaction in which nothing was said for too long: those after which the session is over. */
  private static final Set<String> SESSION_ENDED = Set.of("57P01", "57P02", "57P03", "57P05", "25P03");

  static final String READS_ONLY = "takes no changes (a standby, or set to read only); name the primary server, or let it be written.";
  /** The first version with every function and kind of column that is used here. */
  private static final int FIRST_VERSION = 11;
  private static final int VERSION_UNIT = 10_000;

  /** So long may a transaction be silent, unless whoever runs the database says otherwise: well under the driver's socketTimeout. */
  private static final String SILENCE = "15s";

  private final PostgresAddress address;
  private final PostgresFaults faults;
  private final boolean shared;

  PostgresEngine(PostgresAddress address) {
    this(address, false);
  }

  /** @param shared whether processes that say so use the database together; else this one is alone with it */
  PostgresEngine(PostgresAddress address, boolean shared) {
    this.shared = shared;
    this.address = address;
    this.faults = new PostgresFaults(address);
  }

  @Override
  public String name() {
    return "The database " + address;
  }

  @Override
  public Connection connect() throws SQLException {
    Connection c = new Driver().connect(address.url(), address.properties());
    boolean usable = false;
    try {
      prepare(c);
      usable = true;
      return c;
    } finally {
      if (!usable) {
        c.close();
      }
    }
  }

  private void prepare(Connection c) throws SQLException {
    try (Statement s = c.createStatement()) {
      requireVersion(text(s, "SHOW server_version_num"), text(s, "SHOW server_version"));
      require("UTF8".equals(text(s, "SHOW server_encoding")), "its encoding is not UTF8; make one with ENCODING 'UTF8'");
      require(text(s, "SELECT current_schema()") != null, "there is no schema to keep tables in; see its search_path");
      if ("on".equals(text(s, "SHOW transaction_read_only"))) {
        throw new LedgerException(LedgerException.Reason.READ_ONLY, name() + " " + READS_ONLY);
      }
      // What was answered is kept, whatever the server's default; and a client that vanished lets the lock go within a minute.
      s.execute("SET synchronous_commit = on");
      s.execute("SET tcp_keepalives_idle = 20");
      s.execute("SET tcp_keepalives_interval = 10");
      s.execute("SET tcp_keepalives_count = 3");
      // Rows that a process had locked when it was cut off are free before others who wait for them give up.
      s.execute("SELECT set_config('idle_in_transaction_session_timeout', '" + SILENCE + "', false)"
          + " WHERE current_setting('idle_in_transaction_session_timeout') = '0'");
      if (!locks(s, shared ? SHARE : LOCK)) {
        throw new LedgerException(LedgerException.Reason.IN_USE, name() + " is in use by another running server"
            + (shared ? ", which was started without --models and shares it with nobody" : "")
            + "; stop it, or name another database or schema.");
      }
    }
    if (shared) {
      // As if all transactions of all processes came one after another, as those of one process do.
      c.setTransactionIsolation(Connection.TRANSACTION_SERIALIZABLE);
    }
    c.setAutoCommit(false);
  }

  private static boolean locks(Statement s, String lock) throws SQLException {
    for (int i = 0; i < LOCK_TRIES; i++) {
      if ("t".equals(text(s, lock))) {
        return true;
      }
      try {
        Thread.sleep(LOCK_PAUSE_MILLIS);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        break;
      }
    }
    return false;
  }

  /** {@inheritDoc} Processes that share it must be gone before: each was written for the tables as they are. */
  @Override
  public void bringUpToDate(Connection connection, List<String> steps) throws SQLException {
    int version = StorageSchema.version(connection, this, steps);
    connection.rollback();
    if (!shared || version == steps.size()) {
      StorageSchema.bringUpToDate(connection, this, steps);
      return;
    }
    try (Statement s = connection.createStatement()) {
      text(s, "SELECT pg_advisory_unlock_shared" + KEY);
      connection.commit();
      boolean alone = locks(s, LOCK);
      if (alone) {
        StorageSchema.bringUpToDate(connection, this, steps);
      }
      boolean isIn = locks(s, SHARE);
      if (alone) {
        text(s, "SELECT pg_advisory_unlock" + KEY);
      }
      connection.commit();
      // Another of this version may have done it meanwhile.
      if (!isIn || StorageSchema.version(connection, this, steps) < steps.size()) {
        throw new LedgerException(LedgerException.Reason.IN_USE,
            name() + " is in use by older versions of this program (" + Processes.alive(connection) + "); this one has to change its"
                + " tables, from step " + version + " to step " + steps.size()
                + ", and must be alone for that: stop them, then start it again.");
      }
      connection.commit();
    }
  }

  void requireVersion(String number, String words) {
    require(Integer.parseInt(number) / VERSION_UNIT >= FIRST_VERSION,
        "it is PostgreSQL " + words + ", and version " + FIRST_VERSION + " or later is needed");
  }

  private void require(boolean holds, String fault) {
    if (!holds) {
      throw new LedgerException(LedgerException.Reason.STORAGE, name() + " cannot be used: " + fault + ".");
    }
  }

  private static String text(Statement s, String query) throws SQLException {
    try (ResultSet r = s.executeQuery(query)) {
      return r.next() ? r.getString(1) : null;
    }
  }

  /** Text is compared by its code points here too, so that lists have one order with every engine. */
  @Override
  public String translate(String definition) {
    return definition.replaceAll("\\bCOUNTER\\b", "BIGINT GENERATED BY DEFAULT AS IDENTITY PRIMARY KEY")
        .replaceAll("\\bINTEGER\\b", "BIGINT").replaceAll("\\bBLOB\\b", "BYTEA")
        .replaceAll("\\bMOMENT\\b", "TIMESTAMP WITH TIME ZONE").replaceAll("\\bFLAG\\b", "BOOLEAN")
        .replaceAll("\\bTEXT\\b", "TEXT COLLATE \"C\"")
        .replaceAll("\\s*\\bWITHOUT ROWID\\b", "");
  }

  /** What belongs to an extension is not a table of somebody's, and catalogues show what the user may not read too. */
  @Override
  public String tables() {
    return "SELECT c.relname FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace WHERE n.nspname = current_schema()"
        + " AND c.relkind IN ('r', 'p', 'v', 'm', 'f') AND NOT EXISTS (SELECT 1 FROM pg_depend d"
        + " WHERE d.classid = 'pg_class'::regclass AND d.objid = c.oid AND d.deptype = 'e') ORDER BY c.relname COLLATE \"C\"";
  }

  @Override
  public String columns() {
    return "SELECT attname FROM pg_attribute WHERE attrelid = to_regclass(quote_ident(current_schema()) || '.' || quote_ident(?))"
        + " AND attnum > 0 AND NOT attisdropped";
  }

  @Override
  public String elsewhere() {
    return "name an empty database, or an empty schema of it";
  }

  @Override
  public Duration patience() {
    return address.patience();
  }

  @Override
  public StorageFault explain(SQLException e) {
    return faults.of(e);
  }

  @Override
  public boolean isConflict(SQLException e) {
    return CONFLICTS.contains(e.getSQLState());
  }

  /** Class 08 is a connection exception. */
  @Override
  public boolean isLost(SQLException e) {
    String state = e.getSQLState();
    return state != null && (state.startsWith("08") || SESSION_ENDED.contains(state));
  }
}
