package org.seamledger.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.ledger.Lease;
import org.seamledger.ledger.ModelPlace;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.ledger.Processes;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.TestPostgres;
import org.seamledger.run.TakeoffResult;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;
import org.seamledger.takeoff.Takeoffs;

/** Two processes that watch the same server, each with its own way to the database that they share. */
@Tag("slow")
class WatchTurnTest {

  private static final String OFFICE = "office";
  private static final Duration EVERY = Duration.ofMillis(100);

  @TempDir
  private Path folder;
  private final PostgresAddress database = PostgresAddress.of(TestPostgres.newUrl(), Optional.empty(), Optional.empty());
  private final MemoryServers servers = new MemoryServers();
  private final MemoryServers.Shelf shelf = servers.add(OFFICE);
  private final ServedProject school = shelf.addProject("School");
  private final List<String> analysed = new CopyOnWriteArrayList<>();
  private final List<Watcher> watchers = new ArrayList<>();

  /** One of the processes. */
  private final class Watcher {
    final Store store;
    final Lease lease;
    final Watching watching;

    Watcher(String name) {
      store = Store.share(database, ModelPlace.folder(folder.resolve("models")), Processes.Member.here("serve", "1.0", ""));
      lease = store.lease("watch " + OFFICE);
      Path scratch = store.models().scratch(name);
      LocalAnalyst analyst = new LocalAnalyst(store, scratch, (inputs, progress) -> {
        analysed.add(name);
        return new TakeoffResult(Takeoffs.boatHouse());
      });
      watching =
          new Watching(new Watching.Setting(servers, (server, project) -> true, store, new Download(store.uploads(), scratch, 1 << 20),
              EVERY, analyst, event -> {}, Clock.systemUTC(), new Health(Clock.systemUTC())).inTurn(server -> lease.isMine()));
      watching.start(List.of(OFFICE));
    }

    void end() {
      watching.close();
      lease.close();
      store.close();
    }
  }

  @BeforeEach
  void begin() {
    watchers.add(new Watcher("first"));
  }

  @AfterEach
  void end() {
    watchers.forEach(Watcher::end);
  }

  private void answered(String words) throws InterruptedException, IOException {
    ServedRevision revision = shelf.checkIn(school, words, words.getBytes(StandardCharsets.UTF_8));
    for (int i = 0; i < 600 && shelf.attached(revision).size() < 2; i++) {
      Thread.sleep(25);
    }
    assertThat(shelf.attached(revision).stream().map(a -> a.title().replaceAll(".* ", ""))).contains("ledger.json", "report.txt")
        .doesNotHaveDuplicates();
  }

  @Test
  void oneWatchesAndTheOtherGoesOnWhereItIsGone() throws Exception {
    answered("one");
    watchers.add(new Watcher("second"));
    answered("two");
    answered("three");
    assertThat(analysed).containsExactly("first", "first", "first");
    // As where its process dies: the database ends what a connection held.
    watchers.get(0).watching.close();
    watchers.get(0).lease.close();
    answered("four");
    assertThat(analysed).containsExactly("first", "first", "first", "second");
    watchers.add(new Watcher("third"));
    answered("five");
    assertThat(analysed).endsWith("second", "second");
  }
}
