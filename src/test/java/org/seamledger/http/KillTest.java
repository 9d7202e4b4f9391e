package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamledger.ledger.StorageEngine;

/** Kills the process at moments that chance picks, with kill -9, and looks at what it finds at its next start. */
@ParameterizedClass
@EnumSource
@Tag("slow")
class KillTest {

  @Parameter
  private StorageEngine engine;

  /** By hand: {@code -Dkill.rounds=1000 -Dkill.seed=7}; the seed gives models and pauses, not where they hit the process. */
  private static final int ROUNDS = Integer.getInteger("kill.rounds", 3);
  private static final ObjectMapper MAPPER = new ObjectMapper();

  @TempDir
  private Path data;
  @TempDir
  private Path temporary;
  private final HttpClient client = HttpClient.newHttpClient();
  private Process process;
  private Optional<String> database = Optional.empty();
  private String url;

  private void start() throws IOException {
    ProcessBuilder server =
        new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
            "-Djava.io.tmpdir=" + temporary, "-cp", System.getProperty("java.class.path"), FixtureServer.class.getName(), "fixture",
            data.toString(), "0")
            .redirectErrorStream(true);
    database.ifPresent(d -> server.environment().put(FixtureServer.DATABASE, d));
    process = server.start();
    url = ReadyLine.await(process.inputReader(StandardCharsets.UTF_8));
  }

  private JsonNode call(String method, String path, String type, String body) throws IOException, InterruptedException {
    HttpRequest request = HttpRequest.newBuilder(URI.create(url).resolve(path)).header("Content-Type", type)
        .method(method, HttpRequest.BodyPublishers.ofString(body)).build();
    HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
    assertThat(answer.statusCode()).as(answer.body()).isLessThan(300);
    return MAPPER.readTree(answer.body());
  }

  /** Waits while the queue is full: who kills in every round leaves much behind that has to run again. */
  private String upload(String words) throws IOException, InterruptedException {
    while (get("/metrics", HttpResponse.BodyHandlers.ofString()).lines().anyMatch(KillTest::isLongQueue)) {
      Thread.sleep(100);
    }
    return call("POST", "/api/analyses", "multipart/form-data; boundary=b",
        "--b\r\nContent-Disposition: form-data; name=\"model\"; filename=\"a.ifc\"\r\n\r\n" + words + "\r\n--b--\r\n").path("id")
        .textValue();
  }

  private static boolean isLongQueue(String metric) {
    return metric.startsWith("seamledger_analyses_waiting ") && Double.parseDouble(metric.substring(metric.indexOf(' '))) > 20;
  }

  private <T> T get(String path, HttpResponse.BodyHandler<T> handler) throws IOException, InterruptedException {
    return client.send(HttpRequest.newBuilder(URI.create(url).resolve(path)).build(), handler).body();
  }

  private JsonNode get(String path) throws IOException, InterruptedException {
    return call("GET", path, "application/json", "");
  }

  @Test
  void aKilledProcessLeavesNoHalfAnalysisAndLosesNoReview() throws Exception {
    long seed = Long.getLong("kill.seed", System.nanoTime());
    Random random = new Random(seed);
    Map<String, String> said = new HashMap<>();
    List<String> begun = new ArrayList<>();
    database = engine.newUrl();
    start();
    String hall = upload("house");
    awaitDone(hall);
    List<String> junctions = new ArrayList<>();
    get("/api/analyses/" + hall + "/ledger").path("junctions").forEach(j -> junctions.add(j.path("id").textValue()));
    for (int round = 0; round < ROUNDS; round++) {
      begun.add(upload("many count=1500 millis=" + random.nextInt(400)));
      long end = System.nanoTime() + random.nextInt(700) * 1_000_000L;
      int i = 0;
      while (System.nanoTime() < end) {
        String j = junctions.get(i++ % junctions.size());
        String note = "round " + round + " note " + i;
        int version = Integer.parseInt(said.getOrDefault(j + " version", "0"));
        JsonNode stored = call("PUT", "/api/analyses/" + hall + "/reviews/" + j, "application/json",
            "{\"state\":\"checked\",\"note\":\"" + note + "\",\"version\":" + version + (i % 3 == 0
                ? ",\"kind\":\"valley\",\"reason\":\"" + note + "\"}" : "}"));
        said.put(j, note + (i % 3 == 0 ? " valley" : " "));
        said.put(j + " version", stored.path("version").asText());
      }
      process.destroyForcibly().waitFor();
      start();
      JsonNode reviews = get("/api/analyses/" + hall + "/reviews").path("reviews");
      Map<String, String> found = new HashMap<>();
      reviews.forEach(r -> found.put(r.path("junction").textValue(), r.path("note").textValue() + " " + r.path("kind").textValue()));
      for (String j : junctions) {
        assertThat(found.get(j)).as("seed %d, round %d: a review that was answered is kept", seed, round).isEqualTo(said.get(j));
      }
    }
    awaitFollowed(hall);
    int whole = 0;
    for (String id : begun) {
      if (!awaitDone(id)) {
        continue;
      }
      whole++;
      assertThat(get("/api/analyses/" + id + "/ledger").path("junctions")).as("seed %d: taken up again and whole", seed).hasSize(1500);
      assertThat(get("/api/analyses/" + id + "/reviews").path("findings").size())
          .isEqualTo(get("/api/analyses/" + id + "/ledger").path("findings").size());
    }
    assertThat(whole).as("the last ones were killed less than twice").isPositive();
    process.destroyForcibly().waitFor();
    requireNoLitter();
    System.err.println("kills " + ROUNDS + " " + engine + ", analyses " + begun.size() + ", whole " + whole + ", seed " + seed);
  }

  /** The embedded engine unpacks a library, which a killed process can't remove: the next one does. */
  private void requireNoLitter() throws IOException {
    try (Stream<Path> files = Files.list(temporary)) {
      assertThat(files.map(f -> f.getFileName().toString()).filter(f -> f.contains("sqlite"))).isEmpty();
    }
    if (engine == StorageEngine.SQLITE) {
      try (Stream<Path> files = Files.list(data.resolve("native"))) {
        assertThat(files.map(Path::toString).filter(f -> !f.endsWith(".lck"))).as("that of the last process").hasSize(1);
      }
    }
  }

  private void awaitFollowed(String id) throws IOException, InterruptedException {
    for (int i = 0; i < 1200 && !get("/api/analyses/" + id).path("decisions").path("followed").booleanValue(); i++) {
      Thread.sleep(50);
    }
    assertThat(get("/api/analyses/" + id).path("decisions").path("followed").booleanValue()).as("recalculated after the kills").isTrue();
  }

  /** False where the process died in it twice, which the analysis then says. */
  private boolean awaitDone(String id) throws IOException, InterruptedException {
    for (int i = 0; i < 600; i++) {
      String state = get("/api/analyses/" + id).path("state").textValue();
      if (state.equals("done")) {
        return true;
      }
      if (state.equals("failed")) {
        assertThat(get("/api/analyses/" + id).path("problem").path("code").textValue()).isEqualTo("analysis/died");
        return false;
      }
      assertThat(state).isIn("queued", "running");
      Thread.sleep(50);
    }
    throw new AssertionError(id + " does not end");
  }
}
