package org.seamledger.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
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
    Connection c = JDBC.createConnection("jdbc:sqlite:" + folder.resolve("ledger.db").toAbsolutePath(), new Properties());
    try (Statement s = c.createStatement()) {
      s.execute("PRAGMA journal_mode=WAL");
      s.execute("PRAGMA synchronous=FULL");
      s.execute("PRAGMA foreign_keys=ON");
      s.execute("PRAGMA busy_timeout=5000");
    }
    c.setAutoCommit(false);
    return c;
  }

  @Override
  public String translate(String definition) {
    return definition.replaceAll("\\bCOUNTER\\b", "INTEGER PRIMARY KEY");
  }

  /** A file does not go away; what fails with it would fail again. */
  @Override
  public boolean isLost(SQLException e) {
    return false;
  }
}
