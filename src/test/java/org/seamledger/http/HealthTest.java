package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.http.setting.Options;
import org.seamledger.order.PriceList;
import org.seamledger.order.Subtotals;
import org.seamledger.progress.Progress;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Result;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;
import org.seamledger.takeoff.Inputs;
import org.seamledger.watch.MemoryServers;
import org.slf4j.LoggerFactory;

/** Faults of the program in each part that works in the background: none is silent, none ends the part. */
class HealthTest {

  @TempDir
  private Path data;
  private final MemoryServers servers = new MemoryServers();
  private final MemoryServers.Shelf shelf = servers.add("office");
  private final ServedProject school = shelf.addProject("School");
  private final ListAppender<ILoggingEvent> log = new ListAppender<>();
  private TestService service;

  /** As {@link FixtureAnalyzer}, but a class is missing for a model that says so, at once or with decisions only. */
  private static final class Faulty implements Analyzer<Result> {
    private final FixtureAnalyzer good = new FixtureAnalyzer();

    @Override
    public Result analyze(Inputs inputs, Progress progress) throws IOException {
      String words = Files.readString(FixtureAnalyzer.model(inputs).path());
      if (words.contains("missing=always") || words.contains("missing=decided") && !inputs.decisions().isEmpty()) {
        throw missingClass();
      }
      Result result = good.analyze(inputs, progress);
      return words.contains("missing=cuts") ? new NoCuts(result) : result;
    }
  }

  private record NoCuts(Result whole) implements Result {
    @Override
    public void writeLedger(OutputStream out) throws IOException {
      whole.writeLedger(out);
    }

    @Override
    public Optional<String> plan(SheetSetup setup, int sheet) {
      return whole.plan(setup, sheet);
    }

    @Override
    public Optional<String> profiles(SheetSetup setup, int sheet) {
      return whole.profiles(setup, sheet);
    }

    @Override
    public String planDocument(SheetSetup setup) {
      return whole.planDocument(setup);
    }

    @Override
    public Optional<String> report() {
      return Optional.empty();
    }

    @Override
    public Optional<String> section(String junction, SheetSetup setup) {
      return Optional.empty();
    }

    @Override
    public String order(Optional<PriceList> prices) {
      throw missingClass();
    }

    @Override
    public String subtotals(Subtotals.By by, Optional<PriceList> prices) {
      return whole.subtotals(by, prices);
    }

    @Override
    public String junctions() {
      throw missingClass();
    }

    @Override
    public String cutList() {
      throw missingClass();
    }
  }

  private static NoClassDefFoundError missingClass() {
    return new NoClassDefFoundError("org/example/Missing");
  }

  @BeforeEach
  void start() {
    log.start();
    ((Logger) LoggerFactory.getLogger("org.seamledger")).addAppender(log);
    service = new TestService(Options.of(new Faulty(), data).servers(servers).watch(Duration.ofMillis(100)));
  }

  @AfterEach
  void stop() {
    shelf.before = call -> {};
    service.close();
    ((Logger) LoggerFactory.getLogger("org.seamledger")).detachAppender(log);
  }

  private JsonNode health(Predicate<JsonNode> enough) {
    JsonNode now = TestService.json(service.get("/api/health"));
    for (int i = 0; i < 600 && !enough.test(now); i++) {
      TestService.pause(50);
      now = TestService.json(service.get("/api/health"));
    }
    assertThat(enough.test(now)).as(now.toString()).isTrue();
    return now;
  }

  private JsonNode degraded(String part) {
    JsonNode health = health(h -> h.path("status").textValue().equals("degraded"));
    assertThat(health.path("faults")).hasSize(1);
    assertThat(health.at("/faults/0/part").textValue()).isEqualTo(part);
    assertThat(health.at("/faults/0/since").textValue()).matches("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\dZ");
    assertThat(health.at("/faults/0/stopped").booleanValue()).isFalse();
    return health;
  }

  private void fineAgain() {
    JsonNode health = health(h -> h.path("status").textValue().equals("ok"));
    assertThat(health.path("faults")).isEmpty();
  }

  private List<ILoggingEvent> errors() {
    return List.copyOf(log.list).stream().filter(e -> e.getLevel() == Level.ERROR).toList();
  }

  @Test
  void anAnalysisAtWhichTheProgramFailsIsToldAndTheNextOneRuns() {
    JsonNode failed = service.analyse("house missing=always");
    assertThat(failed.path("state").textValue()).isEqualTo("failed");
    assertThat(failed.at("/problem/code").textValue()).isEqualTo("internal");
    assertThat(service.get("/api/health").statusCode()).as("the service takes requests").isEqualTo(200);
    degraded("analyses");
    assertThat(new String(service.get("/metrics").body(), StandardCharsets.UTF_8)).contains("\nseamledger_parts_failed 1\n");
    assertThat(errors()).as("logged once, with its trace").hasSize(1)
        .allSatisfy(e -> assertThat(e.getThrowableProxy().getClassName()).isEqualTo(NoClassDefFoundError.class.getName()));
    for (int i = 0; i < 5; i++) {
      assertThat(service.analyse("house").path("state").textValue()).isEqualTo("done");
    }
    fineAgain();
  }

  @Test
  void aResultThatCantBeComputedAgainSaysSo() {
    String id = service.analyse("house missing=decided").path("id").textValue();
    String junction = service.ledger(id).path("junctions").path(0).path("id").textValue();
    Map<String, String> values = Map.of("kind", "", "detail", "ridge-vented", "note", "", "reason", "seen on site");
    assertThat(service.review(id, junction, 0, values).statusCode()).isEqualTo(200);
    degraded("recalculation");
    assertThat(TestService.json(service.get("/api/analyses/" + id)).at("/decisions/problem").isMissingNode()).isFalse();
    assertThat(errors()).hasSize(1);
    String other = service.analyse("house").path("id").textValue();
    assertThat(service.review(other, junction, 0, values).statusCode()).isEqualTo(200);
    fineAgain();
  }

  @Test
  void aWatchThatFailsIsShownAndTriedAgain() {
    ServedRevision r = shelf.checkIn(school, "house", "house".getBytes(StandardCharsets.UTF_8));
    assertThat(service.send("PUT", "/api/servers/office/projects/" + school.id() + "/watch", "{\"on\":true}").statusCode()).isEqualTo(200);
    for (int i = 0; i < 600 && shelf.attached(r).size() < 2; i++) {
      TestService.pause(50);
    }
    int[] left = {3};
    shelf.before = call -> {
      if (call.equals("connect") && left[0]-- > 0) {
        throw missingClass();
      }
    };
    degraded("watch office");
    fineAgain();
    assertThat(left[0]).isNegative();
  }

  @Test
  void aWatchedRevisionAtWhichTheProgramFailsIsGivenUp() {
    shelf.checkIn(school, "house", "house missing=always".getBytes(StandardCharsets.UTF_8));
    service.send("PUT", "/api/servers/office/projects/" + school.id() + "/watch", "{\"on\":true}");
    JsonNode last = null;
    for (int i = 0; i < 600 && (last == null || !last.path("stage").asText().equals("given-up")); i++) {
      TestService.pause(50);
      last = TestService.json(service.get("/api/watches")).at("/watches/0/last");
    }
    assertThat(last.path("stage").textValue()).isEqualTo("given-up");
    assertThat(last.path("problem").textValue()).contains("The program failed");
    assertThat(TestService.json(service.get("/api/analyses")).path("analyses")).as("tried three times").hasSize(3);
  }

  @Test
  void aThreadThatStoppedForGoodMakesTheServiceNotReady() {
    fineAgain();
    Thread.getAllStackTraces().keySet().stream().filter(t -> t.getName().equals("watch-office")).forEach(Thread::interrupt);
    JsonNode health = health(h -> h.path("status").textValue().equals("down"));
    assertThat(health.at("/faults/0/part").textValue()).isEqualTo("watch office");
    assertThat(health.at("/faults/0/stopped").booleanValue()).isTrue();
    assertThat(service.get("/api/health").statusCode()).isEqualTo(503);
  }

  /** A class that is missing is no exception, and goes past the handlers of those. */
  @Test
  void anAddressAtWhichTheProgramFailsAnswersAProblem() throws Exception {
    String id = service.analyse("house missing=cuts").path("id").textValue();
    shelf.before = call -> {
      throw missingClass();
    };
    for (String path : List.of("/api/analyses/" + id + "/cuts.csv", "/api/servers/office/projects")) {
      int before = errors().size();
      HttpResponse<byte[]> answer = service.client.send(HttpRequest.newBuilder(URI.create(service.server.url()).resolve(path)).build(),
          HttpResponse.BodyHandlers.ofByteArray());
      assertThat(answer.statusCode()).as(path).isEqualTo(500);
      assertThat(answer.headers().firstValue("Content-Type")).as(path).contains("application/problem+json");
      assertThat(TestService.json(answer).path("code").textValue()).isEqualTo("internal");
      assertThat(errors()).as("logged once").hasSize(before + 1);
    }
  }
}
