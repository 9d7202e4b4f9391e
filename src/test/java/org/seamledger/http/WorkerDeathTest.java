package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.finding.Sha256;
import org.seamledger.ledger.TestPostgres;
import org.seamledger.progress.Progress;
import org.seamledger.run.TakeoffAnalyzer;
import org.seamledger.takeoff.Inputs;

/**
 * Processes that are killed, cut off, or taken along by a model. With an even seed they share no disk. The gate tries a little of it; by
 * hand {@code -Dseamledger.kills=50 -Dseamledger.models=300 -Dseamledger.seed=1 -Dseamledger.partition=30}.
 */
@Tag("slow")
class WorkerDeathTest {

  private static final int KILLS = Integer.getInteger("seamledger.kills", 4);
  private static final int MODELS = Integer.getInteger("seamledger.models", 12);
  private static final int PARTITION_SECONDS = Integer.getInteger("seamledger.partition", 4);
  private static final int USERS = 3;
  private static final int KILL_MILLIS = 800;
  private static final List<String> SAMPLES =
      List.of("cart-shed", "forge", "gatehouse", "dairy", "barn", "boathouse", "orangery", "brewhouse");

  @TempDir
  private Path models;
  private final String database = TestPostgres.newUrl();
  private Fleet fleet;

  @AfterEach
  void end() {
    fleet.close();
  }

  /** A small roof of the samples under a name and with bytes of its own. */
  private static String text(int model) throws IOException {
    String sample = Files.readString(Path.of("ifc-samples", SAMPLES.get(model % SAMPLES.size()) + ".ifc"));
    return sample.replaceFirst("DATA;", "DATA;\n/* one of many: " + model + " */");
  }

  private static String name(int model) {
    return "roof " + model + ".ifc";
  }

  /** The hash of the ledger that one process gives for each model. */
  private static List<String> alone(Path data) throws IOException {
    List<String> hashes = new ArrayList<>();
    TakeoffAnalyzer analyzer = new TakeoffAnalyzer(Optional.empty());
    for (int i = 0; i < MODELS; i++) {
      Path model = Files.writeString(data.resolve("model"), text(i));
      ByteArrayOutputStream ledger = new ByteArrayOutputStream();
      analyzer.analyze(Inputs.ofNamedFiles(List.of(new Inputs.NamedFile(model, name(i), Optional.empty()))), Progress.NONE)
          .writeLedger(ledger);
      hashes.add(Sha256.hex(ledger.toByteArray()));
    }
    return hashes;
  }

  @Test
  void nothingIsLostOrDoubledWhereProcessesAreKilled(@TempDir Path data) throws Exception {
    long seed = Long.getLong("seamledger.seed", System.nanoTime());
    List<String> expected = alone(data);
    fleet = new Fleet(database, models, "-Dseamledger.real=true");
    if (seed % 2 == 0) {
      fleet.withoutSharedDisk();
    }
    for (String work : new String[] {"serve", "serve", "work", "work", "work"}) {
      fleet.start(work);
    }
    Map<String, Integer> acknowledged = new ConcurrentHashMap<>();
    AtomicInteger unsure = new AtomicInteger();
    ExecutorService users = Executors.newFixedThreadPool(USERS);
    List<Future<?>> sending = new ArrayList<>();
    AtomicInteger killed = new AtomicInteger();
    for (int u = 0; u < USERS; u++) {
      int user = u;
      sending.add(users.submit(() -> send(user, killed, acknowledged, unsure)));
    }
    kill(new Random(seed), killed);
    for (Future<?> f : sending) {
      f.get();
    }
    users.shutdown();
    int again = 0;
    for (Map.Entry<String, Integer> e : acknowledged.entrySet()) {
      JsonNode ended = fleet.awaitAnywhere(e.getKey());
      while (ended.path("problem").path("code").asText().equals("analysis/died")) {
        // Killed twice while it ran: its message says to send it again.
        again++;
        ended = fleet.awaitAnywhere(sendSurely(e.getValue(), null, unsure).path("id").textValue());
      }
      assertThat(ended.path("state").textValue()).as("seed %d: %s\n%s", seed, ended, fleet.logs()).isEqualTo("done");
      assertThat(ended.path("ledgerSha256").textValue()).as("seed %d, model %s", seed, e.getValue()).isEqualTo(expected.get(e.getValue()));
    }
    assertThat(acknowledged.values()).as("seed %d: each once", seed).hasSize(MODELS).doesNotHaveDuplicates();
    requireWhole(MODELS + again, unsure.get(), seed);
    System.err.println("kills " + KILLS + " (" + fleet.deaths() + "), models " + MODELS + ", sent again after two deaths " + again
        + ", unsure " + unsure + ", seed " + seed);
  }

  /** Each analysis once, with its result, its junctions and its findings once. */
  private void requireWhole(int sent, int unsure, long seed) {
    int stored = Integer.parseInt(TestPostgres.rows(database, "SELECT COUNT(*) FROM analysis").get(0));
    assertThat(stored).as("seed %d: at most what a killed server took in without saying so is there twice", seed)
        .isBetween(sent, sent + unsure);
    assertThat(TestPostgres.rows(database, "SELECT a.id FROM analysis a WHERE a.state = 'done' AND NOT EXISTS"
        + " (SELECT 1 FROM ledger l WHERE l.analysis = a.id)")).isEmpty();
    assertThat(TestPostgres.rows(database, "SELECT project FROM analysis GROUP BY project, number, run HAVING COUNT(*) > 1")).isEmpty();
  }

  private Void send(int user, AtomicInteger killed, Map<String, Integer> acknowledged, AtomicInteger unsure) throws Exception {
    String project = null;
    for (int i = user; i < MODELS; i += USERS) {
      // So that they send while others are killed, to the end.
      while (killed.get() < (long) KILLS * i / MODELS) {
        Thread.sleep(20);
      }
      JsonNode answer = sendSurely(i, project, unsure);
      project = answer.path("project").textValue();
      acknowledged.put(answer.path("id").textValue(), i);
    }
    return null;
  }

  /** As a user does, who sends again where no answer came. */
  private JsonNode sendSurely(int model, String project, AtomicInteger unsure) throws Exception {
    List<Fleet.Member> servers = fleet.members.stream().filter(m -> m.work.equals("serve")).toList();
    for (int i = 0;; i++) {
      try {
        Fleet.Member server = servers.get((i + model) % servers.size());
        return project == null ? fleet.uploadNamed(server, name(model), text(model))
            : fleet.uploadNamed(server, name(model), text(model), "project", project);
      } catch (IOException e) {
        unsure.incrementAndGet();
        assertThat(i).as(e.toString()).isLessThan(200);
        Thread.sleep(100);
      }
    }
  }

  private void kill(Random random, AtomicInteger killed) throws InterruptedException {
    for (int i = 0; i < KILLS; i++) {
      Thread.sleep(KILL_MILLIS / 4 + random.nextInt(KILL_MILLIS * 3 / 2));
      Fleet.Member victim = fleet.members.get(random.nextInt(fleet.members.size()));
      victim.kill();
      killed.incrementAndGet();
      victim.start();
    }
  }

  @Test
  void aModelThatKillsTwoWorkersIsGivenUpWithItsReason() throws Exception {
    fleet = new Fleet(database, models);
    Fleet.Member server = fleet.start("serve");
    List<Fleet.Member> workers = List.of(fleet.start("work"), fleet.start("work"), fleet.start("work"));
    String deadly = fleet.upload(server, "deadly").path("id").textValue();
    String good = fleet.upload(server, "house").path("id").textValue();
    JsonNode ended = fleet.await(server, deadly);
    assertThat(ended.path("state").textValue()).isEqualTo("failed");
    assertThat(ended.path("problem").path("code").textValue()).isEqualTo("analysis/died");
    assertThat(ended.path("problem").path("detail").textValue()).contains("2 times");
    assertThat(workers.stream().filter(Fleet.Member::isAlive)).as("the third lives").hasSize(1);
    assertThat(fleet.await(server, good).path("state").textValue()).isEqualTo("done");
  }

  @Test
  void oneThatDoesNotHearEndsWithItsWorkerAndIsNotBegunAgain() throws Exception {
    fleet = new Fleet(database, models, "-Dseamledger.longest=1");
    Fleet.Member server = fleet.start("serve");
    Fleet.Member worker = fleet.start("work");
    JsonNode ended = fleet.await(server, fleet.upload(server, "house deaf=60000").path("id").textValue());
    assertThat(ended.path("problem").path("code").textValue()).isEqualTo("analysis/too-long");
    for (int i = 0; i < 100 && worker.isAlive(); i++) {
      Thread.sleep(50);
    }
    assertThat(worker.isAlive()).isFalse();
    // One that may take its time, however busy the machine is.
    fleet.properties.clear();
    fleet.start("work");
    assertThat(fleet.await(server, fleet.upload(server, "house").path("id").textValue()).path("state").textValue()).isEqualTo("done");
  }

  @Test
  void anEndInGoodOrderGivesBackWhatRan() throws Exception {
    fleet = new Fleet(database, models, "-Dseamledger.heartbeat=10000");
    Fleet.Member server = fleet.start("serve");
    for (int round = 0; round < 3; round++) {
      Fleet.Member worker = fleet.start("work");
      String id = fleet.upload(server, "house millis=30000").path("id").textValue();
      awaitRunning(server, id);
      worker.end();
      assertThat(fleet.get(server, "/api/analyses/" + id).path("state").textValue()).as("at once, without a death").isEqualTo("queued");
      assertThat(TestPostgres.rows(database, "SELECT starts FROM analysis WHERE id = '" + id + "'")).containsExactly("0");
      fleet.call(server, "DELETE", "/api/analyses/" + id, "application/json", "");
    }
  }

  private void awaitRunning(Fleet.Member server, String id) throws Exception {
    Callable<String> state = () -> fleet.get(server, "/api/analyses/" + id).path("state").textValue();
    for (int i = 0; i < 400 && !state.call().equals("running"); i++) {
      Thread.sleep(25);
    }
    assertThat(state.call()).isEqualTo("running");
  }

  /**
   * The worker lives and reckons on, but nobody sees it; when it is back its analysis is another's or done, and it goes on with others.
   * Where it was cut off in the middle of a transaction, the rows that it had locked don't hold up the others either.
   */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void aWorkerThatIsCutOffForAWhileHoldsUpNobody(boolean inTransaction) throws Exception {
    fleet = new Fleet(database, models);
    Fleet.Member server = fleet.start("serve");
    int port = Integer.parseInt(database.replaceFirst(".*:(\\d+)/.*", "$1"));
    try (Valve valve = new Valve(port)) {
      // Statements go by their words, not by names that were agreed on before.
      String way = database.replace(":" + port + "/", ":" + valve.port() + "/");
      fleet.start("work", way + (way.contains("?") ? "&" : "?") + "prepareThreshold=0");
      String id = fleet.upload(server, "house millis=2500").path("id").textValue();
      awaitRunning(server, id);
      Fleet.Member second = fleet.start("work");
      long since = System.nanoTime();
      if (inTransaction) {
        valve.shutBefore("UPDATE analysis SET stage", "COMMIT");
        valve.awaitShut();
      } else {
        valve.open(false);
      }
      assertThat(fleet.await(server, id).path("state").textValue()).as("by the other").isEqualTo("done");
      String hash = fleet.get(server, "/api/analyses/" + id).path("ledgerSha256").textValue();
      Thread.sleep(Math.max(0, PARTITION_SECONDS * 1000L - (System.nanoTime() - since) / 1_000_000));
      second.kill();
      valve.open(true);
      assertThat(fleet.await(server, fleet.upload(server, "house").path("id").textValue()).path("state").textValue())
          .as("the first works again").isEqualTo("done");
      assertThat(fleet.get(server, "/api/analyses/" + id).path("ledgerSha256").textValue()).isEqualTo(hash);
      assertThat(TestPostgres.rows(database, "SELECT COUNT(*) FROM ledger")).containsExactly("2");
    }
  }
}
