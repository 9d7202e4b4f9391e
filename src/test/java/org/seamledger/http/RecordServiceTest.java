package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.StorageEngine;
import org.seamledger.run.TakeoffAnalyzer;

/** The record over HTTP, on a real roof, with each engine; the service's description is held to every answer. */
@Tag("slow")
class RecordServiceTest {

  private static final Path ROOF = Path.of("ifc-samples", "gatehouse.ifc");
  private static final String AT = "2026-05-04T09:30:00Z";

  @TempDir
  private Path folder;
  private TestService service;
  private String id;
  private String project;

  private void start(StorageEngine engine) throws IOException {
    service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder).models(List.of(ROOF))
        .database(engine.newDatabase()));
    id = TestService.json(service.get("/api/start")).path("analysis").asText();
    while (!TestService.json(service.get("/api/analyses/" + id)).path("state").asText().equals("done")) {
      Thread.onSpinWait();
    }
    project = TestService.json(service.get("/api/analyses/" + id)).path("project").asText();
  }

  private String at(String rest) {
    return "/api/analyses/" + id + rest;
  }

  private HttpResponse<byte[]> say(String event, String kind, String point, String by, long base, String... headers) {
    String place = point.isEmpty() ? "" : point.split("/")[0];
    return service.send("PUT", at("/record/events/" + event), Map.of("kind", kind, "place", place, "point",
        kind.equals("sign-off") ? "" : point, "by", by, "at", AT, "base", base, "text", "words"), headers);
  }

  private static String uuid() {
    return UUID.randomUUID().toString();
  }

  private JsonNode state() {
    return TestService.json(service.get(at("/record")));
  }

  private JsonNode place(String place) {
    for (JsonNode p : state().path("places")) {
      if (p.path("id").asText().equals(place)) {
        return p;
      }
    }
    throw new IllegalStateException(place);
  }

  private JsonNode hip() {
    for (JsonNode p : state().path("places")) {
      if (p.path("kind").asText().equals("hip")) {
        return p;
      }
    }
    throw new IllegalStateException("no hip");
  }

  @ParameterizedTest
  @EnumSource
  void stepIsLockedUntilSomebodyLookedAndTwoWhoDisagreeStandBesideEachOther(StorageEngine engine) throws IOException {
    start(engine);
    try (TestService closing = service) {
      assertThat(closing).isNotNull();
      JsonNode hip = hip();
      String place = hip.path("id").asText();
      String recheck = place + "/recheck-before-capping";
      String step = "";
      for (JsonNode item : hip.path("items")) {
        step = item.path("locked").asBoolean() ? item.path("id").asText() : step;
      }
      assertThat(step).as("a step of the hip that waits for the recheck of its upright beads").isNotEmpty();
      HttpResponse<byte[]> refused = say(uuid(), "tick", step, "Ida", 0);
      assertThat(refused.statusCode()).isEqualTo(409);
      assertThat(TestService.json(refused).path("detail").asText()).contains("locked").contains("under their name");
      assertThat(say(uuid(), "tick", recheck, " ", 0).statusCode()).as("nobody looked").isEqualTo(422);
      String twice = uuid();
      assertThat(say(twice, "tick", recheck, "Ida", 0).statusCode()).isEqualTo(201);
      assertThat(say(twice, "tick", recheck, "Ida", 0).statusCode()).isEqualTo(200);
      assertThat(state().path("version").asLong()).as("sent twice, kept once").isEqualTo(1);
      assertThat(say(uuid(), "tick", step, "Ida", 1).statusCode()).isEqualTo(201);
      // Another telephone, which had seen nothing of this.
      say(uuid(), "failure", recheck, "Jon", 0);
      assertThat(place(place).path("stage").asText()).isEqualTo("conflict");
      assertThat(say(uuid(), "sign-off", place + "/x", "Ida", 3).statusCode()).isEqualTo(409);
      say(uuid(), "tick", recheck, "Ida", 3);
      assertThat(place(place).path("stage").asText()).isEqualTo("begun");
      assertThat(place(place).path("events")).as("nothing of it is gone").hasSize(4);
      signs(place);
      assertThat(chainFault(TestService.json(service.get(at("/record.json"))))).isEmpty();
    }
  }

  /** All that is open is ticked, it is signed, and then somebody opens a point again. */
  private void signs(String place) {
    for (JsonNode item : place(place).path("items")) {
      if (!item.path("standing").asText().equals("ticked")) {
        say(uuid(), "tick", item.path("id").asText(), "Ida", state().path("version").asLong());
      }
    }
    assertThat(say(uuid(), "sign-off", place + "/x", "Ida", 0).statusCode()).as("without having seen the rest").isEqualTo(409);
    assertThat(say(uuid(), "sign-off", place + "/x", "Ida", state().path("version").asLong()).statusCode()).isEqualTo(201);
    assertThat(place(place).path("stage").asText()).isEqualTo("signed");
    assertThat(state().path("coverage").path("signedM").asDouble()).isEqualTo(5.25);
    say(uuid(), "untick", place(place).path("items").get(0).path("id").asText(), "Jon", state().path("version").asLong());
    assertThat(place(place).path("stage").asText()).isEqualTo("recheck");
    assertThat(place(place).path("signed").path("by").asText()).isEqualTo("Ida");
  }

  /** By another way than the program's: fields sorted by Jackson, RFC 8785 being that for texts of this kind and whole numbers. */
  static String chainFault(JsonNode record) throws IOException {
    ObjectMapper sorted = new ObjectMapper().enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);
    String previous = "0".repeat(64);
    for (JsonNode event : record.path("chain")) {
      ObjectNode rest = event.deepCopy();
      rest.remove("hash");
      byte[] text = sorted.writeValueAsString(sorted.convertValue(rest, TreeMap.class)).getBytes(StandardCharsets.UTF_8);
      if (!rest.path("previous").asText().equals(previous) || !sha256(text).equals(event.path("hash").asText())) {
        return event.path("seq").asText();
      }
      previous = event.path("hash").asText();
    }
    return record.path("head").asText().equals(previous) && record.path("chain").size() > 5 ? "" : "head";
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private JsonNode link(String scope) {
    return TestService.json(service.send("POST", "/api/projects/" + project + "/links", Map.of("scope", scope, "name", "crew", "days", 3)));
  }

  private static String[] by(JsonNode link) {
    return new String[] {"Authorization", "Bearer " + link.path("token").asText()};
  }

  @ParameterizedTest
  @EnumSource
  void linksOpenOneRoofAndNoMoreThanTheySay(StorageEngine engine) throws IOException {
    start(engine);
    try (TestService closing = service) {
      assertThat(closing).isNotNull();
      String point = hip().path("items").get(0).path("id").asText();
      JsonNode view = link("view");
      JsonNode tick = link("tick");
      assertThat(service.get("/api/link", by(tick)).statusCode()).isEqualTo(200);
      for (String open : List.of("/roof", "/record", "/record.json")) {
        assertThat(service.get(at(open), by(view)).statusCode()).as(open).isEqualTo(200);
      }
      for (String closed : List.of("/api/analyses", "/api/projects", at(""), at("/ledger"), at("/reviews"), at("/order.csv"), "/api"
          + "/health", "/api/projects/" + project + "/links", "/api/analyses/" + "0".repeat(32) + "/record")) {
        assertThat(service.get(closed, by(view)).statusCode()).as(closed).isEqualTo(403);
      }
      assertThat(say(uuid(), "tick", point, "Ida", 0, by(view)).statusCode()).isEqualTo(403);
      assertThat(say(uuid(), "tick", point, "Ida", 0, by(tick)).statusCode()).isEqualTo(201);
      assertThat(say(uuid(), "sign-off", point, "Ida", 1, by(tick)).statusCode()).isEqualTo(403);
      assertThat(service.send("POST", "/api/projects/" + project + "/links", Map.of("scope", "sign", "name", "x", "days", 1), by(tick))
          .statusCode()).isEqualTo(403);
      service.send("DELETE", "/api/links/" + tick.path("id").asText(), null);
      assertThat(service.get(at("/record"), by(tick)).statusCode()).as("revoked").isEqualTo(401);
      assertThat(new String(service.get("/api/projects/" + project + "/links").body(), StandardCharsets.UTF_8)).contains("crew")
          .doesNotContain(tick.path("token").asText());
      for (int i = 0; i < GuessBrake.FREE; i++) {
        assertThat(service.get(at("/record"), "Authorization", "Bearer roof-" + i).statusCode()).isEqualTo(401);
      }
      assertThat(service.get(at("/record"), "Authorization", "Bearer roof-x").statusCode()).isEqualTo(429);
    }
  }

  private static byte[] png(int width, int height) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB), "png", out);
    return out.toByteArray();
  }

  @ParameterizedTest
  @EnumSource
  void photosAreScaledOnceAndBadOnesRefusedBeforeTheyAreDecoded(StorageEngine engine) throws IOException {
    start(engine);
    try (TestService closing = service) {
      assertThat(closing).isNotNull();
      String event = uuid();
      byte[] large = png(3200, 1000);
      assertThat(say(event, "photo", "", "Ida", 0).statusCode()).as("the picture first").isEqualTo(422);
      JsonNode kept = TestService.json(service.send("PUT", at("/record/photos/" + event), large));
      assertThat(kept.path("width").asInt()).isEqualTo(1600);
      assertThat(kept.path("height").asInt()).isEqualTo(500);
      assertThat(service.send("PUT", at("/record/photos/" + event), large).statusCode()).isEqualTo(200);
      assertThat(say(event, "photo", "", "Ida", 0).statusCode()).isEqualTo(201);
      byte[] jpeg = service.get(at("/record/photos/" + kept.path("sha256").asText())).body();
      assertThat(sha256(jpeg)).isEqualTo(kept.path("sha256").asText());
      assertThat(ImageIO.read(new ByteArrayInputStream(jpeg)).getWidth()).isEqualTo(1600);
      byte[] bomb = png(4, 4);
      // The size of a PNG stands in bytes 16 to 23 (W3C PNG, 11.2.2): 60,000 × 60,000 would be 14 GB.
      for (int i : new int[] {16, 20}) {
        bomb[i + 2] = (byte) (60_000 >> 8);
        bomb[i + 3] = (byte) 60_000;
      }
      HttpResponse<byte[]> refused = service.send("PUT", at("/record/photos/" + uuid()), bomb);
      assertThat(refused.statusCode()).isEqualTo(422);
      assertThat(service.send("PUT", at("/record/photos/" + uuid()), "no photo".getBytes(StandardCharsets.UTF_8)).statusCode())
          .isEqualTo(422);
    }
  }
}
