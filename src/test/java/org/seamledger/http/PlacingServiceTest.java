package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.Parameter;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.ledger.StorageEngine;
import org.seamledger.run.TakeoffAnalyzer;

/**
 * Placing models of an analysis through the service, on models of the infirmary: what is placed stays so whatever happens to the analysis
 * later.
 */
@ParameterizedClass
@EnumSource
@Tag("slow")
class PlacingServiceTest {

  private static final Path INFIRMARY = Path.of("ifc-samples", "infirmary");
  /** The movement that the sample generator made, turned round. */
  private static final String BACK = "40,25,-3.1,-90";

  @Parameter
  private StorageEngine engine;

  @TempDir
  private Path data;
  private Optional<PostgresAddress> database;
  private TestService service;

  @BeforeEach
  void start() {
    database = engine.newDatabase();
    open();
  }

  private void open() {
    service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), data).database(database));
  }

  @AfterEach
  void stop() {
    service.close();
  }

  private static String model(String name) throws IOException {
    return Files.readString(INFIRMARY.resolve(name), StandardCharsets.US_ASCII);
  }

  private JsonNode misplaced(String... more) throws IOException {
    return service.analyse(model("roof.ifc"), concat(new String[] {"model", "pipes.ifc", model("services-misplaced.ifc")}, more));
  }

  private static String[] concat(String[] a, String[] b) {
    String[] all = java.util.Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, all, a.length, b.length);
    return all;
  }

  private Map<String, Double> lengths(String id) {
    Map<String, Double> lengths = new TreeMap<>();
    service.ledger(id).path("junctions").forEach(j -> lengths.put(j.path("id").textValue(), j.path("lengthM").doubleValue()));
    return lengths;
  }

  private static JsonNode remedy(JsonNode ledger) {
    for (JsonNode f : ledger.path("findings")) {
      if (f.path("code").textValue().equals("models/misplaced")) {
        return f.path("placement");
      }
    }
    throw new AssertionError("nothing is misplaced");
  }

  private JsonNode place(String id, Object placements) {
    HttpResponse<byte[]> answer = service.send("POST", "/api/analyses/" + id + "/place", Map.of("placements", placements));
    assertThat(answer.statusCode()).as(new String(answer.body(), StandardCharsets.UTF_8)).isEqualTo(202);
    return service.await(TestService.json(answer).path("id").textValue());
  }

  @Test
  void whatAFindingOffersGivesTheResultOfTheRightModelAndStays() throws IOException {
    String right = service.analyse(model("roof.ifc"), "model", "pipes.ifc", model("services.ifc")).path("id").textValue();
    JsonNode first = misplaced();
    JsonNode offered = remedy(service.ledger(first.path("id").textValue()));
    assertThat(offered.path("model").intValue()).isEqualTo(1);
    assertThat(offered.path("movement").textValue()).isEqualTo(BACK);
    ArrayNode list = TestService.MAPPER.createArrayNode().add(offered);
    JsonNode placed = place(first.path("id").textValue(), list);
    String id = placed.path("id").textValue();
    assertThat(placed.path("project")).isEqualTo(first.path("project"));
    assertThat(placed.path("revision").intValue()).isEqualTo(2);
    assertThat(placed.at("/files/1/placement").textValue()).isEqualTo(BACK);
    assertThat(placed.at("/files/0").has("placement")).isFalse();
    assertThat(lengths(id)).isEqualTo(lengths(right));
    assertThat(service.ledger(id).at("/models/1/placement").textValue()).isEqualTo(BACK);
    assertThat(new String(service.get("/api/analyses/" + id + "/report.txt").body(), StandardCharsets.UTF_8))
        .contains("placed by hand: " + BACK);
    String ridge = service.ledger(id).at("/junctions/0/id").textValue();
    assertThat(
        service.review(id, ridge, 0, Map.of("detail", "ridge-vented", "kind", "ridge", "reason", "the attic is vented")).statusCode())
        .isEqualTo(200);
    followed(id);
    assertThat(lengths(id)).isEqualTo(lengths(right));
    service.close();
    open();
    assertThat(service.ledger(id).at("/models/1/placement").textValue()).isEqualTo(BACK);
    assertThat(service.get("/api/analyses/" + id + "/plan.svg").statusCode()).as("run again from what is stored").isEqualTo(200);
    JsonNode again = service.await(
        TestService.json(service.send("POST", "/api/analyses/" + id + "/recompute", Map.of("system", Map.of()))).path("id").textValue());
    assertThat(again.at("/files/1/placement").textValue()).as("under another roof system").isEqualTo(BACK);
  }

  private void followed(String id) {
    for (int i = 0; i < 600 && !TestService.json(service.get("/api/analyses/" + id)).at("/decisions/followed").booleanValue(); i++) {
      TestService.pause(100);
    }
    assertThat(TestService.json(service.get("/api/analyses/" + id)).at("/decisions/followed").booleanValue()).isTrue();
  }

  @Test
  void anUploadMayPlaceItsModelsAndNullTakesItBack() throws IOException {
    JsonNode first = misplaced("placements", "", "[{\"model\": 1, \"movement\": \"40.0, 25,-3.10,270\"}]");
    assertThat(first.at("/files/1/placement").textValue()).as("equal movements are one text").isEqualTo(BACK);
    JsonNode back = place(first.path("id").textValue(), TestService.MAPPER.readTree("[{\"model\": 1, \"movement\": null}]"));
    assertThat(back.at("/files/1").has("placement")).isFalse();
    assertThat(remedy(service.ledger(back.path("id").textValue())).path("movement").textValue()).isEqualTo(BACK);
  }

  @ParameterizedTest
  @ValueSource(strings = {"{}", "[1]", "[{\"model\": 2, \"movement\": \"1,2,3\"}]", "[{\"model\": -1, \"movement\": \"1,2,3\"}]",
      "[{\"model\": 1, \"movement\": \"1,2\"}]", "[{\"model\": 1, \"movement\": \"1,2,Infinity\"}]", "[{\"model\": 1, \"movement\": 5}]",
      "[{\"model\": 1}]",
      "[{\"model\": 1, \"movement\": \"1,2,3,0,0\"}]", "[{\"model\": 1, \"movement\": \"1,2,3\"}, {\"model\": 1, \"movement\": \"1,2,3\"}]",
      "[nonsense"})
  void otherPlacementsAreRefusedWithoutATrace(String list) throws IOException {
    HttpResponse<byte[]> answer =
        service.upload("model", "a.ifc", model("roof.ifc"), "model", "b.ifc", model("services.ifc"), "placements", "", list);
    assertThat(answer.statusCode()).isEqualTo(400);
    assertThat(TestService.json(answer).path("code").textValue()).isEqualTo("body/placements");
    assertThat(TestService.json(service.get("/api/analyses")).path("analyses")).isEmpty();
  }
}
