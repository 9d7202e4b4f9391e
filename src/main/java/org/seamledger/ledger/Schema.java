package org.seamledger.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;

/**
 * The tables, as the steps that made them. A step is a file of statements in {@code schema/}, in SQL that every engine understands, with these
 * words: {@code TEXT}, {@code INTEGER} of 64 bits, {@code BLOB}, {@code COUNTER} for a primary key that counts up by itself, and {@code WITHOUT ROWID}.
 * The table {@code schema_version} lists the steps that a storage has had; each is one transaction. A step that was released never
 * changes: what comes later is another step.
 */
final class Schema {

  /** In their order; the first is number 1. */
  static final List<String> STEPS = List.of("1-analyses-and-reviews.sql", "2-identity.sql", "3-decisions.sql", "4-watched-servers.sql",
      "5-placements.sql");

  private Schema() {
  }

  /**
   * Does the steps that are missing.
   *
   * @param connection without automatic commits
   * @throws LedgerException where a newer program has changed the tables in ways that this one does not know
   */
  static void bringUpToDate(Connection connection, Engine engine) throws SQLException {
    bringUpToDate(connection, engine, STEPS);
  }

  static void bringUpToDate(Connection connection, Engine engine, List<String> steps) throws SQLException {
    execute(connection, engine.translate(
        "CREATE TABLE IF NOT EXISTS schema_version(version INTEGER PRIMARY KEY, name TEXT NOT NULL, applied TEXT NOT NULL)"));
    int version = version(connection);
    connection.commit();
    if (version > steps.size()) {
      throw new LedgerException(LedgerException.Reason.STORAGE, engine.name() + " was used by a newer version of this program (its tables are at step "
          + version + ", this program knows " + steps.size() + "); use that version.");
    }
    for (int step = version + 1; step <= steps.size(); step++) {
      apply(connection, engine, step, steps.get(step - 1));
    }
  }

  private static int version(Connection connection) throws SQLException {
    try (Statement s = connection.createStatement(); ResultSet r = s.executeQuery("SELECT COALESCE(MAX(version), 0) FROM schema_version")) {
      r.next();
      return r.getInt(1);
    }
  }

  private static void apply(Connection connection, Engine engine, int step, String name) throws SQLException {
    try {
      for (String statement : statements(name)) {
        execute(connection, engine.translate(statement));
      }
      try (PreparedStatement s = connection.prepareStatement("INSERT INTO schema_version(version, name, applied) VALUES(?,?,?)")) {
        s.setInt(1, step);
        s.setString(2, name);
        s.setString(3, Analyses.now());
        s.executeUpdate();
      }
      connection.commit();
    } catch (SQLException e) {
      connection.rollback();
      throw e;
    }
  }

  private static void execute(Connection connection, String statement) throws SQLException {
    try (Statement s = connection.createStatement()) {
      s.execute(statement);
    }
  }

  /** The statements of a step; comments stand on lines of their own. */
  static List<String> statements(String name) {
    try (InputStream in = Schema.class.getResourceAsStream("schema/" + name)) {
      if (in == null) {
        throw new IllegalStateException("the program was packed without " + name);
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8).replaceAll("(?m)^\\s*--.*$", "");
      return Arrays.stream(text.split(";\\s*(\\R|$)")).map(String::strip).filter(s -> !s.isEmpty()).toList();
    } catch (IOException e) {
      throw new IllegalStateException(name, e);
    }
  }
}
