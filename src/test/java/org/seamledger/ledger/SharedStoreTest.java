package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What several processes share: here several storages of one process. */
@Tag("slow")
class SharedStoreTest {

  private static final List<String> TOMORROW =
      Stream.concat(StorageSchema.STEPS.stream(), Stream.of("11-of-tomorrow.sql")).toList();

  @TempDir
  private Path folder;
  private final String url = TestPostgres.newUrl();
  private final PostgresAddress address = PostgresAddress.of(url, Optional.empty(), Optional.empty());

  private Store share(String work) {
    return Store.share(address, ModelPlace.folder(folder.resolve("models")), Processes.Member.here(work, "1.0", "rules"));
  }

  @Test
  void whoIsAloneAndWhoSharesRefuseEachOther() {
    try (Store shared = share("serve")) {
      assertThatThrownBy(() -> Store.open(folder.resolve("data"), Optional.of(address))).isInstanceOf(LedgerException.class)
          .hasMessageContaining("in use by another running server");
      assertThat(shared.isShared()).isTrue();
    }
    try (Store alone = Store.open(folder.resolve("data"), Optional.of(address))) {
      assertThatThrownBy(() -> share("work")).isInstanceOf(LedgerException.class).hasMessageContaining("started without --models");
      alone.check();
    }
  }

  @Test
  void aStoreWithSharedModelsIsNotOpenedWithoutThem() throws IOException {
    try (Store shared = share("serve")) {
      String path = shared.models().keep(stream("model"), folder.resolve("models")).toString();
      shared.analyses().add(Analyses.newId(), Optional.empty(), "hall", List.of(new StoredFile("hall", path, 5, "model")), "");
    }
    assertThatThrownBy(() -> Store.open(folder.resolve("data"), Optional.of(address))).isInstanceOf(LedgerException.class)
        .hasMessageContaining("--models DIR");
    try (Store shared = share("serve")) {
      assertThat(shared.analyses().list()).hasSize(1);
    }
  }

  private static ByteArrayInputStream stream(String text) {
    return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void eachMachineFindsModelsWhereItHasTheFolder() throws IOException {
    String id = Analyses.newId();
    try (Store shared = share("serve")) {
      Path kept = shared.models().keep(stream("model"), folder.resolve("models"));
      shared.analyses().add(id, Optional.empty(), "hall", List.of(new StoredFile("hall", kept.toString(), 5, "model")), "");
    }
    Path elsewhere = folder.resolve("mounted elsewhere");
    Files.move(folder.resolve("models"), elsewhere);
    try (Store other = Store.share(address, ModelPlace.folder(elsewhere), Processes.Member.here("work", "1.0", ""))) {
      assertThat(Path.of(other.analyses().get(id).files().get(0).path())).startsWith(elsewhere).hasContent("model");
    }
  }

  @Test
  void aFolderThatIsNotTheServersIsRefused() throws IOException {
    try (Store server = share("serve")) {
      Path empty = Files.createDirectories(folder.resolve("empty"));
      assertThatThrownBy(() -> Store.share(address, ModelPlace.folder(empty), Processes.Member.here("work", "1.0", "")))
          .isInstanceOf(LedgerException.class)
          .hasMessageContaining("is not the one that serve uses");
      PostgresAddress second = PostgresAddress.of(TestPostgres.newUrl(), Optional.empty(), Optional.empty());
      assertThatThrownBy(() -> Store.share(second, ModelPlace.folder(folder.resolve("models")), Processes.Member.here("serve", "1.0", "")))
          .isInstanceOf(LedgerException.class).hasMessageContaining("belongs to another database");
      assertThat(server.models().isThere()).isTrue();
    }
  }

  @Test
  void aNewerVersionWaitsForNobodyAndSaysWhoIsInItsWay() {
    try (Store older = share("serve")) {
      assertThatThrownBy(() -> Database.open(new PostgresEngine(address, true), TOMORROW)).isInstanceOf(LedgerException.class)
          .hasMessageContaining("in use by older versions of this program (serve 1.0 on ")
          .hasMessageContaining("from step " + StorageSchema.STEPS.size() + " to step " + TOMORROW.size())
          .hasMessageContaining("stop them");
      assertThat(older.analyses().add(Analyses.newId(), Optional.empty(), "goes on", List.of(), "").title()).isEqualTo("goes on");
    }
    try (Database newer = Database.open(new PostgresEngine(address, true), TOMORROW)) {
      assertThat(newer.transaction(() -> newer.one("SELECT COUNT(*) FROM analysis", r -> r.getInt(1)))).contains(1);
      assertThatThrownBy(() -> share("work")).isInstanceOf(LedgerException.class).hasMessageContaining("a newer version of this program");
    }
  }

  @Test
  void severalThatStartAtOnceMakeTheTablesOnce() throws Exception {
    List<Callable<Store>> starts = new ArrayList<>();
    IntStream.range(0, 4).forEach(i -> starts.add(() -> share("serve")));
    for (Store s : together(starts)) {
      s.close();
    }
    assertThat(TestPostgres.rows(url, "SELECT COUNT(*) FROM schema_version")).containsExactly("" + StorageSchema.STEPS.size());
    assertThat(TestPostgres.rows(url, "SELECT COUNT(*) FROM storage")).containsExactly("1");
  }

  private static <T> List<T> together(List<Callable<T>> work) throws Exception {
    ExecutorService hands = Executors.newFixedThreadPool(work.size());
    try {
      List<T> done = new ArrayList<>();
      for (Future<T> f : hands.invokeAll(work)) {
        done.add(f.get());
      }
      return done;
    } finally {
      hands.shutdown();
    }
  }

  /** As if one came after another: no number twice, no review overwritten unseen. */
  @Test
  void whatSeveralWriteAtOnceIsAsIfOneCameAfterAnother() throws Exception {
    try (Store one = share("serve"); Store two = share("serve")) {
      String project = one.analyses().addProject("School").id();
      String id = Analyses.newId();
      one.analyses().add(id, Optional.of(project), "hall", List.of(), "");
      TestPostgres.executeIn(url, "INSERT INTO junction VALUES('" + id + "', 'Jaaaa')");
      List<Callable<Integer>> work = new ArrayList<>();
      for (Store s : List.of(one, two)) {
        work.add(() -> {
          int won = 0;
          for (int i = 0; i < 25; i++) {
            s.analyses().add(Analyses.newId(), Optional.of(project), "again", List.of(), "");
            won += reviewed(s, id, i) ? 1 : 0;
          }
          return won;
        });
      }
      List<Integer> won = together(work);
      assertThat(one.analyses().ofProject(project)).extracting(a -> a.revision().number())
          .containsExactlyElementsOf(IntStream.rangeClosed(1, 51).boxed().toList());
      assertThat(two.reviews().of(id).get(0).version()).as("each that was not refused").isEqualTo(won.get(0) + won.get(1));
    }
  }

  private static boolean reviewed(Store s, String id, int i) {
    long seen = s.reviews().of(id).stream().mapToLong(Review::version).sum();
    try {
      s.reviews().put(id, new Review("Jaaaa", "checked", "note " + i, "", "", "", false, false, seen, ""));
      return true;
    } catch (LedgerException e) {
      assertThat(e.reason()).isEqualTo(LedgerException.Reason.CONFLICT);
      return false;
    }
  }

  @Test
  void aTurnIsOneProcessesAndGoesOnToAnother() {
    try (Store one = share("serve"); Store two = share("serve"); Lease first = one.lease("watch office");
        Lease second = two.lease("watch office"); Lease other = two.lease("watch annex")) {
      assertThat(first.isMine()).isTrue();
      assertThat(second.isMine()).isFalse();
      assertThat(first.isMine()).as("still").isTrue();
      assertThat(other.isMine()).as("another server's watch").isTrue();
      first.close();
      assertThat(second.isMine()).isTrue();
      assertThat(first.isMine()).isFalse();
      TestPostgres.cutConnections(url);
      assertThat(first.isMine() ^ second.isMine()).as("after the connections were lost, either").isTrue();
    }
  }

  @Test
  void aSessionIsKnownToAllAndKeptAsAHash() {
    try (Store one = share("serve"); Store two = share("serve")) {
      one.sessions().open("a value of a cookie", 60_000);
      assertThat(two.sessions().isOpen("a value of a cookie", 60_000)).isTrue();
      assertThat(two.sessions().isOpen("another", 60_000)).isFalse();
      assertThat(TestPostgres.rows(url, "SELECT id FROM session")).allMatch(v -> v.matches("[0-9a-f]{64}"));
      assertThat(two.sessions().isOpen("a value of a cookie", -60_000)).as("too long ago").isFalse();
      two.sessions().revoke("a value of a cookie");
      assertThat(one.sessions().isOpen("a value of a cookie", 60_000)).isFalse();
    }
  }

  @Test
  void whatNothingRefersToGoesAfterItsTime() throws IOException {
    try (Store store = share("serve")) {
      Path scratch = store.models().scratch(store.here().id());
      Path wanted = old(store.models().keep(stream("wanted"), scratch));
      Path unwanted = old(store.models().keep(stream("unwanted"), scratch));
      Path young = store.models().keep(stream("young"), scratch);
      Path sentAgain = old(store.models().keep(stream("sent again"), scratch));
      store.models().keep(stream("sent again"), scratch);
      store.analyses().add(Analyses.newId(), Optional.empty(), "hall", List.of(new StoredFile("hall", wanted.toString(), 6, "model")), "");
      assertThat(store.models().clean(store.queue().paths(), Duration.ofHours(1))).isEqualTo(1);
      assertThat(List.of(wanted, young, sentAgain)).allMatch(Files::exists);
      assertThat(unwanted).doesNotExist();
      assertThat(store.models().clean(Set.of(), Duration.ofDays(2000))).isZero();
    }
  }

  private Store shareDatabase(String machine) {
    return Store.share(address, ModelPlace.database(folder.resolve(machine)), Processes.Member.here("serve", "1.0", "rules"));
  }

  /** Of more than two pieces, none of them alike. */
  private static byte[] large() {
    byte[] bytes = new byte[(2 << 20) + 4711];
    new Random(1).nextBytes(bytes);
    return bytes;
  }

  @Test
  void withoutADiskInCommonModelsComeFromTheDatabase() throws IOException {
    String id = Analyses.newId();
    try (Store one = shareDatabase("one"); Store two = shareDatabase("two")) {
      Path kept = one.models().keep(new ByteArrayInputStream(large()), one.models().scratch(one.here().id()));
      two.models().keep(new ByteArrayInputStream(large()), two.models().scratch(two.here().id()));
      assertThat(TestPostgres.rows(url, "SELECT COUNT(*) FROM pg_largeobject_metadata")).as("sent twice, once there").containsExactly("1");
      one.analyses().add(id, Optional.empty(), "hall", List.of(new StoredFile("hall", kept.toString(), 5, "model")), "");
    }
    assertThatThrownBy(() -> share("serve")).isInstanceOf(LedgerException.class).hasMessageContaining("--models-in-database");
    try (Store third = shareDatabase("three")) {
      StoredFile file = third.analyses().get(id).files().get(0);
      assertThat(Path.of(file.path())).doesNotExist();
      assertThat(third.has(file)).isTrue();
      assertThat(Path.of(file.path())).hasBinaryContent(large());
      assertThat(third.has(new StoredFile("gone", file.path() + "0", 5, "model"))).isFalse();
    }
  }

  @Test
  void whatNothingRefersToGoesFromTheDatabaseToo() throws IOException {
    try (Store store = shareDatabase("one")) {
      Path scratch = store.models().scratch(store.here().id());
      Path wanted = store.models().keep(stream("wanted"), scratch);
      store.models().keep(stream("unwanted"), scratch);
      store.analyses().add(Analyses.newId(), Optional.empty(), "hall", List.of(new StoredFile("hall", wanted.toString(), 6, "model")), "");
      assertThat(store.models().clean(Set.of(), Duration.ofHours(1))).as("young").isZero();
      TestPostgres.executeIn(url, "UPDATE model_object SET sent = sent - 7200000");
      store.models().keep(stream("young"), scratch);
      assertThat(store.models().clean(Set.of(), Duration.ofHours(1))).isEqualTo(1);
      assertThat(TestPostgres.rows(url, "SELECT COUNT(*) FROM pg_largeobject_metadata")).containsExactly("2");
      Files.delete(wanted);
      assertThat(store.has(store.analyses().list().get(0).files().get(0))).isTrue();
    }
  }

  @Test
  void modelsOfAFolderAreNotLookedForInTheDatabase() throws IOException {
    try (Store store = share("serve")) {
      Path kept = store.models().keep(stream("model"), folder.resolve("models"));
      store.analyses().add(Analyses.newId(), Optional.empty(), "hall", List.of(new StoredFile("hall", kept.toString(), 5, "model")), "");
    }
    assertThatThrownBy(() -> shareDatabase("one")).isInstanceOf(LedgerException.class).hasMessageContaining("--models DIR");
  }

  private static Path old(Path file) throws IOException {
    return Files.setLastModifiedTime(file, FileTime.from(Instant.now().minus(Duration.ofDays(1))));
  }
}
