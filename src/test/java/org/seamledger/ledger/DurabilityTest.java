package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is acknowledged is on the disk, so that a loss of power takes none of it. Nobody can take the power here: settings are held. */
class DurabilityTest {

  @TempDir
  private Path folder;

  private static String text(Database db, String query) {
    return db.transaction(() -> db.one(query, r -> r.getString(1))).orElseThrow();
  }

  /** SQLite, "PRAGMA Statements": by 2, FULL, a commit in write-ahead mode outlives a loss of power; by 1, NORMAL, it may not. */
  @Test
  void theEmbeddedStoreSyncsEachCommit() {
    try (Database db = Database.open(new SqliteEngine(folder))) {
      assertThat(text(db, "PRAGMA journal_mode")).isEqualTo("wal");
      assertThat(text(db, "PRAGMA synchronous")).isEqualTo("2");
    }
  }

  /** PostgreSQL, "Write Ahead Log", synchronous_commit: off may lose the last commits in a crash. */
  @Test
  @Tag("slow")
  void postgresSyncsEachCommitWhateverItsServersDefault() {
    String url = TestPostgres.newUrl();
    TestPostgres.execute("ALTER DATABASE " + url.replaceFirst(".*/", "").replaceFirst("\\?.*", "") + " SET synchronous_commit = off");
    try (Database db = Database.open(new PostgresEngine(PostgresAddress.of(url, Optional.empty(), Optional.empty())))) {
      assertThat(text(db, "SHOW synchronous_commit")).isEqualTo("on");
    }
  }

  @Test
  void whoeverTakesModelsInWritesThemOut() {
    JavaClasses program =
        new ClassFileImporter().importPackages("org.seamledger.http.api", "org.seamledger.watch", "org.seamledger.ledger");
    Set<String> callers = new TreeSet<>();
    program.get(SyncedFiles.class).getDirectDependenciesToSelf().forEach(d -> callers.add(d.getOriginClass().getSimpleName()));
    assertThat(callers).contains("UploadFolder", "Download", "ModelFolder");
  }
}
