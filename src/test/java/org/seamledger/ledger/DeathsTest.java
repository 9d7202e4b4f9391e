package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An analysis during which the process dies again and again. */
class DeathsTest {

  @TempDir
  private Path folder;

  private String added(Store store) {
    return store.analyses().add(Analyses.newId(), Optional.empty(), "hall", List.of(), "").id();
  }

  @Test
  void isNotBegunAThirdTime() {
    try (Store store = Store.open(folder, Optional.empty())) {
      String id = added(store);
      for (int death = 0; death < Analyses.MOST_DEATHS; death++) {
        assertThat(store.analyses().begin(id)).isTrue();
        assertThat(store.analyses().unfinished()).hasSize(death + 1 < Analyses.MOST_DEATHS ? 1 : 0);
      }
      assertThat(store.analyses().get(id).state()).isEqualTo(State.FAILED);
      assertThat(store.analyses().get(id).problemCode()).contains("analysis/died");
    }
  }

  @Test
  void endsInGoodOrderDoNotCount() {
    try (Store store = Store.open(folder, Optional.empty())) {
      String id = added(store);
      for (int round = 0; round < 5; round++) {
        assertThat(store.analyses().begin(id)).isTrue();
        store.analyses().pause();
        assertThat(store.analyses().unfinished()).hasSize(1);
      }
    }
  }

  @Test
  void aFullStorageWorksAgainWhenThereIsRoom() {
    SqliteEngine engine = new SqliteEngine(folder);
    try (Database db = Database.open(engine)) {
      db.transaction(() -> db.run("CREATE TABLE filler(x TEXT)"));
      long pages = db.transaction(() -> db.one("PRAGMA page_count", r -> r.getLong(1)).orElseThrow());
      db.transaction(() -> db.one("PRAGMA max_page_count=" + (pages + 2), r -> r.getLong(1)));
      String much = "x".repeat(100_000);
      for (int attempt = 0; attempt < 3; attempt++) {
        try {
          db.transaction(() -> db.run("INSERT INTO filler VALUES(?)", much));
          // A connection that was opened anew knows nothing of the limit, as a disk on which there is room again.
          break;
        } catch (LedgerException e) {
          assertThat(e.reason()).isEqualTo(LedgerException.Reason.FULL);
          db.transaction(() -> db.one("PRAGMA max_page_count=1000000", r -> r.getLong(1)));
        }
      }
      assertThat(db.transaction(() -> db.one("SELECT COUNT(*) FROM filler", r -> r.getInt(1)))).contains(1);
    }
  }
}
