package org.seamledger.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.measure.Fraction;
import org.seamledger.measure.Unit;
import org.seamledger.quantity.physics.Metal;

class RoofSystemTest {

  private static RoofSystem parse(String json) {
    return RoofSystem.parse(json, "system.json");
  }

  @Test
  void anEmptyFileIsTheDefaultSystem() {
    assertThat(parse("{}")).isEqualTo(RoofSystem.DEFAULT);
  }

  @Test
  void theSampleSpellsOutTheDefaults() {
    RoofSystem sample = RoofSystem.read(Path.of("ifc-samples", "roof-system.json"));
    Map<String, Object> expected = RoofSystem.DEFAULT.toMap();
    expected.put("name", sample.name());
    assertThat(sample.toMap()).isEqualTo(expected);
  }

  /** Files from before have the gutters at two places; one that the program wrote has both, and the first decides. */
  @ParameterizedTest
  @CsvSource(delimiter = ';',
      value = {"{'purchase': {'gutters': {'hung': true}}}; true", "{'purchase': {'gutters': {'hung': false}}}; false",
          "{'eaves': {'note': 'x'}, 'purchase': {'gutters': {'hung': true}}}; true",
          "{'eaves': {'gutters': false}, 'purchase': {'gutters': {'hung': true}}}; false",
          "{'eaves': {'gutters': true}, 'purchase': {'gutters': {'hung': false}}}; true", "{'purchase': {'gutters': {}}}; false"},
      quoteCharacter = '|')
  void oneValueDecidesWhereGuttersHang(String json, boolean hang) {
    RoofSystem s = parse(json.replace('\'', '"'));
    assertThat(s.eaves().gutters()).isEqualTo(hang);
    assertThat(parse(SystemChange.apply(s, "changed", Map.of("purchase.gutters.hung", "true"), "x")).eaves().gutters()).isTrue();
  }

  @Test
  void aMistakeInTheOldNameIsTold() {
    assertThatThrownBy(() -> parse("{\"purchase\": {\"gutters\": {\"hung\": 3}}}")).isInstanceOf(SystemFormatException.class)
        .hasMessageContaining("purchase.gutters.hung").hasMessageContaining("true or false");
  }

  @Test
  void promisedDefaults() {
    // What callers may rely on: coverage 16 in, seam 1 1/2 in, tape 3/16 × 7/8 in, lip 1 in, fasteners at most 4 in apart and 1 in from an
    // end, bead 1/4 in round, cartridge 10.1 fl oz, roll 50 ft, 10 % waste, seams sealed below 3:12.
    RoofSystem s = RoofSystem.DEFAULT;
    assertThat(s.panel().coverage().exactIn(Unit.INCH)).isEqualTo(Fraction.of(16));
    assertThat(s.panel().seamHeight().exactIn(Unit.INCH)).isEqualTo(Fraction.of(3, 2));
    assertThat(s.tape().thickness().exactIn(Unit.INCH)).isEqualTo(Fraction.of(3, 16));
    assertThat(s.tape().width().exactIn(Unit.INCH)).isEqualTo(Fraction.of(7, 8));
    assertThat(s.tape().roll().exactIn(Unit.FOOT)).isEqualTo(Fraction.of(50));
    assertThat(s.closure().fasteningFlange().exactIn(Unit.INCH)).isEqualTo(Fraction.of(1));
    assertThat(s.fasteners().spacing().exactIn(Unit.INCH)).isEqualTo(Fraction.of(4));
    assertThat(s.fasteners().endDistance().exactIn(Unit.INCH)).isEqualTo(Fraction.of(1));
    assertThat(s.bead().size().exactIn(Unit.INCH)).isEqualTo(Fraction.of(1, 4));
    assertThat(s.bead().cartridge().exactIn(Unit.US_FLUID_OUNCE)).isEqualTo(Fraction.of(101, 10));
    assertThat(List.of(s.waste().tape(), s.waste().bead(), s.waste().inSeam(), s.waste().fasteners()))
        .allSatisfy(w -> assertThat(w.si()).isEqualTo(Fraction.of(1, 10)));
    assertThat(s.limits().sealSeamsBelow().si()).isEqualTo(Fraction.of(1, 4));
    assertThat(s.sealsSeamsAt(Math.toDegrees(Math.atan(0.25)))).isFalse();
    assertThat(s.sealsSeamsAt(14)).isTrue();
  }

  @Test
  void closureUpstandAndFlashingFollowWhatIsStated() {
    RoofSystem s = parse("{\"panel\": {\"seamHeight\": \"2 in\", \"metal\": \"copper\"}, \"bead\": {\"size\": \"3/8 in\"}}");
    assertThat(s.closure().height().text()).isEqualTo("2 in");
    assertThat(s.bead().upstand().text()).isEqualTo("2 3/8 in");
    assertThat(s.flashing().metal()).isEqualTo(Metal.COPPER);
    RoofSystem metric = parse("{\"panel\": {\"seamHeight\": \"38 mm\"}, \"bead\": {\"size\": \"6 mm\"}}");
    assertThat(metric.bead().upstand().text()).isEqualTo("44 mm");
    assertThat(RoofSystem.DEFAULT.bead().upstand().value()).isEqualTo(1.75 * 0.0254, within(1e-12));
  }

  @Test
  void theMetricSampleStatesItsOwnUpstand() {
    RoofSystem s = RoofSystem.read(Path.of("ifc-samples", "roof-system-metric.json"));
    assertThat(s.bead().upstand().value()).isEqualTo(0.038);
    assertThat(s.closure().height().text()).isEqualTo("38 mm");
    assertThat(s.flashing().metal()).isEqualTo(Metal.ZINC);
  }

  @Test
  void whatIsWrittenIsReadAgain() throws JsonProcessingException {
    for (String sample : List.of("roof-system.json", "roof-system-metric.json")) {
      RoofSystem s = RoofSystem.read(Path.of("ifc-samples", sample));
      assertThat(parse(new ObjectMapper().writeValueAsString(s.toMap()))).isEqualTo(s);
    }
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
      "{\"panel\": {\"coverage\": \"16 kg\"}} | panel.coverage | a length such as \"16 in\" | the unit \"kg\" at position 4",
      "{\"panel\": {\"coverage\": 16}} | panel.coverage | a length as text | the number 16 without a unit",
      "{\"panel\": {\"coverage\": \"16 ft\"}} | panel.coverage | a length from 3 in to 48 in | \"16 ft\"",
      "{\"panel\": {\"coverrage\": \"16 in\"}} | panel.coverrage | the nearest is \"coverage\" | \"coverrage\"",
      "{\"panels\": {}} | panels | the nearest is \"panel\" | \"panels\"",
      "{\"panel\": []} | panel | an object | a list",
      "{\"panel\": {\"metal\": \"aluminum\"}} | panel.metal | the nearest is \"aluminium\" | \"aluminum\"",
      "{\"panel\": {\"metal\": null}} | panel.metal | one of zinc, galvanized-steel | null",
      "{\"ridge\": {\"vented\": \"yes\"}} | ridge.vented | true or false | \"yes\"",
      "{\"fasteners\": {\"box\": 0}} | fasteners.box | a whole number from 1 | 0",
      "{\"limits\": {\"sealSeamsBelow\": \"3\"}} | limits.sealSeamsBelow | a slope such as \"3:12\" | no unit",
      "{\"waste\": {\"tape\": \"10\"}} | waste.tape | a percentage | no unit",
      "{\"flashing\": {\"length\": \"1 ft\", \"lap\": \"12 in\"}} | flashing.lap | less than flashing.length | \"12 in\"",
      "{\"sealant\": {\"lowest\": \"40 °C\"}} | sealant.lowest | less than sealant.highest | \"40 °C\"",
      "{\"name\": 7} | name | a text | 7",
      "[] | `` | an object | a list"})
  void everyFieldSaysWhatWasExpected(String json, String path, String expected, String found) {
    assertThatThrownBy(() -> parse(json)).isInstanceOfSatisfying(SystemFormatException.class, e -> {
      assertThat(e.getMessage().lines()).hasSize(1);
      assertThat(e).hasMessageStartingWith("system.json: " + (path == null || path.isEmpty() ? "" : path + ": ") + "expected ");
      assertThat(e.getMessage()).containsSubsequence(expected, ", found ", found);
    });
  }

  @Test
  void fieldsWithABetterNameHaveBoth() {
    RoofSystem before = parse("{\"closure\": {\"lip\": \"22 mm\"}, \"pipes\": {\"boltCircleMargin\": \"40 mm\"}}");
    RoofSystem now = parse("{\"closure\": {\"fasteningFlange\": \"22 mm\"}, \"pipes\": {\"fastenerCircleMargin\": \"40 mm\"}}");
    assertThat(now).isEqualTo(before);
    assertThat(now.closure().fasteningFlange().text()).isEqualTo("22 mm");
    assertThat(now.toMap().toString()).contains("lip=22 mm", "boltCircleMargin=40 mm").doesNotContain("fasteningFlange", "fastenerCircle");
    assertThatThrownBy(() -> parse("{\"closure\": {\"fasteningFlange\": \"22 mm\", \"lip\": \"22 mm\"}}"))
        .hasMessage("system.json: closure.lip: expected one of lip, fasteningFlange, found both");
  }

  @Test
  void allProblemsAreReportedAtOnce() {
    assertThatThrownBy(() -> parse("{\"panel\": {\"coverage\": 16, \"colour\": 1}, \"tape\": {\"roll\": \"long\"}}"))
        .isInstanceOfSatisfying(SystemFormatException.class, e -> assertThat(e.getMessage().lines().map(line -> line.split(": ")[1]))
            .containsExactlyInAnyOrder("panel.coverage", "panel.colour", "tape.roll"));
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', quoteCharacter = '`', value = {"{\"panel\": | line 1", "{\"name\": \"a\", \"name\": \"b\"} | uplicate",
      "{} {} | line 1", "`` | an object", "nonsense | nonsense"})
  void brokenJsonIsNamed(String json, String part) {
    assertThatThrownBy(() -> parse(json == null ? "" : json)).isInstanceOf(SystemFormatException.class).hasMessageContaining(part)
        .hasMessageNotContaining("com.fasterxml");
  }

  @Test
  void filesThatCantBeRead(@TempDir Path folder) {
    assertThatThrownBy(() -> RoofSystem.read(folder.resolve("none.json"))).isInstanceOf(SystemFormatException.class)
        .hasMessage("none.json: expected a readable JSON file in UTF-8, found no such file");
    assertThatThrownBy(() -> parse("{\"note\": \"" + "x".repeat(1 << 20) + "\"}")).isInstanceOf(SystemFormatException.class)
        .hasMessageContaining("at most 1048576 bytes");
    assertThatThrownBy(() -> parse("[".repeat(100_000))).isInstanceOf(SystemFormatException.class);
  }
}
