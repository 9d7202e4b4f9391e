package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.ledger.StorageEngine;
import org.seamledger.progress.Progress;
import org.seamledger.source.Attachment;
import org.seamledger.takeoff.Inputs;
import org.seamledger.watch.FolderServers;

/**
 * Kills who watches a server at moments that chance picks, with kill -9, and looks afterwards whether every revision was analysed once and
 * answered once. By hand: {@code -Dkill.rounds=1000 -Dkill.seed=7}; the seed gives the models and pauses, not where they hit the process.
 */
@Tag("slow")
class WatchKillTest {

  private static final int ROUNDS = Integer.getInteger("kill.rounds", 1);
  private static final int LONGEST_MILLIS = 900;
  private static final int PATIENCE_SECONDS = 300;
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final String PROJECT = "/api/servers/" + FolderServers.NAME + "/projects/" + FolderServers.PROJECT.id();

  @TempDir
  private Path data;
  @TempDir
  private Path shelf;
  private final HttpClient client = HttpClient.newHttpClient();
  private Optional<String> database = Optional.empty();
  private Process process;
  private String url = "";

  @AfterEach
  void end() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  private void start(String kind) throws IOException {
    ProcessBuilder watcher =
        new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC", "-cp", System.getProperty("java.class.path"), WatchingProcess.class.getName(), kind, data.toString(),
            shelf.toString()).redirectErrorStream(true);
    database.ifPresent(d -> watcher.environment().put(FixtureServer.DATABASE, d));
    process = watcher.start();
    BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
    url = ReadyLine.await(out);
    Thread rest = new Thread(() -> drain(out), "output");
    rest.setDaemon(true);
    rest.start();
  }

  private static void drain(BufferedReader out) {
    try {
      while (out.readLine() != null) {
        // Nobody asks.
      }
    } catch (IOException e) {
      // It was killed.
    }
  }

  private JsonNode call(String method, String path, String body) throws IOException, InterruptedException {
    HttpRequest request = HttpRequest.newBuilder(URI.create(url).resolve(path)).header("Content-Type", "application/json")
        .method(method, HttpRequest.BodyPublishers.ofString(body)).build();
    HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
    assertThat(answer.statusCode()).as(answer.body()).isLessThan(300);
    return MAPPER.readTree(answer.body());
  }

  @ParameterizedTest
  @CsvSource({"SQLITE, serve", "SQLITE, watch", "POSTGRESQL, serve", "POSTGRESQL, watch"})
  void aKilledWatchLosesAndDoublesNothing(StorageEngine engine, String kind) throws Exception {
    long seed = Long.getLong("kill.seed", System.nanoTime());
    Random random = new Random(seed);
    database = engine.newUrl();
    FolderServers servers = new FolderServers(shelf);
    List<String> models = new ArrayList<>();
    // The page switches it on; the command takes what it is told.
    start("serve");
    call("PUT", PROJECT + "/watch", "{\"on\":true}");
    servers.checkIn(model(random, models));
    awaitAnswered(1);
    for (int round = 0; round < ROUNDS; round++) {
      process.destroyForcibly().waitFor();
      boolean before = random.nextBoolean();
      if (before) {
        servers.checkIn(model(random, models));
      }
      start(kind);
      if (!before) {
        servers.checkIn(model(random, models));
      }
      Thread.sleep(random.nextInt(LONGEST_MILLIS));
    }
    process.destroyForcibly().waitFor();
    start("serve");
    awaitAnswered(models.size());
    int died = requireAnswers(servers, models, seed);
    System.err.println("watch kills " + ROUNDS + " " + engine + " " + kind + ", revisions " + models.size() + ", given up after two deaths "
        + died + ", seed " + seed);
  }

  private static String model(Random random, List<String> models) {
    models.add("house pitch=0." + (10 + random.nextInt(80)) + " width=" + (10 + models.size() % 7) + " millis=" + random.nextInt(300));
    return models.get(models.size() - 1);
  }

  /** Until every revision that the server has is done with. */
  private void awaitAnswered(int revisions) throws IOException, InterruptedException {
    long end = System.nanoTime() + PATIENCE_SECONDS * 1_000_000_000L;
    JsonNode all = call("GET", PROJECT + "/revisions", "").path("revisions");
    while (!isAnswered(all, revisions)) {
      assertThat(System.nanoTime()).as(all.toString()).isLessThan(end);
      Thread.sleep(100);
      all = call("GET", PROJECT + "/revisions", "").path("revisions");
    }
  }

  private static boolean isAnswered(JsonNode all, int revisions) {
    int answered = 0;
    for (JsonNode r : all) {
      assertThat(r.path("stage").asText()).as("none is given up or passed over").isNotIn("given-up", "passed");
      answered += r.path("stage").asText().equals("answered") ? 1 : 0;
    }
    return answered == revisions;
  }

  /** Each revision has one analysis and each of its documents once; returns how many died twice, which they say. */
  private int requireAnswers(FolderServers servers, List<String> models, long seed) throws Exception {
    JsonNode projects = call("GET", "/api/projects", "").path("projects");
    assertThat(projects).as("seed %d: one project", seed).hasSize(1);
    JsonNode analyses = call("GET", "/api/projects/" + projects.path(0).path("id").textValue(), "").path("analyses");
    assertThat(analyses).as("seed %d: each revision was analysed once", seed).hasSameSizeAs(models);
    int before = 0;
    int died = 0;
    for (int n = 1; n <= models.size(); n++) {
      JsonNode analysis = analyses.path(n - 1);
      assertThat(analysis.path("revision").intValue()).as("seed %d", seed).isEqualTo(n);
      TreeMap<String, byte[]> left = new TreeMap<>();
      for (Attachment a : servers.left(n)) {
        assertThat(left.put(a.title(), a.content())).as("seed %d: %s was left once", seed, a.title()).isNull();
      }
      if (analysis.path("state").textValue().equals("failed")) {
        assertThat(analysis.path("problem").path("code").textValue()).as("seed %d", seed).isEqualTo("analysis/died");
        assertThat(left.keySet()).as("seed %d", seed).containsExactly(title(n, "report.txt"));
        assertThat(new String(left.get(title(n, "report.txt")), StandardCharsets.UTF_8)).contains("The program ended 2 times");
        died++;
      } else {
        requireWhole(left, n, before, models.get(n - 1), seed);
        before = n;
      }
    }
    return died;
  }

  private void requireWhole(TreeMap<String, byte[]> left, int n, int before, String model, long seed) throws IOException {
    List<String> titles = new ArrayList<>(List.of(title(n, "ledger.json"), title(n, "report.txt")));
    if (before > 0) {
      titles.add(title(n, String.format("changes since r%04d.json", before)));
      titles.add(title(n, String.format("changes since r%04d.txt", before)));
    }
    assertThat(left.keySet()).as("seed %d", seed).containsExactlyInAnyOrderElementsOf(titles);
    assertThat(new String(left.get(title(n, "report.txt")), StandardCharsets.UTF_8)).as("seed %d", seed).isEqualTo(model + "\n");
    assertThat(left.get(title(n, "ledger.json"))).as("seed %d, revision %d", seed, n).isEqualTo(ledger(model));
  }

  private static String title(int revision, String what) {
    return String.format("seamledger r%04d %s", revision, what);
  }

  /** What one process gives that nobody kills. */
  private byte[] ledger(String model) throws IOException {
    Path file = Files.writeString(data.resolve("alone"), model);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    new FixtureAnalyzer().analyze(Inputs.ofNamedFiles(List.of(new Inputs.NamedFile(file, "a.ifc", Optional.empty()))), Progress.NONE)
        .writeLedger(out);
    return out.toByteArray();
  }
}
