package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.ModelPlace;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.ledger.Processes;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredFile;
import org.seamledger.ledger.TestPostgres;
import org.seamledger.run.TakeoffAnalyzer;

/**
 * The readme's backups and the ways back from them: results, what users said, and the models themselves. Those of PostgreSQL need the
 * programs {@code pg_dump} and {@code pg_restore}, and are skipped where the machine has none.
 */
class BackupTest {

  @TempDir
  private Path folder;

  private static String run(Path place, String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).directory(place.toFile()).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  private static void delete(Path tree) throws IOException {
    try (Stream<Path> all = Files.walk(tree)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }

  private TestService start() {
    return start(Optional.empty());
  }

  private TestService start(Optional<PostgresAddress> database) {
    return new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).database(database));
  }

  private static List<byte[]> told(TestService service, String id) {
    return List.of(service.get("/api/analyses/" + id + "/ledger").body(), service.get("/api/analyses/" + id + "/plan.svg").body(),
        service.get("/api/analyses/" + id + "/reviews").body());
  }

  @Test
  void whatWasBackedUpIsThereAgain() throws Exception {
    Path data = folder.resolve("data");
    String model = Files.readString(Path.of("ifc-samples", "gatehouse.ifc"));
    String id;
    List<byte[]> before;
    try (TestService service = start()) {
      id = service.analyse(model).path("id").textValue();
      String junction = service.ledger(id).path("junctions").path(0).path("id").textValue();
      assertThat(service.review(id, junction, 0, Map.of("note", "seen from the scaffold")).statusCode()).isEqualTo(200);
    }
    try (TestService service = start()) {
      before = told(service, id);
    }
    saveData();
    restoreData();
    try (TestService service = start()) {
      requireSame(service, id, before);
    }
  }

  private void saveData() throws IOException, InterruptedException {
    run(folder, "tar", "-czf", "seamledger-data.tgz", "-C", folder.resolve("data").toString(), ".");
  }

  private void restoreData() throws IOException, InterruptedException {
    Path data = folder.resolve("data");
    delete(data);
    Files.createDirectories(data);
    run(folder, "tar", "-xzf", "seamledger-data.tgz", "-C", data.toString());
  }

  private static void requireSame(TestService service, String id, List<byte[]> before) {
    List<byte[]> after = told(service, id);
    for (int i = 0; i < before.size(); i++) {
      assertThat(after.get(i)).isEqualTo(before.get(i));
    }
    assertThat(service.get("/api/analyses/" + id + "/plan.svg").statusCode()).isEqualTo(200);
  }

  private static PostgresAddress address(String url) {
    return PostgresAddress.of(url, Optional.empty(), Optional.empty());
  }

  /** The name of a database as the server's own programs want it. */
  private static String plain(String url) {
    return url.replaceFirst("^jdbc:", "");
  }

  private void requirePrograms() {
    assumeTrue(Stream.of("pg_dump", "pg_restore").allMatch(p -> Stream.of(System.getenv("PATH").split(":"))
        .anyMatch(dir -> Files.isExecutable(Path.of(dir, p)))), "pg_dump and pg_restore are not on this machine");
  }

  private void copyDatabase(String from, String to) throws IOException, InterruptedException {
    run(folder, "pg_dump", "--format", "custom", "--file", "seamledger.dump", plain(from));
    run(folder, "pg_restore", "--exit-on-error", "--no-owner", "--dbname", plain(to), "seamledger.dump");
  }

  @Test
  void aDumpOfADatabaseInUseIsAllThereIs() throws Exception {
    requirePrograms();
    String database = TestPostgres.newUrl();
    String restored = TestPostgres.newUrl();
    String id;
    List<byte[]> before;
    try (TestService service = start(Optional.of(address(database)))) {
      id = service.analyse(Files.readString(Path.of("ifc-samples", "gatehouse.ifc"))).path("id").textValue();
      String junction = service.ledger(id).path("junctions").path(0).path("id").textValue();
      assertThat(service.review(id, junction, 0, Map.of("note", "seen from the scaffold")).statusCode()).isEqualTo(200);
      before = told(service, id);
      copyDatabase(database, restored);
      saveData();
    }
    restoreData();
    try (TestService service = start(Optional.of(address(restored)))) {
      requireSame(service, id, before);
    }
  }

  @Test
  void aDumpHasTheModelsThatAreInTheDatabase() throws Exception {
    requirePrograms();
    String database = TestPostgres.newUrl();
    String restored = TestPostgres.newUrl();
    Path model = Path.of("ifc-samples", "school.ifc");
    try (Store store = share(database, "one"); InputStream in = Files.newInputStream(model)) {
      Path kept = store.models().keep(in, store.models().scratch("test"));
      store.analyses().add("a", Optional.empty(), "school", List.of(new StoredFile("school", kept.toString(), Files.size(model), "model")),
          "");
      copyDatabase(database, restored);
    }
    try (Store store = share(restored, "another machine")) {
      StoredFile file = store.analyses().get("a").files().get(0);
      assertThat(store.has(file)).isTrue();
      assertThat(Path.of(file.path())).hasBinaryContent(Files.readAllBytes(model));
    }
  }

  private Store share(String database, String machine) {
    return Store.share(address(database), ModelPlace.database(folder.resolve(machine)), Processes.Member.here("serve", "1.0", ""));
  }
}
