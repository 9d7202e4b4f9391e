package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Storage as each released step left it, with data, is brought up to date; then all of it is there, and can be worked with. */
@Tag("slow")
class UpgradeTest {

  private static final String LEDGER = "{\"contract\":1,\"junctions\":[{\"id\":\"J1\",\"kind\":\"ridge\",\"lengthM\":1.0,"
      + "\"path\":[[0.0,0.0,0.0],[1.0,0.0,0.0]],\"faces\":[],\"elements\":[],\"facts\":{},\"detail\":\"ridge\",\"metal\":[],\"seals\":[],"
      + "\"fasteners\":[],\"findings\":[]}],\"quantities\":{},\"findings\":[]}";

  @TempDir
  private Path folder;

  static Stream<Arguments> released() {
    return Stream.of(StorageEngine.values())
        .flatMap(e -> IntStream.rangeClosed(1, StorageSchema.STEPS.size()).mapToObj(step -> Arguments.of(e, step)));
  }

  @ParameterizedTest(name = "{0}, step {1}")
  @MethodSource("released")
  void keepsWhatWasThere(StorageEngine which, int step) throws Exception {
    Optional<PostgresAddress> database = which.newDatabase();
    Engine engine = which.engine(folder, database);
    try (Connection c = engine.connect()) {
      StorageSchema.bringUpToDate(c, engine, StorageSchema.STEPS.subList(0, step));
      fill(c, step);
      c.commit();
    }
    try (Store store = Store.open(folder, database)) {
      requireAll(store, step);
      goOn(store);
    }
    if (database.isPresent()) {
      try (Store shared =
          Store.share(database.get(), ModelPlace.folder(folder.resolve("models")), Processes.Member.here("serve", "1.0", ""))) {
        assertThat(shared.queue().take("worker", "ticket", 1)).as("what waited waits for workers").isPresent();
      }
    }
  }

  private static void fill(Connection c, int step) throws SQLException, IOException {
    try (Statement s = c.createStatement()) {
      s.execute("INSERT INTO project(id, name, created) VALUES('p', 'School', '2026-01-01T00:00:00.000Z')");
      s.execute("INSERT INTO analysis(id, project, revision, state, title, created, finished, problem_code, problem, origin) VALUES"
          + " ('done', 'p', 1, 'done', 'a.ifc', '2026-01-01T00:00:01.000Z', '2026-01-01T00:00:02.000Z', NULL, NULL, 'cmd'),"
          + " ('bad', 'p', 2, 'failed', 'b.ifc', '2026-01-02T00:00:00.000Z', '2026-01-02T00:00:01.000Z', 'model/unreadable',"
          + " 'no roof', ''),"
          + " ('waits', 'p', 3, 'queued', 'c.ifc', '2026-01-03T00:00:00.000Z', NULL, NULL, NULL, '')");
      s.execute("INSERT INTO file(analysis, place, name, path, bytes, role) VALUES('done', 0, 'a.ifc', '/u/done/0.ifc', 12, 'model'),"
          + " ('done', 1, 'system.json', '/u/done/system.json', 3, 'system'), ('waits', 0, 'c.ifc', '/u/waits/0.ifc', 13, 'model')");
      s.execute("INSERT INTO junction VALUES('done', 'J1')");
      s.execute("INSERT INTO finding(analysis, id, place, state, reason, assignee, version, updated) VALUES"
          + " ('done', 'f', 0, 'accepted', 'known', 'ida', 2, '2026-01-01T00:00:04.000Z')");
      s.execute("INSERT INTO comment(analysis, finding, author, text, created) VALUES('done', 'f', 'ida', 'seen', '2026-01-01T00:00:03Z')");
      s.execute("INSERT INTO review(analysis, junction, state, note, kind, detail, reason, carried, version, updated) VALUES"
          + " ('done', 'J1', 'checked', 'note', 'hip', '', 'seen', 0, 3, '2026-01-01T00:00:05.000Z')");
      ledger(c, "INSERT INTO ledger(analysis, sha256, bytes, gzip) VALUES('done', 'hash', ?, ?)");
      if (step >= 2) {
        s.execute("INSERT INTO storage(id) VALUES('identity')");
      }
      if (step >= 3) {
        ledger(c, "INSERT INTO by_rules(analysis, decisions, sha256, bytes, gzip) VALUES('done', 'digest', 'hash', ?, ?)");
        s.execute("INSERT INTO stale VALUES('done', 'J1')");
      }
      fillLater(s, step);
    }
  }

  private static void fillLater(Statement s, int step) throws SQLException {
    if (step >= 4) {
      s.execute("INSERT INTO report VALUES('done', '', 'in words')");
      s.execute("INSERT INTO served_project(server, served, name, project, watched, begun, checked) VALUES"
          + " ('office', 7, 'Hall', NULL, 1, 1, '2026-01-01T00:00:06.000Z')");
      s.execute("INSERT INTO watched_revision(server, served, revision, number, comment, created, stage, attempts, analysis) VALUES"
          + " ('office', 7, 70, 2, 'raised', '2026-01-01T00:00:07.000Z', 'answered', 1, NULL)");
    }
    if (step >= 5) {
      s.execute("UPDATE analysis SET number = revision");
    }
    if (step >= 6) {
      s.execute("INSERT INTO placement VALUES('done', 0, '1,2,3')");
    }
    if (step >= 7) {
      s.execute("UPDATE finding SET accepted_by = 'ida', accepted_at = '2026-01-01T00:00:08.000Z'");
    }
    if (step >= 8) {
      s.execute("INSERT INTO prices(project, name, text, updated) VALUES('p', 'prices.csv', 'id', '2026-01-01T00:00:09.000Z')");
    }
    if (step >= 9) {
      s.execute("UPDATE analysis SET starts = 1 WHERE id = 'waits'");
    }
  }

  private static void ledger(Connection c, String statement) throws SQLException, IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream zip = new GZIPOutputStream(bytes)) {
      zip.write(LEDGER.getBytes(StandardCharsets.UTF_8));
    }
    try (PreparedStatement s = c.prepareStatement(statement)) {
      s.setLong(1, LEDGER.length());
      s.setBytes(2, bytes.toByteArray());
      s.executeUpdate();
    }
  }

  private static void requireAll(Store store, int step) {
    assertThat(store.analyses().projects()).containsExactly(new Project("p", "School", "2026-01-01T00:00:00.000Z", 3));
    assertThat(store.analyses().ofProject("p")).extracting(a -> a.id() + " " + a.state().word() + " " + a.title())
        .containsExactlyInAnyOrder("done done a.ifc", "bad failed b.ifc", "waits queued c.ifc");
    StoredAnalysis done = store.analyses().get("done");
    assertThat(done.files()).extracting(StoredFile::path).containsExactly("/u/done/0.ifc", "/u/done/system.json");
    assertThat(done.files().get(0).placement()).isEqualTo(step >= 6 ? Optional.of("1,2,3") : Optional.empty());
    assertThat(store.analyses().byOrigin("cmd")).map(StoredAnalysis::id).contains("done");
    assertThat(store.analyses().get("bad").problem()).contains("no roof");
    assertThat(ResultOutline.of(store.analyses().ledger("done")).junctions()).extracting(LedgerReader.Line::id).containsExactly("J1");
    assertThat(store.reviews().of("done")).containsExactly(
        new Review("J1", "checked", "note", "hip", "", "seen", false, step >= 3, 3, "2026-01-01T00:00:05.000Z"));
    FindingMark mark = store.reviews().findings("done").get(0);
    assertThat(mark.comments()).extracting(FindingMark.Comment::text).containsExactly("seen");
    // When it was accepted nobody noted before step 7, when it was changed last is the best that is known.
    assertThat(mark.acceptedAt()).isEqualTo(step >= 7 ? "2026-01-01T00:00:08.000Z" : "2026-01-01T00:00:04.000Z");
    if (step >= 4) {
      assertThat(store.watches().revisions("office", 7)).extracting(r -> r.stage().word() + " " + r.origin().comment())
          .containsExactly("answered raised");
      assertThat(store.watches().get("office", 7).orElseThrow().on()).isTrue();
    }
    assertThat(store.prices().of("p").map(ProjectPrices.Stored::name)).isEqualTo(step >= 8 ? Optional.of("prices.csv") : Optional.empty());
  }

  private static void goOn(Store store) {
    assertThat(store.analyses().unfinished()).extracting(StoredAnalysis::id).containsExactly("waits");
    StoredAnalysis next = store.analyses().add(Analyses.newId(), Optional.of("p"), "d.ifc", List.of(), "");
    assertThat(next.revision().number()).isEqualTo(4);
    assertThat(store.reviews().put("done", new Review("J1", "question", "again", "", "", "", false, false, 3, "")).version()).isEqualTo(4);
    assertThat(store.choices().of("done").stale()).as("somebody has looked").isZero();
    store.prices().put("p", "new.csv", "id");
  }
}
