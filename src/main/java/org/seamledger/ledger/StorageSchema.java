package org.seamledger.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.event.Level;

/**
 * The tables, as the steps that made them. A step is a file of statements in {@code schema/}, in SQL that every engine understands, with
 * these words: {@code TEXT}, {@code INTEGER} of 64 bits, {@code BLOB}, {@code MOMENT} for a time, {@code FLAG} for true or false,
 * {@code COUNTER} for a primary key that counts up by itself, and {@code WITHOUT ROWID}. The table {@code schema_version} lists the steps
 * that a storage has had; all that are missing are one transaction.
 * A step that was released never changes: what comes later is another step.
 */
final class StorageSchema {

  /** In their order; the first is number 1. */
  static final List<String> STEPS = List.of("1-analyses-and-reviews.sql", "2-identity.sql", "3-decisions.sql", "4-watched-servers.sql",
      "5-revisions-of-servers.sql", "6-placements.sql", "7-accepted-findings.sql", "8-prices.sql", "9-starts.sql",
      "10-several-processes.sql", "11-record.sql", "12-models-in-the-database.sql",
      "13-shared-time.sql", "14-sections.sql");
  private static final Logger LOG = LoggerFactory.getLogger(StorageSchema.class);
  private static final String VERSIONS = "schema_version";
  private static final Set<String> FIRST_TABLES =
      Set.of("project", "analysis", "file", "ledger", "junction", "finding", "comment", "review");
  private static final int MOST_NAMED = 3;

  private StorageSchema() {
  }

  /**
   * Does the steps that are missing, all of them in one transaction.
   *
   * @param connection without automatic commits
   * @param steps usually {@link #STEPS}
   * @throws LedgerException where the tables are another program's, or a newer program has changed them in ways that this one does not know
   */
  static void bringUpToDate(Connection connection, Engine engine, List<String> steps) throws SQLException {
    boolean done = false;
    try {
      int version = version(connection, engine, steps);
      if (version < steps.size()) {
        execute(connection, engine.translate("CREATE TABLE IF NOT EXISTS " + VERSIONS
            + "(version INTEGER PRIMARY KEY, name TEXT NOT NULL, applied TEXT NOT NULL)"));
      }
      for (int step = version + 1; step <= steps.size(); step++) {
        apply(connection, engine, step, steps.get(step - 1));
      }
      connection.commit();
      done = true;
      if (version < steps.size()) {
        // Making a new storage is no news; changing one that people work with is.
        LOG.atLevel(version == 0 ? Level.DEBUG : Level.INFO).log("{}: tables brought from step {} to step {}", engine.name(), version,
            steps.size());
      }
    } finally {
      if (!done) {
        connection.rollback();
      }
    }
  }

  /**
   * The last step that a storage has had, 0 where it is empty. Writes nothing.
   *
   * @throws LedgerException where this program must not write there
   */
  static int version(Connection connection, Engine engine, List<String> steps) throws SQLException {
    List<String> tables = column(connection, engine.tables());
    boolean counted = tables.contains(VERSIONS) && columns(connection, engine, VERSIONS).equals(Set.of("version", "name", "applied"));
    int version = counted ? Integer.parseInt(column(connection, "SELECT COALESCE(MAX(version), 0) FROM " + VERSIONS).get(0)) : 0;
    boolean ours = version > 0 ? column(connection, "SELECT name FROM " + VERSIONS + " WHERE version = 1").equals(steps.subList(0, 1))
        : tables.stream().allMatch(t -> counted && t.equals(VERSIONS)) || isFromBeforeTheCount(connection, engine, tables, counted);
    if (!ours) {
      throw new LedgerException(LedgerException.Reason.STORAGE, engine.name() + " holds tables of another program (" + some(tables)
          + "); nothing was written to it; " + engine.elsewhere() + ".");
    }
    if (version > steps.size()) {
      throw new LedgerException(LedgerException.Reason.STORAGE,
          engine.name() + " was used by a newer version of this program (its tables are"
              + " at step " + version + ", this program knows " + steps.size() + "); nothing was written to it; use that version.");
    }
    return version;
  }

  /** Folders from before the steps were counted have the tables of the first step, or those that were made before the power went. */
  private static boolean isFromBeforeTheCount(Connection connection, Engine engine, List<String> tables, boolean counted)
      throws SQLException {
    for (String table : tables) {
      if (!(table.equals(VERSIONS) ? counted : FIRST_TABLES.contains(table))) {
        return false;
      }
    }
    return columns(connection, engine, "project").equals(Set.of("id", "name", "created")) && (!tables.contains("analysis")
        || columns(connection, engine, "analysis").containsAll(Set.of("project", "revision", "state", "problem_code", "origin")));
  }

  private static String some(List<String> tables) {
    int more = tables.size() - MOST_NAMED;
    return String.join(", ", tables.subList(0, Math.min(tables.size(), MOST_NAMED))) + (more > 0 ? " and " + more + " more" : "");
  }

  private static Set<String> columns(Connection connection, Engine engine, String table) throws SQLException {
    return Set.copyOf(column(connection, engine.columns(), table));
  }

  private static List<String> column(Connection connection, String query, String... values) throws SQLException {
    try (PreparedStatement s = connection.prepareStatement(query)) {
      for (int i = 0; i < values.length; i++) {
        s.setString(i + 1, values[i]);
      }
      try (ResultSet r = s.executeQuery()) {
        List<String> all = new ArrayList<>();
        while (r.next()) {
          all.add(r.getString(1));
        }
        return all;
      }
    }
  }

  private static void apply(Connection connection, Engine engine, int step, String name) throws SQLException {
    for (String statement : statements(name)) {
      execute(connection, engine.translate(statement));
    }
    try (PreparedStatement s = connection.prepareStatement("INSERT INTO schema_version(version, name, applied) VALUES(?,?,?)")) {
      s.setInt(1, step);
      s.setString(2, name);
      s.setString(3, Analyses.now());
      s.executeUpdate();
    }
  }

  private static void execute(Connection connection, String statement) throws SQLException {
    try (Statement s = connection.createStatement()) {
      s.execute(statement);
    }
  }

  /** The statements of a step; comments stand on lines of their own. */
  static List<String> statements(String name) {
    try (InputStream in = StorageSchema.class.getResourceAsStream("schema/" + name)) {
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
