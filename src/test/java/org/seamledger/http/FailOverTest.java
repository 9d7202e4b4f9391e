package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.OwnPostgres;
import org.seamledger.ledger.PostgresAddress;

/**
 * The way to the database is cut, or goes silent, or its server is started again, while people upload and review: callers are told, what
 * they were told before is kept, and afterwards all goes on. By hand: {@code -Dfailover.rounds=50 -Dfailover.seed=7}.
 */
@Tag("slow")
class FailOverTest {

  private static final int ROUNDS = Integer.getInteger("failover.rounds", 4);
  private static final Duration PATIENCE = Duration.ofMinutes(4);

  @TempDir
  private Path folder;
  private OwnPostgres postgres;
  private Valve first;
  private Valve second;
  private TestService service;
  private volatile boolean over;

  @BeforeEach
  void start() throws Exception {
    postgres = new OwnPostgres(Files.createDirectory(folder.resolve("postgres")));
    first = new Valve(postgres.port());
    second = new Valve(postgres.port());
    service = new TestService(Options.of(new FixtureAnalyzer(), folder.resolve("data"))
        .database(Optional.of(PostgresAddress.of(postgres.url(first.port(), second.port()), Optional.empty(), Optional.empty()))));
  }

  @AfterEach
  void end() throws Exception {
    if (service != null) {
      service.close();
      first.close();
      second.close();
      postgres.close();
    }
  }

  /** What one user sent, and of what of it no answer said whether it is kept. */
  private static final class Sent {
    private final List<String> ids = new ArrayList<>();
    private int unsure;
  }

  private Sent upload() {
    Sent sent = new Sent();
    while (!over) {
      HttpResponse<byte[]> answer = service.upload("model", "a.ifc", "house millis=60");
      assertThat(answer.statusCode()).as(new String(answer.body())).isIn(202, 503);
      if (answer.statusCode() == 202) {
        sent.ids.add(TestService.json(answer).path("id").textValue());
      } else {
        sent.unsure++;
        TestService.pause(50);
      }
    }
    return sent;
  }

  /** What was acknowledged last of what one user said, and what since then got no answer. */
  private record Said(String kept, List<String> unsure) {
  }

  /** Says one thing after another about a junction, each on top of the one before. */
  private Said review(String analysis, String junction) {
    String kept = "";
    List<String> unsure = new ArrayList<>();
    long version = 0;
    for (int i = 0; !over; i++) {
      String note = junction + " note " + i;
      HttpResponse<byte[]> answer = service.review(analysis, junction, version, Map.of("note", note));
      assertThat(answer.statusCode()).as(new String(answer.body())).isIn(200, 409, 503);
      if (answer.statusCode() == 503) {
        unsure.add(note);
        TestService.pause(50);
        continue;
      }
      JsonNode stored = answer.statusCode() == 200 ? TestService.json(answer) : stored(analysis, junction);
      if (answer.statusCode() == 409) {
        assertThat(stored.path("note").textValue()).as("nobody else wrote it, so it is what got no answer").isIn(unsure);
      }
      kept = stored.path("note").textValue();
      version = stored.path("version").longValue();
      unsure.clear();
    }
    return new Said(kept, unsure);
  }

  private JsonNode stored(String analysis, String junction) {
    for (JsonNode r : answered("/api/analyses/" + analysis + "/reviews").path("reviews")) {
      if (r.path("junction").textValue().equals(junction)) {
        return r;
      }
    }
    return TestService.MAPPER.createObjectNode();
  }

  /** Asks until the database is there. */
  private JsonNode answered(String path) {
    long end = System.nanoTime() + PATIENCE.toNanos();
    HttpResponse<byte[]> answer = service.get(path);
    while (answer.statusCode() == 503 && System.nanoTime() < end) {
      TestService.pause(50);
      answer = service.get(path);
    }
    assertThat(answer.statusCode()).as(new String(answer.body())).isEqualTo(200);
    return TestService.json(answer);
  }

  private void disturb(int kind) throws Exception {
    switch (kind) {
      case 0 -> first.cut();
      case 1 -> {
        postgres.stop();
        postgres.startAgain();
      }
      case 2 -> {
        first.open(false);
        Thread.sleep(700);
        first.open(true);
      }
      default -> {
        first.refuse(true);
        first.cut();
        answered("/api/health");
        first.refuse(false);
        second.cut();
      }
    }
  }

  @Test
  void nothingAcknowledgedIsLostAndWorkGoesOn() throws Exception {
    long seed = Long.getLong("failover.seed", System.nanoTime());
    Random random = new Random(seed);
    String hall = service.analyse("house").path("id").textValue();
    List<String> junctions = new ArrayList<>();
    service.ledger(hall).path("junctions").forEach(j -> junctions.add(j.path("id").textValue()));
    ExecutorService users = Executors.newFixedThreadPool(3);
    Future<Sent> uploads = users.submit((Callable<Sent>) this::upload);
    List<Future<Said>> notes = junctions.stream().limit(2).map(j -> users.submit(() -> review(hall, j))).toList();
    for (int round = 0; round < ROUNDS; round++) {
      Thread.sleep(100 + random.nextInt(300));
      disturb(round % 4);
      answered("/api/health");
    }
    over = true;
    for (int i = 0; i < 2; i++) {
      Said said = notes.get(i).get();
      List<String> possible = new ArrayList<>(said.unsure);
      possible.add(said.kept);
      assertThat(stored(hall, junctions.get(i)).path("note").textValue()).as("seed %d", seed).isIn(possible);
    }
    Sent sent = uploads.get();
    users.shutdown();
    for (String id : sent.ids) {
      assertThat(service.await(id).path("state").textValue()).as("seed %d: %s", seed, id).isEqualTo("done");
      assertThat(service.ledger(id).path("junctions")).as("seed %d", seed).isNotEmpty();
    }
    assertThat(answered("/api/analyses").path("total").intValue()).as("seed %d: each once, but for what got no answer", seed)
        .isBetween(sent.ids.size() + 1, sent.ids.size() + 1 + sent.unsure);
    System.err.println("fail-overs " + ROUNDS + ", uploads " + sent.ids.size() + ", without an answer " + sent.unsure + ", seed " + seed);
  }

  /** A database that is away says nothing about who lives: nobody's run is begun again. */
  @Test
  void workersGoOnWhereItsServerWasStartedAgain() throws Exception {
    service.close();
    service = null;
    try (Fleet fleet = new Fleet(postgres.url(postgres.port()), folder.resolve("models"), "-Dseamledger.heartbeat=5000")) {
      Fleet.Member server = fleet.start("serve");
      fleet.start("work");
      fleet.start("work");
      List<String> sent = new ArrayList<>();
      for (int round = 0; round < 3; round++) {
        sent.add(sendSurely(fleet, server, "house millis=2500"));
        sent.add(sendSurely(fleet, server, "house"));
        postgres.stop();
        postgres.startAgain();
      }
      for (String id : sent) {
        assertThat(fleet.awaitAnywhere(id).path("state").textValue()).isEqualTo("done");
      }
      assertThat(fleet.logs()).doesNotContain("its worker died");
    } finally {
      first.close();
      second.close();
      postgres.close();
    }
  }

  private static String sendSurely(Fleet fleet, Fleet.Member server, String words) throws Exception {
    for (int i = 0;; i++) {
      try {
        return fleet.upload(server, words).path("id").textValue();
      } catch (IOException e) {
        assertThat(i).as(e.toString()).isLessThan(1000);
        Thread.sleep(100);
      }
    }
  }
}
