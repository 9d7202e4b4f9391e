package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.run.TakeoffAnalyzer;

/** The order over HTTP: prices that a project keeps, alternates side by side, subtotals, and what the values of a system are. */
@Tag("slow")
class OrderServiceTest {

  @TempDir
  private Path folder;
  private TestService service;
  private String id;
  private String project;

  @BeforeEach
  void start() throws IOException {
    Path model = Files.copy(Path.of("ifc-samples", "gatehouse.ifc"), folder.resolve("gatehouse.ifc"));
    service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).models(List.of(model)));
    id = TestService.json(service.get("/api/start")).path("analysis").textValue();
    project = service.await(id).path("project").textValue();
  }

  @AfterEach
  void stop() {
    service.close();
  }

  private static String text(HttpResponse<byte[]> answer) {
    return new String(answer.body(), StandardCharsets.UTF_8);
  }

  private HttpResponse<byte[]> compare(Object... alternates) {
    return service.send("POST", "/api/analyses/" + id + "/alternates", Map.of("alternates", List.of(alternates)));
  }

  private HttpResponse<byte[]> prices(String csv) {
    return service.send("PUT", "/api/projects/" + project + "/prices?name=shop.csv", csv.getBytes(StandardCharsets.UTF_8), "Content-Type",
        "text/csv");
  }

  private String order() {
    return text(service.get("/api/analyses/" + id + "/order.csv"));
  }

  private List<String> scratch() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("data").resolve("scratch"))) {
      return files.map(f -> f.getFileName().toString()).toList();
    }
  }

  private static JsonNode line(JsonNode comparison, String line) {
    return StreamSupport.stream(comparison.path("order").spliterator(), false).filter(l -> l.path("id").textValue().equals(line))
        .findFirst()
        .orElseThrow();
  }

  /** Rolls of tape by hand: the net length and 10 %, in rolls of 50 ft or 80 ft. */
  @Test
  void alternatesStandSideBySide() throws IOException {
    JsonNode c = TestService.json(compare(Map.of("name", "long rolls", "changes", Map.of("tape.roll", "80 ft")),
        Map.of("name", "vented", "changes", Map.of("ridge.vented", "true"))));
    assertThat(c.path("alternates").findValuesAsText("name")).containsExactly("Default standing seam system", "long rolls", "vented");
    JsonNode tape = line(c, "tape").path("amounts");
    double withWaste = tape.get(0).path("net").doubleValue() * 1.1;
    int rolls = (int) Math.ceil(withWaste / (50 * 0.3048));
    int longRolls = (int) Math.ceil(withWaste / (80 * 0.3048));
    assertThat(tape.get(0).path("order").intValue()).isEqualTo(rolls).isGreaterThan(longRolls);
    assertThat(tape.get(1).path("order").intValue()).isEqualTo(longRolls);
    assertThat(tape.get(1).path("orderDifference").intValue()).isEqualTo(longRolls - rolls);
    assertThat(line(c, "closure-vented").path("amounts").get(2).path("order").intValue()).as("a line that comes").isPositive();
    assertThat(line(c, "closure-vented").path("amounts").get(0).path("order").intValue()).isZero();
    assertThat(scratch()).as("nothing is left behind").isEmpty();
    assertThat(TestService.json(service.get("/api/analyses")).path("total").intValue()).isEqualTo(1);
  }

  @Test
  void findingsComeAndGo() {
    JsonNode c = TestService.json(compare(Map.of("name", "steep only", "changes", Map.of("limits.lowestSlope", "8:12"))));
    assertThat(
        StreamSupport.stream(c.path("findings").spliterator(), false).filter(f -> f.path("changes").get(1).textValue().equals("comes"))
            .map(f -> f.path("code").textValue()))
        .contains("slope/under-system-minimum");
  }

  @Test
  void aMistakeIsRefusedBeforeAnythingIsComputed() throws IOException {
    HttpResponse<byte[]> answer = compare(Map.of("name", "good", "changes", Map.of("tape.roll", "80 ft")),
        Map.of("name", "bare", "changes", Map.of("panel.coverage", "18")), Map.of("name", "odd", "changes", Map.of("panel.colour", "red")),
        Map.of("name", "good", "system", Map.of("panel", Map.of("coverage", "99 in"))));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(TestService.json(answer).path("detail").textValue()).contains("bare: panel.coverage: expected a length", "found no unit",
        "odd: expected a field of the system such as panel.coverage, found \"panel.colour\"", "Two alternates are called \"good\"",
        "good: panel.coverage: expected a length from 3 in to 48 in, found \"99 in\"");
    assertThat(scratch()).isEmpty();
    assertThat(compare().statusCode()).isEqualTo(400);
    assertThat(compare(Map.of("name", " ")).statusCode()).isEqualTo(400);
    assertThat(compare(Map.of("name", "nothing to change")).statusCode()).isEqualTo(400);
    JsonNode failed = service.analyse(Files.readString(folder.resolve("gatehouse.ifc")), "system", "wide pans.json",
        "{\"panel\": {\"coverage\": \"99 in\"}}");
    assertThat(failed.path("problem").path("detail").textValue()).as("under the name that its user knows")
        .startsWith("wide pans.json: panel.coverage: expected a length from 3 in to 48 in");
  }

  /** 11 rolls at 12.50 and 13 cartridges at 6.20 are 137.50 and 80.60: the other lines have no price and are named. */
  @Test
  void aProjectKeepsItsPricesAndAlternatesCost() {
    assertThat(service.get("/api/projects/" + project + "/prices").statusCode()).isEqualTo(404);
    assertThat(prices("id,unit,price,labourHours,currency\ntape,roll,12.50,0.1,EUR\nbead-concealed,cartridge,6.20,,EUR\n").statusCode())
        .isEqualTo(200);
    assertThat(order()).containsPattern("(?m)^tape,.*,137\\.50,").containsPattern("(?m)^bead-concealed,.*,80\\.60,");
    JsonNode c = TestService.json(compare(Map.of("name", "long rolls", "changes", Map.of("tape.roll", "80 ft"))));
    assertThat(c.path("alternates").get(0).path("total").decimalValue()).isEqualByComparingTo("218.10");
    assertThat(c.path("alternates").get(0).path("unpriced").size()).isGreaterThan(5);
    assertThat(line(c, "tape").path("amounts").get(1).path("costDifference").decimalValue()).isEqualByComparingTo("-50.00");
    assertThat(text(service.get("/api/analyses/" + id + "/subtotals.csv?by=face"))).contains("for each that shares it", "all, each once");
    assertThat(service.send("DELETE", "/api/projects/" + project + "/prices", null).statusCode()).isEqualTo(204);
    assertThat(order()).doesNotContain("137.50");
  }

  @Test
  void aPriceListThatIsWrongChangesNothing() {
    prices("id,unit,price\ntape,roll,12.50\n");
    String before = order();
    HttpResponse<byte[]> answer = prices("id,unit,price\ntape,roll,\"12,50\"\nbead-*,barrel,6\n");
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(TestService.json(answer).path("detail").textValue()).contains("shop.csv: line 2, column 11: expected a price",
        "found \"12,50\"", "shop.csv: line 3, column 8: expected one of the units", "found \"barrel\"");
    assertThat(order()).isEqualTo(before);
  }

  @Test
  void subtotalsAreAskedForByAWord() {
    HttpResponse<byte[]> answer = service.get("/api/analyses/" + id + "/subtotals.csv?by=colour");
    assertThat(answer.statusCode()).isEqualTo(400);
    assertThat(text(answer)).contains("by must be one of kind, family");
    assertThat(text(service.get("/api/analyses/" + id + "/subtotals.csv?by=kind"))).startsWith("by,key,id,").contains("\r\nkind,hip,tape,");
  }

  /** A file of the values that the form shows is the built-in system. */
  @Test
  void theFormHasEveryValueWithItsMeaningAndSource() {
    JsonNode fields = TestService.json(service.get("/api/system")).path("fields");
    assertThat(fields).hasSizeGreaterThan(90).allSatisfy(f -> {
      assertThat(f.path("meaning").textValue()).as(f.path("path").textValue()).isNotBlank();
      assertThat(f.path("source").textValue()).as(f.path("path").textValue()).isNotBlank();
      JsonNode at = service.ledger(id).path("system");
      for (String name : f.path("path").textValue().split("\\.")) {
        at = at.path(name);
      }
      assertThat(at.asText()).as(f.path("path").textValue()).isEqualTo(f.path("usual").textValue());
    });
    assertThat(RoofSystem.DEFAULT.name()).isEqualTo(fields.get(0).path("usual").textValue());
  }
}
