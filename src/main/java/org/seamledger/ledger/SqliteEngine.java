package org.seamledger.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Properties;
import org.sqlite.JDBC;

/** The embedded engine: the file {@code ledger.db} in the data folder, in write-ahead mode with full synchronisation. */
record SqliteEngine(Path folder) implements Engine {

  @Override
  public String name() {
    return "The data folder " + folder;
  }

  /** Not by the driver manager, which would load every other driver too. */
  @Override
  public Connection connect() throws SQLException {
    NativeLibrary.unpackIn(folder.resolve("native"));
    Connection c = JDBC.createConnection("jdbc:sqlite:" + folder.resolve("ledger.db").toAbsolutePath(), new Properties());
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

  /** The write-ahead mode is written into the file, so that first of all it must be ours. */
  private void prepare(Connection c) throws SQLException {
    try (Statement s = c.createStatement()) {
      s.execute("PRAGMA busy_timeout=5000");
      StorageSchema.version(c, this, StorageSchema.STEPS);
      s.execute("PRAGMA journal_mode=WAL");
      s.execute("PRAGMA synchronous=FULL");
      s.execute("PRAGMA foreign_keys=ON");
    }
    c.setAutoCommit(false);
  }

  @Override
  public String translate(String definition) {
    return definition.replaceAll("\\bCOUNTER\\b", "INTEGER PRIMARY KEY");
  }

  @Override
  public String tables() {
    return "SELECT name FROM sqlite_master WHERE type IN ('table', 'view') AND substr(name, 1, 7) <> 'sqlite_' ORDER BY name";
  }

  @Override
  public String columns() {
    return "SELECT name FROM pragma_table_info(?)";
  }

  @Override
  public String elsewhere() {
    return "name another folder";
  }

  @Override
  public Duration patience() {
    return Duration.ZERO;
  }

  @Override
  public StorageFault explain(SQLException e) {
    return SqliteFaults.of(e);
  }

  /** The write-ahead mode gives each reader what was kept when it began. */
  @Override
  public boolean readsBeside() {
    return true;
  }

  /** A file does not go away; what fails with it would fail again. */
  @Override
  public boolean isLost(SQLException e) {
    return false;
  }
}
