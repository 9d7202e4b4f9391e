package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.export.JsonLedger;
import org.seamledger.http.setting.Options;
import org.seamledger.progress.Progress;
import org.seamledger.run.TakeoffAnalyzer;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;

/** What people choose by hand takes effect in the stored result, for everybody, and can be had again on the command line. */
@Tag("slow")
class DecisionsServiceTest {

  private static final Path GATEHOUSE = Path.of("ifc-samples", "gatehouse.ifc");

  @TempDir
  private Path data;
  private TestService service;

  @BeforeEach
  void start() {
    service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), data));
  }

  @AfterEach
  void stop() {
    service.close();
  }

  private String gatehouse(String... more) throws IOException {
    JsonNode done = service.analyse(Files.readString(GATEHOUSE), more);
    assertThat(done.path("state").textValue()).isEqualTo("done");
    return done.path("id").textValue();
  }

  private void decide(String id, String junction, long version, String kind, String detail) {
    Map<String, String> values =
        Map.of("kind", kind, "detail", detail, "note", "", "reason", kind.isEmpty() && detail.isEmpty() ? "" : "seen on site");
    assertThat(service.review(id, junction, version, values).statusCode()).isEqualTo(200);
  }

  private JsonNode follow(String id) {
    long end = System.nanoTime() + 60_000_000_000L;
    while (System.nanoTime() < end) {
      JsonNode now = TestService.json(service.get("/api/analyses/" + id));
      if (now.path("decisions").path("followed").booleanValue()) {
        return now;
      }
      assertThat(now.path("decisions").has("problem")).as(now.toString()).isFalse();
      TestService.pause(30);
    }
    throw new AssertionError("the result of " + id + " does not follow its decisions");
  }

  private static List<String> ids(JsonNode ledger, String kind) {
    List<String> ids = new ArrayList<>();
    ledger.path("junctions").forEach(j -> {
      if (j.path("kind").textValue().equals(kind)) {
        ids.add(j.path("id").textValue());
      }
    });
    return ids;
  }

  private static JsonNode junction(JsonNode ledger, String id) {
    for (JsonNode j : ledger.path("junctions")) {
      if (j.path("id").textValue().equals(id)) {
        return j;
      }
    }
    throw new AssertionError("no junction " + id);
  }

  @Test
  void aKindChosenByHandChangesTheResultInPlace() throws IOException {
    String id = gatehouse();
    JsonNode before = service.ledger(id);
    String hip = ids(before, "hip").get(0);
    decide(id, hip, 0, "valley", "");
    JsonNode standing = follow(id).path("decisions");
    assertThat(standing.path("inForce").intValue()).isEqualTo(1);
    JsonNode after = service.ledger(id);
    assertThat(junction(after, hip).path("kind").textValue()).isEqualTo("valley");
    assertThat(junction(after, hip).path("detail").textValue()).isEqualTo("valley");
    assertThat(junction(after, hip).path("decided").path("byRules").path("kind").textValue()).isEqualTo("hip");
    assertThat(junction(after, hip).path("path")).isEqualTo(junction(before, hip).path("path"));
    assertThat(after.path("quantities").path("tape").path("netM").doubleValue())
        .isNotEqualTo(before.path("quantities").path("tape").path("netM").doubleValue());
    assertThat(after.path("findings").findValuesAsText("code")).contains("review/chosen-by-hand");
    assertThat(service.reviews(id).path("findings")).as("findings to mark are those of the result").hasSameSizeAs(after.path("findings"));

    JsonNode changes = TestService.json(service.get("/api/analyses/" + id + "/changes?from=rules"));
    assertThat(changes.path("changed")).hasSize(1);
    assertThat(changes.path("changed").get(0).path("before").path("kind").textValue()).isEqualTo("hip");
    assertThat(changes.path("same").intValue()).isEqualTo(before.path("junctions").size() - 1);
  }

  @Test
  void takingADecisionBackGivesTheVeryResultOfTheRules() throws IOException {
    String id = gatehouse();
    byte[] before = service.get("/api/analyses/" + id + "/ledger").body();
    String hip = ids(service.ledger(id), "hip").get(0);
    decide(id, hip, 0, "ridge", "");
    follow(id);
    assertThat(service.get("/api/analyses/" + id + "/ledger").body()).isNotEqualTo(before);
    decide(id, hip, 1, "", "");
    follow(id);
    assertThat(service.get("/api/analyses/" + id + "/ledger").body()).isEqualTo(before);
  }

  @Test
  void theCommandLineGivesTheSameBytesFromTheExportedFile() throws IOException {
    String id = gatehouse();
    JsonNode rules = service.ledger(id);
    decide(id, ids(rules, "hip").get(1), 0, "", "ridge-vented");
    decide(id, ids(rules, "eave").get(0), 0, "high-edge", "");
    follow(id);
    HttpResponse<byte[]> file = service.get("/api/analyses/" + id + "/decisions");
    assertThat(file.headers().firstValue("Content-Disposition").orElse("")).contains("decisions.json");
    Path decisions = Files.write(data.resolve("exported.json"), file.body());
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Inputs inputs = Inputs.ofNamedFiles(List.of(new Inputs.NamedFile(GATEHOUSE, "hall.ifc"))).withDecisionsIn(decisions);
    JsonLedger.write(Analysis.run(inputs, Progress.NONE), out);
    assertThat(out.toString(StandardCharsets.UTF_8))
        .isEqualTo(new String(service.get("/api/analyses/" + id + "/ledger").body(), StandardCharsets.UTF_8));
  }

  @Test
  void twoPeopleDecidingAtOnceBothTakeEffect() throws Exception {
    String id = gatehouse();
    JsonNode rules = service.ledger(id);
    List<String> hips = ids(rules, "hip");
    List<String> eaves = ids(rules, "eave");
    ExecutorService people = Executors.newFixedThreadPool(2);
    try {
      Future<?> one = people.submit(() -> hips.forEach(j -> decide(id, j, 0, "valley", "")));
      Future<?> two = people.submit(() -> eaves.forEach(j -> decide(id, j, 0, "", "eave-free")));
      one.get();
      two.get();
    } finally {
      people.shutdown();
    }
    follow(id);
    JsonNode after = service.ledger(id);
    Set<String> decided = new TreeSet<>();
    after.path("junctions").forEach(j -> {
      if (j.has("decided")) {
        decided.add(j.path("id").textValue());
      }
    });
    Set<String> all = new TreeSet<>(hips);
    all.addAll(eaves);
    assertThat(decided).isEqualTo(all);
  }

  @Test
  void theSameDecisionAgainChangesNothing() throws IOException {
    String id = gatehouse();
    String hip = ids(service.ledger(id), "hip").get(0);
    decide(id, hip, 0, "valley", "");
    String hash = follow(id).path("ledgerSha256").textValue();
    decide(id, hip, 1, "valley", "");
    assertThat(follow(id).path("ledgerSha256").textValue()).isEqualTo(hash);
  }

  @Test
  void decisionsGoOverToTheNextRevisionAndTakeEffectThere() throws IOException {
    String id = gatehouse();
    String hip = ids(service.ledger(id), "hip").get(0);
    decide(id, hip, 0, "valley", "");
    String project = follow(id).path("project").textValue();
    String second = gatehouse("project", "", project);
    assertThat(follow(second).path("decisions").path("inForce").intValue()).isEqualTo(1);
    assertThat(junction(service.ledger(second), hip).path("decided").path("reason").textValue()).isEqualTo("seen on site");

    HttpResponse<byte[]> other = service.send("POST", "/api/analyses/" + second + "/recompute",
        Map.of("system", Map.of("panel", Map.of("coverage", "18 in"))));
    String third = TestService.json(other).path("id").textValue();
    service.await(third);
    assertThat(follow(third).path("decisions").path("inForce").intValue()).as("another roof system makes no other line").isEqualTo(1);
    assertThat(junction(service.ledger(third), hip).path("kind").textValue()).isEqualTo("valley");
  }

  @Test
  void aDecisionOnALineThatChangedWaitsForANewLook() {
    service.close();
    service = TestService.on(data.resolve("made-up"));
    JsonNode first = service.analyse("house");
    String id = first.path("id").textValue();
    String ridge = ids(service.ledger(id), "ridge").get(0);
    String pipe = ids(service.ledger(id), "pipe").get(0);
    decide(id, ridge, 0, "hip", "");
    decide(id, pipe, 0, "", "none");
    follow(id);
    String second = service.analyse("house width=15 pipe=no", "project", "", first.path("project").textValue()).path("id").textValue();
    JsonNode standing = follow(second).path("decisions");
    assertThat(standing.path("inForce").intValue()).isZero();
    assertThat(standing.path("stale").intValue()).isEqualTo(1);
    assertThat(ids(service.ledger(second), "ridge")).as("the rules' kind stands meanwhile").isNotEmpty();
    JsonNode changes = TestService.json(service.get("/api/analyses/" + second + "/changes?from=" + id));
    assertThat(changes.path("decisionsGone").findValuesAsText("junction")).containsExactly(pipe);

    JsonNode review = service.reviews(second).path("reviews").get(0);
    assertThat(review.path("stale").booleanValue()).isTrue();
    decide(second, review.path("junction").textValue(), review.path("version").longValue(), "hip", "");
    assertThat(follow(second).path("decisions").path("inForce").intValue()).isEqualTo(1);
    assertThat(junction(service.ledger(second), review.path("junction").textValue()).path("kind").textValue()).isEqualTo("hip");
  }

  @Test
  void aServerThatStopsInBetweenFollowsAtTheNextStart() {
    service.close();
    Path folder = data.resolve("made-up");
    service = TestService.on(folder);
    String id = service.analyse("house millis=1500").path("id").textValue();
    String ridge = ids(service.ledger(id), "ridge").get(0);
    decide(id, ridge, 0, "hip", "");
    assertThat(TestService.json(service.get("/api/analyses/" + id)).path("decisions").path("followed").booleanValue()).isFalse();
    service.close();
    service = TestService.on(folder);
    follow(id);
    assertThat(junction(service.ledger(id), ridge).path("kind").textValue()).isEqualTo("hip");
  }

  @Test
  void marksOfFindingsOutliveADecisionThatHidesThem() throws IOException {
    String id = gatehouse();
    JsonNode rules = service.ledger(id);
    String side = ids(rules, "curb-upslope").get(0);
    int place = -1;
    for (int i = 0; i < rules.path("findings").size(); i++) {
      place = rules.path("findings").get(i).path("code").textValue().equals("drainage/no-cricket") ? i : place;
    }
    JsonNode mark = service.reviews(id).path("findings").get(place);
    HttpResponse<byte[]> accepted = service.send("PUT", "/api/analyses/" + id + "/findings/" + mark.path("id").textValue(),
        Map.of("state", "accepted", "reason", "a cricket is drawn", "acceptedBy", "A. Planner", "assignee", "", "version", 0));
    assertThat(accepted.statusCode()).isEqualTo(200);
    decide(id, side, 0, "curb-downslope", "");
    follow(id);
    assertThat(service.reviews(id).path("findings").findValuesAsText("reason")).doesNotContain("a cricket is drawn");
    decide(id, side, 1, "", "");
    follow(id);
    assertThat(service.reviews(id).path("findings").findValuesAsText("reason")).contains("a cricket is drawn");
  }
}
