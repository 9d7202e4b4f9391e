package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@Tag("slow")
class StorageSchemaTest {

  @TempDir
  private Path folder;

  private static List<String> rows(Connection c, String query) throws SQLException {
    try (Statement s = c.createStatement(); ResultSet r = s.executeQuery(query)) {
      List<String> all = new ArrayList<>();
      while (r.next()) {
        all.add(r.getString(1));
      }
      return all;
    }
  }

  @ParameterizedTest
  @EnumSource
  void everyStepIsDoneOnceAndInOrder(StorageEngine which) throws SQLException {
    Engine engine = which.engine(folder, which.newDatabase());
    for (int start = 0; start < 2; start++) {
      try (Connection c = engine.connect()) {
        StorageSchema.bringUpToDate(c, engine, StorageSchema.STEPS);
        assertThat(rows(c, "SELECT name FROM schema_version ORDER BY version")).isEqualTo(StorageSchema.STEPS);
      }
    }
  }

  @Test
  void stepsAreNumberedByTheirPlace() {
    for (int i = 0; i < StorageSchema.STEPS.size(); i++) {
      assertThat(StorageSchema.STEPS.get(i)).startsWith((i + 1) + "-");
      assertThat(StorageSchema.statements(StorageSchema.STEPS.get(i))).isNotEmpty()
          .allMatch(s -> s.matches("(?s)(CREATE|ALTER|UPDATE|DROP) .*"));
    }
  }

  @Test
  void bothEnginesHaveTheSameColumns() throws SQLException {
    Engine postgres = StorageEngine.POSTGRESQL.engine(folder, StorageEngine.POSTGRESQL.newDatabase());
    Engine sqlite = StorageEngine.SQLITE.engine(folder, Optional.empty());
    try (Connection p = postgres.connect(); Connection s = sqlite.connect()) {
      StorageSchema.bringUpToDate(p, postgres, StorageSchema.STEPS);
      StorageSchema.bringUpToDate(s, sqlite, StorageSchema.STEPS);
      List<String> expected = rows(s,
          "SELECT t.name || '.' || c.name FROM sqlite_master t, pragma_table_info(t.name) c WHERE t.type = 'table' AND t.name NOT"
              + " LIKE 'sqlite_%'");
      List<String> found =
          rows(p, "SELECT table_name || '.' || column_name FROM information_schema.columns WHERE table_schema = current_schema()");
      assertThat(new TreeSet<>(found)).isEqualTo(new TreeSet<>(expected)).contains("review.version", "storage.id");
    }
  }

  @ParameterizedTest
  @EnumSource
  void aStepThatFailsLeavesNothing(StorageEngine which) throws SQLException {
    Engine engine = which.engine(folder, which.newDatabase());
    List<String> steps = Stream.concat(StorageSchema.STEPS.stream().limit(2), Stream.of("3-breaks-off.sql")).toList();
    try (Connection c = engine.connect()) {
      assertThatThrownBy(() -> StorageSchema.bringUpToDate(c, engine, steps)).isInstanceOf(SQLException.class);
      assertThat(rows(c, engine.tables())).as("a set-up that fails").isEmpty();
      StorageSchema.bringUpToDate(c, engine, steps.subList(0, 1));
      assertThatThrownBy(() -> StorageSchema.bringUpToDate(c, engine, steps)).isInstanceOf(SQLException.class);
      assertThat(rows(c, "SELECT name FROM schema_version ORDER BY version")).as("an upgrade that fails").isEqualTo(steps.subList(0, 1));
      assertThat(rows(c, engine.tables())).contains("project", "review").doesNotContain("storage", "half");
      StorageSchema.bringUpToDate(c, engine, StorageSchema.STEPS);
      assertThat(rows(c, "SELECT name FROM schema_version ORDER BY version")).isEqualTo(StorageSchema.STEPS);
    }
  }

  @ParameterizedTest
  @EnumSource
  void whatANewerProgramMadeIsRefused(StorageEngine which) throws SQLException {
    Optional<PostgresAddress> database = which.newDatabase();
    Engine engine = which.engine(folder, database);
    try (Connection c = engine.connect(); Statement s = c.createStatement()) {
      StorageSchema.bringUpToDate(c, engine, StorageSchema.STEPS);
      s.execute("INSERT INTO schema_version(version, name, applied) VALUES(1000, '1000-from-the-future.sql', '')");
      c.commit();
    }
    assertThatThrownBy(() -> Store.open(folder, database)).isInstanceOf(LedgerException.class).hasMessage(engine.name()
        + " was used by a newer version of this program (its tables are at step 1000, this program knows " + StorageSchema.STEPS.size()
        + "); nothing was written to it; use that version.");
  }

  /** Numbers by hand: revision 7 of the server analysed before 3, 7 again under another roof system, and an upload between. */
  @ParameterizedTest
  @EnumSource
  void revisionsThatWereAnalysedBeforeGetTheServersNumbers(StorageEngine which) throws SQLException {
    Engine engine = which.engine(folder, which.newDatabase());
    try (Connection c = engine.connect(); Statement s = c.createStatement()) {
      StorageSchema.bringUpToDate(c, engine, StorageSchema.STEPS.subList(0, 4));
      s.execute("INSERT INTO project VALUES('p', 'School', ''), ('q', 'Hall', '')");
      s.execute("INSERT INTO served_project(server, served, name, project) VALUES('office', 100, 'School', 'p')");
      String[] analyses = {"a7:p:1", "up:p:2", "a7again:p:3", "a3:p:4", "hall1:q:1", "hall2:q:2"};
      for (String a : analyses) {
        String[] part = a.split(":");
        s.execute("INSERT INTO analysis(id, project, revision, state, title, created) VALUES('" + part[0] + "', '" + part[1] + "', "
            + part[2] + ", 'done', '', '')");
        s.execute("INSERT INTO file VALUES('" + part[0] + "', 0, 'm', '/" + part[0].replace("again", "") + "/0.ifc', 1, 'model')");
      }
      s.execute("INSERT INTO file VALUES('a7again', 1, 's', '/a7again/system.json', 1, 'system')");
      s.execute("INSERT INTO served_analysis VALUES('a7', 'office', 100, 1007, 7, 'roof raised'), ('a3', 'office', 100, 1003, 3, '')");
      s.execute(
          "INSERT INTO watched_revision(server, served, revision, number, comment, created, stage) VALUES('office', 100, 1007, 7,"
              + " 'roof raised', '2026-03-01T08:00:00Z', 'found')");
      c.commit();
      StorageSchema.bringUpToDate(c, engine, StorageSchema.STEPS);
      assertThat(rows(c, "SELECT id || ' ' || numbering || ' ' || number || ' ' || run FROM analysis ORDER BY project, number, run"))
          .containsExactly("a3 server 3 1", "a7 server 7 1", "up upload 7 2", "a7again server 7 3", "hall1 own 1 1", "hall2 own 2 1");
      assertThat(rows(c,
          "SELECT analysis || ' ' || place || ' ' || served_revision || ' ' || comment || ' ' || checked_in FROM file WHERE"
              + " server IS NOT NULL ORDER BY analysis"))
          .containsExactly("a3 0 1003  ", "a7 0 1007 roof raised 2026-03-01T08:00:00Z", "a7again 0 1007 roof raised 2026-03-01T08:00:00Z");
    }
  }

  @ParameterizedTest
  @EnumSource
  void whatWasAcceptedBeforeNamesWereAskedForKeepsItsTime(StorageEngine which) throws SQLException {
    Engine engine = which.engine(folder, which.newDatabase());
    try (Connection c = engine.connect(); Statement s = c.createStatement()) {
      StorageSchema.bringUpToDate(c, engine, StorageSchema.STEPS.subList(0, 6));
      s.execute("INSERT INTO project VALUES('p', 'School', '')");
      s.execute("INSERT INTO analysis(id, project, revision, state, title, created) VALUES('a', 'p', 1, 'done', '', '')");
      s.execute("INSERT INTO finding VALUES('a', 'f1', 0, 'accepted', 'known', '', 1, '2026-03-01T08:00:00Z'),"
          + " ('a', 'f2', 1, 'open', '', 'roofer', 1, '2026-03-02T08:00:00Z')");
      c.commit();
      StorageSchema.bringUpToDate(c, engine, StorageSchema.STEPS);
      assertThat(rows(c, "SELECT id || ' ' || reason || '|' || accepted_by || '|' || accepted_at FROM finding ORDER BY id"))
          .containsExactly("f1 known||2026-03-01T08:00:00Z", "f2 ||");
    }
  }

  @Test
  void aFolderFromBeforeTheStepsWereCountedKeepsItsData() throws SQLException, IOException {
    try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("ledger.db")); Statement s = c.createStatement();
        InputStream in = StorageSchemaTest.class.getResourceAsStream("folder-without-steps.sql")) {
      for (String statement : new String(in.readAllBytes(), StandardCharsets.UTF_8).split(";\n")) {
        s.execute(statement);
      }
    }
    try (Store store = Store.open(folder, Optional.empty())) {
      StoredAnalysis first = store.analyses().get("2".repeat(32));
      assertThat(first.title()).isEqualTo("boat-house.ifc");
      assertThat(first.files()).containsExactly(new StoredFile("boat-house.ifc", "boat-house.ifc", 1234, "model"));
      assertThat(store.analyses().projects()).containsExactly(new Project("1".repeat(32), "Boat house", "2026-01-05T08:00:00Z", 2));
      assertThat(store.analyses().ledger(first.id()).gzip()).containsExactly(0x1f, 0x8b, 0x08);
      assertThat(store.reviews().of(first.id())).containsExactly(
          new Review("Jaaaa", "checked", "measured twice", "hip", "", "slope differs", true, false, 3, "2026-01-05T09:00:00Z"));
      assertThat(store.reviews().findings(first.id()).get(0).comments()).extracting(FindingMark.Comment::text)
          .containsExactly("seen on the drawing");
      assertThat(store.analyses().unfinished()).extracting(StoredAnalysis::id).containsExactly("3".repeat(32));
      Review next = store.reviews().put(first.id(), new Review("Jaaaa", "question", "again", "", "", "", false, false, 3, ""));
      assertThat(next.version()).isEqualTo(4);
    }
  }
}
