package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Limits;
import org.seamledger.http.setting.Options;
import org.seamledger.source.Attachment;
import org.seamledger.source.ModelServerException.Reason;
import org.seamledger.source.ModelServerException;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;
import org.seamledger.watch.Answers;
import org.seamledger.watch.MemoryServers;

/**
 * Models from servers over HTTP, with servers that are kept in memory. {@link TestService} holds every answer against /openapi.json as
 * well.
 */
@Tag("slow")
class ServersTest {

  @TempDir
  private Path data;
  private final MemoryServers servers = new MemoryServers();
  private final MemoryServers.Shelf shelf = servers.add("office");
  private final ServedProject school = shelf.addProject("School");
  private TestService service;

  @BeforeEach
  void start() {
    start(Limits.standard());
  }

  private void start(Limits limits) {
    service = new TestService(Options.of(new FixtureAnalyzer(), data).servers(servers).watch(Duration.ofMillis(200)).limits(limits));
  }

  private void restart() {
    service.close();
    start();
  }

  @AfterEach
  void stop() {
    shelf.before = call -> {};
    service.close();
  }

  private ServedRevision checkIn(String words) {
    return shelf.checkIn(school, words, words.getBytes(StandardCharsets.UTF_8));
  }

  private String projects() {
    return "/api/servers/office/projects";
  }

  private String revisions() {
    return projects() + "/" + school.id() + "/revisions";
  }

  private HttpResponse<byte[]> analyse(ServedRevision r) {
    return service.send("POST", revisions() + "/" + r.id() + "/analyses", null);
  }

  private HttpResponse<byte[]> watch(boolean on) {
    return service.send("PUT", projects() + "/" + school.id() + "/watch", Map.of("on", on));
  }

  private static void refused(HttpResponse<byte[]> answer, int status, String code) {
    assertThat(answer.statusCode()).as(new String(answer.body(), StandardCharsets.UTF_8)).isEqualTo(status);
    assertThat(TestService.json(answer).path("code").textValue()).isEqualTo(code);
  }

  private static void await(BooleanSupplier condition) {
    for (int i = 0; i < 1200 && !condition.getAsBoolean(); i++) {
      TestService.pause(25);
    }
    assertThat(condition.getAsBoolean()).isTrue();
  }

  @Test
  void listsServersProjectsAndRevisions() {
    ServedRevision r = checkIn("house");
    assertThat(TestService.json(service.get("/api/servers")).path("servers")).extracting(JsonNode::textValue).containsExactly("office");
    JsonNode project = TestService.json(service.get(projects())).path("projects").path(0);
    assertThat(project.path("name").textValue() + project.path("schema").textValue() + project.path("watched"))
        .isEqualTo("SchoolIFC4false");
    JsonNode revision = TestService.json(service.get(revisions())).path("revisions").path(0);
    assertThat(revision.path("id").longValue()).isEqualTo(r.id());
    assertThat(revision.path("number").intValue()).isEqualTo(1);
    assertThat(revision.path("comment").textValue()).isEqualTo("house");
  }

  @Test
  void analysesARevisionLikeAnUploadAndFurtherOnesInTheSameProject() {
    HttpResponse<byte[]> answer = analyse(checkIn("house"));
    assertThat(answer.statusCode()).isEqualTo(202);
    String id = TestService.json(answer).path("id").textValue();
    assertThat(answer.headers().firstValue("Location")).contains("/api/analyses/" + id);
    JsonNode done = service.await(id);
    assertThat(done.path("state").textValue()).isEqualTo("done");
    assertThat(done.path("title").textValue()).isEqualTo("School");
    assertThat(done.path("files").path(0).path("name").textValue()).isEqualTo("School, revision 1");
    assertThat(done.path("files").path(0).path("bytes").intValue()).isEqualTo(5);
    assertThat(service.ledger(id)).isEqualTo(LedgerFixtures.house(0.5, 14, true, "Chimney", ""));
    JsonNode second = service.await(TestService.json(analyse(checkIn("house pipe=no"))).path("id").textValue());
    assertThat(second.path("project")).isEqualTo(done.path("project"));
    assertThat(second.path("revision").intValue()).isEqualTo(2);
    assertThat(TestService.json(service.get(revisions())).path("revisions").path(0).path("analysis").textValue()).isEqualTo(id);
    assertThat(shelf.attached(new ServedRevision(school.id(), 2, 1, "", Instant.EPOCH))).as("nobody asked for an answer there").isEmpty();
  }

  @Test
  void aDownloadThatFailsIsHowTheAnalysisEnds() {
    ServedRevision r = checkIn("house");
    shelf.before = call -> {
      if (call.equals("download")) {
        throw new ModelServerException(Reason.UNUSABLE, "office sent a model that is cut short");
      }
    };
    JsonNode ended = service.await(TestService.json(analyse(r)).path("id").textValue());
    assertThat(ended.path("state").textValue()).isEqualTo("failed");
    assertThat(ended.path("problem").path("code").textValue()).isEqualTo("server/unusable");
    assertThat(ended.path("problem").path("detail").textValue()).isEqualTo("office sent a model that is cut short");
  }

  @Test
  void aDownloadCanBeStopped() throws InterruptedException {
    ServedRevision r = checkIn("house");
    CountDownLatch begun = new CountDownLatch(1);
    shelf.before = call -> {
      if (call.equals("download")) {
        begun.countDown();
        hang();
      }
    };
    String id = TestService.json(analyse(r)).path("id").textValue();
    begun.await();
    assertThat(TestService.json(service.get("/api/analyses/" + id)).path("progress").path("stage").textValue())
        .isEqualTo("Fetching the model from office");
    assertThat(service.send("DELETE", "/api/analyses/" + id, null).statusCode()).isEqualTo(200);
    assertThat(service.await(id).path("state").textValue()).isEqualTo("cancelled");
    shelf.before = call -> {};
    assertThat(service.analyse("house").path("state").textValue()).as("its worker is free").isEqualTo("done");
  }

  /** As a talk with a server does: it ends where its thread is interrupted. */
  private static void hang() {
    try {
      Thread.sleep(60_000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new CancellationException("interrupted");
    }
  }

  @Test
  void aServerThatFailsIsAProblemWithACodeOfItsOwn() {
    Map<Reason, Integer> status =
        Map.of(Reason.UNREACHABLE, 502, Reason.TIMED_OUT, 504, Reason.REFUSED, 502, Reason.NOT_FOUND, 404, Reason.UNUSABLE, 502);
    status.forEach((reason, number) -> {
      shelf.before = call -> {
        throw new ModelServerException(reason, "office: it is made to fail");
      };
      refused(service.get(projects()), number, "server/" + reason.name().toLowerCase(Locale.ROOT).replace('_', '-'));
      refused(service.get(revisions()), number, "server/" + reason.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    });
    shelf.before = call -> {};
    refused(service.get(projects() + "/77/revisions"), 404, "server/not-found");
    refused(service.send("POST", revisions() + "/77/analyses", null), 404, "server/not-found");
    refused(service.get(projects() + "/x/revisions"), 404, "not-found");
    refused(service.send("PUT", projects() + "/" + school.id() + "/watch", Map.of("on", "yes")), 400, "body/value");
  }

  @Test
  void aServerThatHangsHoldsNobodyElseUp() throws InterruptedException {
    service.close();
    Limits l = Limits.standard();
    start(new Limits(l.fileBytes(), l.requestBytes(), l.files(), l.bodyBytes(), l.running(), l.waiting(), l.duration(), l.watchers(),
        Duration.ofMillis(1500)));
    shelf.before = call -> hang();
    List<Thread> askers = new ArrayList<>();
    AtomicInteger late = new AtomicInteger();
    AtomicInteger busy = new AtomicInteger();
    for (int i = 0; i < 12; i++) {
      Thread t = new Thread(() -> {
        int status = service.get(projects()).statusCode();
        (status == 504 ? late : busy).incrementAndGet();
      });
      askers.add(t);
      t.start();
    }
    long begun = System.nanoTime();
    assertThat(service.analyse("house").path("state").textValue()).isEqualTo("done");
    assertThat(service.get("/api/health").statusCode()).isEqualTo(200);
    for (Thread t : askers) {
      t.join();
    }
    assertThat(late.get()).as("asked at once").isEqualTo(4);
    assertThat(busy.get()).as("told so at once").isEqualTo(8);
    assertThat(Duration.ofNanos(System.nanoTime() - begun)).isLessThan(Duration.ofSeconds(20));
  }

  @Test
  void whatIsWatchedIsAnalysedAndAnsweredAndShowsLikeAnUpload() {
    ServedRevision one = checkIn("house");
    assertThat(watch(true).statusCode()).isEqualTo(200);
    await(() -> shelf.attached(one).size() == 2);
    ServedRevision two = checkIn("house pipe=no");
    await(() -> shelf.attached(two).size() == 4);
    assertThat(shelf.attached(two)).extracting(Attachment::title).containsExactly(Answers.ledger(2), Answers.report(2),
        Answers.changes(2, 1),
        Answers.changesJson(2, 1));
    String changes = new String(shelf.attached(two).get(2).content(), StandardCharsets.UTF_8);
    assertThat(changes).contains("Junctions gone", "pipe", "Lengths that differ");
    await(() -> watches().path(0).path("last").path("stage").asText().equals("answered"));
    JsonNode w = watches().path(0);
    assertThat(w.path("name").textValue() + w.path("on") + w.path("open")).isEqualTo("Schooltrue0");
    assertThat(w.path("last").path("number").intValue()).isEqualTo(2);
    JsonNode last = service.await(w.path("last").path("analysis").textValue());
    JsonNode project = TestService.json(service.get("/api/projects/" + last.path("project").textValue()));
    assertThat(project.path("analyses")).hasSize(2);
    restart();
    TestService.pause(1000);
    assertThat(shelf.attached(two)).as("nothing is done twice").hasSize(4);
    assertThat(TestService.json(service.get("/api/analyses")).path("analyses")).hasSize(2);
    assertThat(watch(false).statusCode()).isEqualTo(200);
    ServedRevision three = checkIn("house");
    TestService.pause(1000);
    assertThat(shelf.attached(three)).as("it is not watched any more").isEmpty();
    assertThat(TestService.json(service.get(projects())).path("projects").path(0).path("watched").booleanValue()).isFalse();
  }

  private JsonNode watches() {
    return TestService.json(service.get("/api/watches")).path("watches");
  }

  @Test
  void aWatchThatFailsSaysSoAndCanBeEndedWhileTheServerIsDown() {
    checkIn("house");
    watch(true);
    await(() -> watches().path(0).path("last").path("stage").asText().equals("answered"));
    shelf.before = call -> {
      throw new ModelServerException(Reason.UNREACHABLE, "office does not answer");
    };
    await(() -> watches().path(0).path("problem").path("code").asText().equals("server/unreachable"));
    assertThat(watches().path(0).path("problem").path("detail").textValue()).isEqualTo("office does not answer");
    assertThat(watch(false).statusCode()).isEqualTo(200);
    refused(watch(true), 502, "server/unreachable");
  }

  @Test
  void withoutTheOperatorsWillNothingIsWatchedOrListed() {
    service.close();
    service = new TestService(Options.of(new FixtureAnalyzer(), data).servers(servers));
    refused(watch(true), 409, "watch/off");
    service.close();
    service = new TestService(Options.of(new FixtureAnalyzer(), data));
    assertThat(TestService.json(service.get("/api/servers")).path("servers")).isEmpty();
    refused(service.get(projects()), 404, "not-found");
  }

  /** A trap listens; every way to make the service call it is tried, and it must stay silent. */
  @Test
  void noAddressThatAClientSendsIsEverCalled() throws IOException {
    checkIn("house");
    AtomicInteger calls = new AtomicInteger();
    HttpServer trap = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    trap.createContext("/", exchange -> {
      calls.incrementAndGet();
      exchange.sendResponseHeaders(200, -1);
      exchange.close();
    });
    trap.start();
    try {
      String there = "127.0.0.1:" + trap.getAddress().getPort();
      String encoded = there.replace(":", "%3A");
      List<String> names = List.of("http%3A%2F%2F" + encoded + "%2F", "http:%2F%2F" + encoded, encoded, "%2F%2F" + encoded,
          "office@" + encoded, "office%40" + encoded,
          "office%2F..%2Fhttp%3A%2F%2F" + encoded, "OFFICE", "office%20", "office%00", "office.", "..%2Foffice", "%2e%2e",
          "office;url=http:%2F%2F" + encoded,
          "office%3Furl%3Dhttp%3A%2F%2F" + encoded, "%6Fffice%2F%2E%2E");
      for (String name : names) {
        for (String rest : List.of("/projects", "/projects/" + school.id() + "/revisions")) {
          assertThat(raw("GET /api/servers/" + name + rest)).as(name).matches("4\\d\\d");
        }
        assertThat(raw("POST /api/servers/" + name + "/projects/" + school.id() + "/revisions/2/analyses")).as(name).matches("4\\d\\d");
        assertThat(raw("PUT /api/servers/" + name + "/projects/" + school.id() + "/watch")).as(name).matches("4\\d\\d");
      }
      for (String project : List.of("http%3A%2F%2F" + encoded, "-1", "1e3", "0x10", "99999999999999999999", "1%2F..%2F..",
          school.id() + "%00")) {
        assertThat(raw("GET /api/servers/office/projects/" + project + "/revisions")).as(project).matches("4\\d\\d");
        assertThat(raw("POST /api/servers/office/projects/" + school.id() + "/revisions/" + project + "/analyses")).as(project)
            .matches("4\\d\\d");
      }
      service.send("PUT", projects() + "/" + school.id() + "/watch",
          Map.of("on", true, "url", "http://" + there, "server", "http://" + there));
      service.send("POST", revisions() + "/2/analyses", null, "X-Forwarded-Host", there, "Referer", "http://" + there);
      TestService.pause(500);
      assertThat(calls).hasValue(0);
    } finally {
      trap.stop(0);
    }
  }

  /** The status of an answer to a request line that no client library has tidied up. */
  private String raw(String line) throws IOException {
    try (Socket s = new Socket(InetAddress.getLoopbackAddress(), service.server.port())) {
      s.setSoTimeout(20_000);
      String body = line.startsWith("PUT") ? "{\"on\":true}" : "";
      s.getOutputStream()
          .write((line + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: application/json\r\nContent-Length: "
              + body.length()
              + "\r\n\r\n" + body).getBytes(StandardCharsets.US_ASCII));
      String answer = new String(s.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      return answer.split(" ", 3)[1];
    }
  }

  @Test
  void theGateStandsBeforeTheServersToo() {
    String other = "http://elsewhere.test";
    refused(service.send("POST", revisions() + "/1/analyses", null, "Origin", other), 403, "origin");
    refused(service.send("PUT", projects() + "/" + school.id() + "/watch", Map.of("on", true), "Origin", other), 403, "origin");
    refused(service.get("/api/servers", "Origin", other), 403, "origin");
    service.close();
    String token = "a-token-of-this-test-alone";
    service = new TestService(Options.of(new FixtureAnalyzer(), data).servers(servers).bind(Options.LOOPBACK, Optional.of(token)));
    for (String path : List.of("/api/servers", projects(), revisions(), "/api/watches")) {
      refused(service.get(path), 401, "token");
    }
    refused(analyse(new ServedRevision(school.id(), 1, 1, "", Instant.EPOCH)), 401, "token");
    service.token = token;
    assertThat(service.get(projects()).statusCode()).isEqualTo(200);
  }
}
