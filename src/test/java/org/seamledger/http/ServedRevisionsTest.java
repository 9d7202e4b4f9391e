package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;
import org.seamledger.source.Attachment;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;
import org.seamledger.watch.Answers;
import org.seamledger.watch.MemoryServers;

/** What people call revisions of servers, in which order they stand, and models of several sources in one analysis. */
class ServedRevisionsTest {

  @TempDir
  private Path data;
  private final MemoryServers servers = new MemoryServers();
  private final MemoryServers.Shelf office = servers.add("office");
  private final MemoryServers.Shelf partner = servers.add("partner");
  private final ServedProject school = office.addProject("School");
  private final ServedProject pipes = partner.addProject("Pipes");
  private TestService service;

  @BeforeEach
  void start() {
    service = new TestService(Options.of(new FixtureAnalyzer(), data).servers(servers).watch(Duration.ofMillis(200)));
  }

  @AfterEach
  void stop() {
    service.close();
  }

  private ServedRevision checkIn(String words) {
    return office.checkIn(school, words, words.getBytes(StandardCharsets.UTF_8));
  }

  private JsonNode analyse(ServedRevision r) {
    return ended(service.send("POST", "/api/servers/office/projects/" + school.id() + "/revisions/" + r.id() + "/analyses", null));
  }

  private JsonNode ended(HttpResponse<byte[]> answer) {
    assertThat(answer.statusCode()).as(text(answer)).isEqualTo(202);
    JsonNode ended = service.await(TestService.json(answer).path("id").textValue());
    assertThat(ended.path("state").textValue()).as(ended.toString()).isEqualTo("done");
    return ended;
  }

  private static String text(HttpResponse<byte[]> answer) {
    return new String(answer.body(), StandardCharsets.UTF_8);
  }

  private static String served(String server, ServedRevision r) {
    return "{\"server\":\"" + server + "\",\"project\":" + r.project() + ",\"revision\":" + r.id() + "}";
  }

  private JsonNode project(JsonNode analysis) {
    return TestService.json(service.get("/api/projects/" + analysis.path("project").textValue())).path("analyses");
  }

  private static String[] labels(JsonNode analyses) {
    return StreamSupport.stream(analyses.spliterator(), false).map(a -> a.path("label").textValue()).toArray(String[]::new);
  }

  @Test
  void revisionsHaveTheServersNumbersAndOrderWhateverWasAnalysedFirst() {
    checkIn("house");
    ServedRevision two = checkIn("house pipe=no");
    checkIn("house width=11");
    ServedRevision four = checkIn("house width=12");
    ServedRevision five = checkIn("house width=13");
    analyse(five);
    JsonNode last = analyse(two);
    analyse(four);
    assertThat(labels(project(last))).as("1 and 3 were never analysed").containsExactly("2", "4", "5");
    assertThat(last.path("revision").intValue()).isEqualTo(2);
    assertThat(last.path("words").textValue()).isEqualTo("revision 2 (house pipe=no)");
    assertThat(last.path("origin").path("checkedIn").textValue()).isEqualTo(two.created().toString());
    assertThat(last.path("origin").path("comment").textValue()).isEqualTo("house pipe=no");
    service.close();
    start();
    assertThat(labels(project(last))).as("kept").containsExactly("2", "4", "5");
  }

  @Test
  void reviewsComeFromTheRevisionBeforeInTheServersOrder() {
    ServedRevision one = checkIn("house");
    ServedRevision two = checkIn("house");
    ServedRevision three = checkIn("house");
    String first = analyse(one).path("id").textValue();
    String junction = service.ledger(first).path("junctions").path(0).path("id").textValue();
    service.review(first, junction, 0, Map.of("note", "seen in 1"));
    String third = analyse(three).path("id").textValue();
    JsonNode carried = service.reviews(third).path("reviews").path(0);
    service.review(third, junction, carried.path("version").longValue(), Map.of("note", "seen in 3"));
    String second = analyse(two).path("id").textValue();
    assertThat(service.reviews(second).path("reviews").path(0).path("note").textValue()).isEqualTo("seen in 1");
  }

  @Test
  void sinceRevisionFiveIsTheSameEverywhere() {
    for (int i = 0; i < 4; i++) {
      checkIn("house");
    }
    ServedRevision five = checkIn("house width=11");
    service.send("PUT", "/api/servers/office/projects/" + school.id() + "/watch", Map.of("on", true));
    awaitAnswer(five, 2);
    ServedRevision six = checkIn("house width=11 pipe=no");
    awaitAnswer(six, 4);
    assertThat(office.attached(six)).extracting(Attachment::title).contains(Answers.changes(6, 5), Answers.changesJson(6, 5));
    String left = office.attached(six).stream().filter(a -> a.title().equals(Answers.changes(6, 5)))
        .map(a -> new String(a.content(), StandardCharsets.UTF_8))
        .findFirst().orElseThrow();
    JsonNode newest = TestService.json(service.get("/api/watches")).path("watches").path(0).path("last");
    String id = newest.path("analysis").textValue();
    JsonNode analysis = service.await(id);
    assertThat(labels(project(analysis))).containsExactly("5", "6");
    assertThat(analysis.path("files").path(0).path("name").textValue()).as("as the ledger names the model").isEqualTo("School, revision 6");
    assertThat(left).contains("from revision 5 (house width=11) to revision 6 (house width=11");
    assertThat(text(service.get("/api/analyses/" + id + "/changes.txt?against=5"))).isEqualTo(left);
    JsonNode byNumber = TestService.json(service.get("/api/analyses/" + id + "/changes?against=5"));
    assertThat(byNumber.path("fromWords").textValue() + " " + byNumber.path("toWords").textValue())
        .isEqualTo("revision 5 (house width=11) revision 6 (house width=11 pipe=no)");
    assertThat(byNumber.path("removed")).isNotEmpty();
    assertThat(TestService.json(service.get("/api/analyses/" + id + "/changes?from=" + byNumber.path("from").textValue())))
        .isEqualTo(byNumber);
    assertThat(TestService.json(service.get("/api/projects/" + analysis.path("project").textValue() + "/changes?from=5&to=6")))
        .isEqualTo(byNumber);
  }

  private void awaitAnswer(ServedRevision r, int documents) {
    for (int i = 0; i < 1200 && office.attached(r).size() < documents; i++) {
      TestService.pause(25);
    }
    assertThat(office.attached(r)).hasSize(documents);
  }

  @Test
  void anyTwoRevisionsCompareBothWays() {
    String last = "";
    for (String words : new String[] {"house", "house width=11", "house width=12 pipe=no", "house width=12"}) {
      last = analyse(checkIn(words)).path("project").textValue();
    }
    String changes = "/api/projects/" + last + "/changes";
    JsonNode on = TestService.json(service.get(changes + "?from=1&to=3"));
    JsonNode back = TestService.json(service.get(changes + "?from=3&to=1"));
    assertThat(on.path("removed")).isNotEmpty();
    assertThat(on.path("removed").size()).isEqualTo(back.path("added").size());
    assertThat(back.path("fromWords").textValue()).isEqualTo("revision 3 (house width=12 pipe=no)");
    HttpResponse<byte[]> gap = service.get(changes + "?from=9&to=1");
    assertThat(gap.statusCode()).isEqualTo(404);
    assertThat(TestService.json(gap).path("detail").textValue()).isEqualTo("The project has no result of revision 9; it has 1; 2; 3; 4.");
    for (String bad : new String[] {"", "?from=1", "?from=x&to=1", "?from=-1&to=2", "?from=1&to=99999999999"}) {
      HttpResponse<byte[]> refused = service.get(changes + bad);
      assertThat(refused.statusCode()).as(bad).isEqualTo(400);
      assertThat(TestService.json(refused).path("code").textValue()).startsWith("query/");
    }
    String id = TestService.json(service.get(changes + "?from=1&to=3")).path("to").textValue();
    assertThat(service.get("/api/analyses/" + id + "/changes").statusCode()).isEqualTo(400);
    assertThat(service.get("/api/analyses/" + id + "/changes?against=1&from=" + id).statusCode()).isEqualTo(400);
    assertThat(service.get("/api/analyses/" + id + "/changes.txt?against=7").statusCode()).isEqualTo(404);
  }

  @Test
  void theSameRevisionAgainIsAnotherRunOfIt() {
    JsonNode first = analyse(checkIn("house"));
    JsonNode again =
        ended(service.send("POST", "/api/analyses/" + first.path("id").textValue() + "/recompute", Map.of("system", Map.of())));
    analyse(checkIn("house pipe=no"));
    assertThat(labels(project(first))).containsExactly("1", "1, run 2", "2");
    assertThat(again.path("words").textValue()).isEqualTo("revision 1, run 2 (house)");
    HttpResponse<byte[]> upload = service.upload("project", "", first.path("project").textValue(), "model", "mine.ifc", "house width=15");
    assertThat(ended(upload).path("words").textValue()).as("it has no number on the server").isEqualTo("upload after revision 2, run 2");
    analyse(checkIn("house width=16"));
    assertThat(labels(project(first))).containsExactly("1", "1, run 2", "2", "upload after 2, run 2", "3");
  }

  @Test
  void modelsOfServersAndFilesAreOneBuilding() {
    ServedRevision roof = checkIn("house");
    ServedRevision ducts = partner.checkIn(pipes, "as built", "house pipe=no".getBytes(StandardCharsets.UTF_8));
    JsonNode first = ended(service.upload("served", "", served("office", roof), "model", "skylights.ifc", "house width=11", "served", "",
        served("partner", ducts)));
    assertThat(first.path("title").textValue()).isEqualTo("skylights.ifc + School + Pipes");
    assertThat(first.path("files").findValuesAsText("name")).containsExactly("skylights.ifc", "School, revision 1", "Pipes, revision 1");
    assertThat(first.path("files").path(2).path("bytes").intValue()).as("it was fetched").isEqualTo(13);
    assertThat(first.path("files").path(2).path("origin").path("comment").textValue()).isEqualTo("as built");
    JsonNode next =
        ended(service.upload("model", "skylights.ifc", "house width=12", "served", "", served("office", checkIn("house")), "served", "",
            served("partner", ducts)));
    assertThat(labels(project(next))).as("the same sources: its next revision, by our own numbers").containsExactly("1", "2");
    assertThat(next.path("project")).isEqualTo(first.path("project"));
    assertThat(next.has("origin")).as("it is no revision of one server").isFalse();
    assertThat(analyse(roof).path("project")).as("the school alone is another building").isNotEqualTo(first.path("project"));
  }

  @Test
  void aRevisionAloneIsThatRevisionHoweverItWasNamed() {
    checkIn("house");
    ServedRevision two = checkIn("house");
    JsonNode alone = ended(service.upload("served", "", served("office", two)));
    assertThat(alone.path("label").textValue()).isEqualTo("2");
    assertThat(analyse(two).path("project")).isEqualTo(alone.path("project"));
  }

  @Test
  void namesOfRevisionsThatAreNoneAreRefused() {
    ServedRevision r = checkIn("house");
    Map<String, String> bad =
        Map.of("office", "upload/served", "{\"server\":\"office\"}", "upload/served", served("nowhere", r), "not-found",
            served("partner", r), "server/not-found", "{\"server\":\"http://127.0.0.1:1/\",\"project\":1,\"revision\":1}", "not-found");
    bad.forEach((name, code) -> {
      HttpResponse<byte[]> answer = service.upload("model", "a.ifc", "house", "served", "", name);
      assertThat(answer.statusCode()).as(name).isBetween(400, 404);
      assertThat(TestService.json(answer).path("code").textValue()).as(name).isEqualTo(code);
    });
    HttpResponse<byte[]> twice = service.upload("served", "", served("office", r), "served", "", served("office", checkIn("house")));
    assertThat(TestService.json(twice).path("code").textValue()).isEqualTo("upload/served-twice");
    assertThat(TestService.json(service.get("/api/analyses")).path("analyses")).isEmpty();
    assertThat(TestService.uploads(data)).as("nothing is left behind").isEmptyDirectory();
  }
}
