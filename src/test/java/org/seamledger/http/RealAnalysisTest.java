package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Limits;
import org.seamledger.http.setting.Options;
import org.seamledger.progress.Progress;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Result;
import org.seamledger.run.TakeoffAnalyzer;
import org.seamledger.samples.Terrace;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Program;

/** The service with the program's own analysis in it: stopping one in the middle, and knowing when a stored result is out of date. */
@Tag("slow")
class RealAnalysisTest {

  private static final int HOUSES = 60;

  @TempDir
  private Path folder;

  /** The program's own, with its steps counted; waits at one of them until somebody has asked to stop. */
  private record Counting(TakeoffAnalyzer real, AtomicInteger steps, double waitsAt) implements Analyzer<Result> {
    @Override
    public Result analyze(Inputs inputs, Progress progress) {
      return real.analyze(inputs, (stage, fraction) -> {
        steps.incrementAndGet();
        if (fraction >= waitsAt) {
          pauseUntilInterrupted();
        }
        progress.at(stage, fraction);
      });
    }

    /** At most a minute: a test that fails shall end, too. */
    private static void pauseUntilInterrupted() {
      for (int i = 0; i < 6000 && !Thread.currentThread().isInterrupted(); i++) {
        try {
          Thread.sleep(10);
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
        }
      }
    }
  }

  private Options options(Analyzer<Result> analyzer) {
    return Options.of(analyzer, folder.resolve("data"));
  }

  private int stepsOfAWholeRun(Path model) {
    AtomicInteger steps = new AtomicInteger();
    new Counting(new TakeoffAnalyzer(Optional.empty()), steps, 2).analyze(Inputs.ofFiles(List.of(model)), Progress.NONE);
    return steps.get();
  }

  private void leavesNothing(TestService service, String id) throws IOException {
    assertThat(service.get("/api/analyses/" + id + "/ledger").statusCode()).isEqualTo(409);
    try (Stream<Path> left = Files.list(folder.resolve("data").resolve("scratch"))) {
      assertThat(left).isEmpty();
    }
  }

  @Test
  void anAnalysisIsCancelledLongBeforeItWouldHaveEnded() throws IOException {
    Path model = Terrace.write(folder.resolve("terrace.ifc"), HOUSES);
    int whole = stepsOfAWholeRun(model);
    AtomicInteger steps = new AtomicInteger();
    try (TestService service =
        new TestService(options(new Counting(new TakeoffAnalyzer(Optional.empty()), steps, 0.4)).models(List.of(model)))) {
      String id = TestService.json(service.get("/api/start")).path("analysis").textValue();
      JsonNode now = running(service, id, 0.35);
      assertThat(now.path("progress").path("stage").textValue()).isEqualTo("Finding the roof's faces");
      HttpResponse<byte[]> cancelled = service.send("DELETE", "/api/analyses/" + id, null);
      assertThat(TestService.json(cancelled).path("state").textValue()).isEqualTo("cancelled");
      assertThat(service.await(id).path("problem").path("code").textValue()).isEqualTo("cancelled");
      awaitIdle(service);
      assertThat(steps.get()).as("steps of %d", whole).isGreaterThan(whole / 10).isLessThan(whole * 6 / 10);
      leavesNothing(service, id);
    }
  }

  @Test
  void theTimeLimitActsInTheMiddleOfAStage() throws IOException {
    Path model = Terrace.write(folder.resolve("terrace.ifc"), HOUSES);
    int whole = stepsOfAWholeRun(model);
    AtomicInteger steps = new AtomicInteger();
    Limits limits = new Limits(1 << 24, 1 << 24, 1, 1 << 16, 1, 1, Duration.ofSeconds(4), 4, Duration.ofSeconds(5));
    try (TestService service =
        new TestService(options(new Counting(new TakeoffAnalyzer(Optional.empty()), steps, 0.4)).models(List.of(model)).limits(limits))) {
      String id = TestService.json(service.get("/api/start")).path("analysis").textValue();
      JsonNode ended = service.await(id);
      assertThat(ended.path("problem").path("code").textValue()).isEqualTo("analysis/too-long");
      assertThat(steps.get()).as("steps of %d", whole).isLessThan(whole * 6 / 10);
      awaitIdle(service);
      leavesNothing(service, id);
    }
  }

  private static JsonNode running(TestService service, String id, double fraction) {
    for (int i = 0; i < 2000; i++) {
      JsonNode now = TestService.json(service.get("/api/analyses/" + id));
      if (now.path("progress").path("fraction").doubleValue() >= fraction) {
        return now;
      }
      TestService.pause(20);
    }
    throw new AssertionError("no progress");
  }

  private static void awaitIdle(TestService service) {
    for (int i = 0; i < 500; i++) {
      if (TestService.json(service.get("/api/health")).path("running").intValue() == 0) {
        return;
      }
      TestService.pause(20);
    }
    throw new AssertionError("the cancelled analysis still runs");
  }

  @Test
  void aStoredResultIsOutOfDateUnderOtherRules() throws IOException {
    Path shapes = Files.createDirectories(folder.resolve("shapes"));
    Path findings = Files.copy(Path.of("shapes", "findings.ttl"), shapes.resolve("findings.ttl"));
    Options options = options(new TakeoffAnalyzer(Optional.of(shapes))).models(List.of(Path.of("ifc-samples", "gatehouse.ifc")));
    JsonNode first = opened(options);
    JsonNode again = opened(options);
    assertThat(again.path("id")).as("nothing has changed").isEqualTo(first.path("id"));
    Files.writeString(findings, Files.readString(findings) + "# an office's remark\n");
    JsonNode next = opened(options);
    assertThat(next.path("revision").asInt()).isEqualTo(2);
    assertThat(next.path("rules").textValue()).isEqualTo(Program.rules(Optional.of(shapes))).isNotEqualTo(first.path("rules").textValue());
    assertThat(first.path("rules").textValue()).as("the same texts").isEqualTo(Program.rules(Optional.empty()));
  }

  /** What a server opens on, and the rules that its ledger names. */
  private static JsonNode opened(Options options) {
    try (TestService service = new TestService(options)) {
      String id = TestService.json(service.get("/api/start")).path("analysis").textValue();
      JsonNode done = service.await(id);
      assertThat(done.path("state").textValue()).isEqualTo("done");
      return ((ObjectNode) done).put("rules", service.ledger(id).path("program").path("shapes").textValue());
    }
  }
}
