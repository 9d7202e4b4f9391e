package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.seamledger.finding.Severity;

/** Which junction of one result is which of another; places and lengths are made up so that each case has one right answer. */
class ComparisonTest {

  private static ResultOutline result(String... junctions) throws IOException {
    String json = "{\"contract\":1,\"junctions\":[" + String.join(",", junctions) + "],\"quantities\":{\"tape\":{\"netM\":"
        + junctions.length + "}}}";
    return ResultOutline.read(new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8)));
  }

  private static String line(String id, String kind, String elements, double... xyz) {
    String path = IntStream.range(0, xyz.length / 3).mapToObj(i -> "[" + xyz[3 * i] + "," + xyz[3 * i + 1] + "," + xyz[3 * i + 2] + "]")
        .collect(Collectors.joining(","));
    double length = 0;
    for (int i = 3; i < xyz.length; i += 3) {
      length += Math.sqrt(Math.pow(xyz[i] - xyz[i - 3], 2) + Math.pow(xyz[i + 1] - xyz[i - 2], 2) + Math.pow(xyz[i + 2] - xyz[i - 1], 2));
    }
    String all = Arrays.stream(elements.split(" ")).map(e -> "\"" + e + "\"").collect(Collectors.joining(","));
    return String.format(Locale.ROOT, "{\"id\":\"%s\",\"kind\":\"%s\",\"lengthM\":%.9f,\"path\":[%s],\"faces\":[],\"elements\":[%s]}", id,
        kind, length, path, all);
  }

  @Test
  void theSameIdIsTheSameJunctionWhateverMoved() throws IOException {
    Comparison c = Comparison.of(result(line("a", "eave", "r", 0, 0, 0, 5, 0, 0)), result(line("a", "eave", "r", 0, 0, 0, 6, 0, 0)));
    assertThat(c.pairs()).hasSize(1);
    assertThat(c.pairs().get(0).by()).isEqualTo(Comparison.By.ID);
    assertThat(c.pairs().get(0).changes()).containsExactly("length", "place");
  }

  @Test
  void aChimneyInTheHoleThatWasLeftForItIsAChange() throws IOException {
    String hole = line("a", "curb-upslope", "r", 0, 0, 0, 1, 0, 0);
    String before = hole.replace("\"faces\"", "\"facts\":{\"against\":\"opening\"},\"faces\"");
    String after = hole.replace("\"faces\"", "\"facts\":{\"against\":\"penetration\",\"neighbourClass\":\"IfcChimney\"},\"faces\"");
    assertThat(Comparison.of(result(before), result(after)).pairs().get(0).changes()).containsExactly("neighbour");
    assertThat(Comparison.of(result(after), result(after)).pairs().get(0).changes()).isEmpty();
  }

  @Test
  void theSamePlaceIsTheSameJunctionUnderAnotherIdAndInEitherDirection() throws IOException {
    Comparison c =
        Comparison.of(result(line("a", "eave", "r", 0, 0, 0, 5, 0, 0)), result(line("b", "rake", "other", 5, 0, 0.0004, 0, 0, 0)));
    assertThat(c.pairs().get(0).by()).isEqualTo(Comparison.By.PLACE);
    assertThat(c.pairs().get(0).changes()).containsExactly("kind");
  }

  @Test
  void whatMovedFarIsFoundByItsElementsTheNearestFirst() throws IOException {
    Comparison c = Comparison.of(
        result(line("a", "eave", "r", 0, 0, 0, 5, 0, 0), line("b", "eave", "r", 0, 8, 0, 5, 8, 0)),
        result(line("c", "eave", "r", 0, 9, 0, 5, 9, 0), line("d", "eave", "r", 0, 1, 0, 5, 1, 0),
            line("e", "eave", "r", 0, 0, 0, 0, 5, 0)));
    assertThat(c.pairs()).extracting(p -> p.before().id() + p.after().id()).containsExactly("bc", "ad");
    assertThat(c.added()).as("another direction is another edge").extracting(Comparison.Line::id).containsExactly("e");
    assertThat(c.removed()).isEmpty();
  }

  @Test
  void lengthsByKindAndNumbersOfTheOrderAreSetSideBySide() throws IOException {
    Comparison c = Comparison.of(result(line("a", "eave", "r", 0, 0, 0, 5, 0, 0)),
        result(line("b", "hip", "q", 50, 0, 0, 52, 0, 0), line("d", "hip", "s", 80, 0, 0, 81, 0, 0)));
    assertThat(c.removed()).hasSize(1);
    assertThat(c.lengthByKind().get("eave")).containsExactly(5, 0);
    assertThat(c.lengthByKind().get("hip")).containsExactly(0, 3);
    assertThat(c.quantities()).containsExactly(new Comparison.Amount("tape.netM", 1, 2));
  }

  private static ResultOutline text(String json) throws IOException {
    return ResultOutline.read(new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8)));
  }

  private static String found(String code, String severity, String junction, String message) {
    return "{\"code\":\"" + code + "\",\"severity\":\"" + severity + "\",\"junction\":"
        + (junction.isEmpty() ? null : "\"" + junction + "\"")
        + ",\"message\":\"" + message + "\",\"elements\":[\"e\"]}";
  }

  private static ResultOutline findings(String line, String... findings) throws IOException {
    return text("{\"contract\":1,\"junctions\":[" + line + "],\"findings\":[" + String.join(",", findings) + "]}");
  }

  /** The same finding has another figure in its message, and stands at a line that has another id at the same place. */
  @Test
  void findingsAreTheSameByWhatTheyAreAboutNotByTheirFigures() throws IOException {
    ResultOutline before = findings(line("a", "eave", "r", 0, 0, 0, 5, 0, 0), found("x/long", "warning", "a", "5 m"),
        found("x/gone", "warning", "", "once"));
    ResultOutline after = findings(line("b", "eave", "q", 0, 0, 0, 5, 0, 0), found("x/long", "warning", "b", "6 m"),
        found("x/new", "warning", "", "now"), found("x/new", "warning", "", "again"),
        found("x/let", "violation", "", "known").replace("\"elements\"", "\"accepted\":{\"by\":\"A\"},\"elements\""));
    Comparison c = Comparison.of(before, after);
    assertThat(c.keptFindings()).extracting(k -> k.before().message() + " " + k.after().message()).containsExactly("5 m 6 m");
    assertThat(c.goneFindings()).extracting(Comparison.Found::code).containsExactly("x/gone");
    assertThat(c.newFindings()).extracting(Comparison.Found::message).containsExactly("now", "again", "known");
    assertThat(c.worse(Severity.WARNING)).as("nobody accepted them").extracting(Comparison.Found::message).containsExactly("now", "again");
    assertThat(c.worse(Severity.VIOLATION)).isEmpty();
  }

  /** The chimney got wider, and what is said of it stands at another side of it; the roof's own eaves are each another matter. */
  @Test
  void aFindingAboutAThingMayMoveAroundIt() throws IOException {
    String sides = line("a", "curb-side", "e r", 0, 0, 0, 1, 0, 0) + "," + line("b", "curb-side", "e r", 0, 1, 0, 1, 1, 0);
    Comparison c =
        Comparison.of(findings(sides, found("x/open", "warning", "a", "m")), findings(sides, found("x/open", "warning", "b", "m")));
    assertThat(c.newFindings()).isEmpty();
    assertThat(c.goneFindings()).isEmpty();
    assertThat(c.keptFindings()).hasSize(1);
    String roof = "\"roofFaces\":[{\"id\":\"F1\",\"elements\":[\"e\"]}],";
    String before =
        "{\"contract\":1," + roof + "\"junctions\":[" + sides + "],\"findings\":[" + found("x/open", "warning", "a", "m") + "]}";
    Comparison eaves = Comparison.of(text(before), text(before.replace("\"junction\":\"a\"", "\"junction\":\"b\"")));
    assertThat(eaves.newFindings()).hasSize(1);
    assertThat(eaves.goneFindings()).hasSize(1);
  }

  @Test
  void whatWasAWarningAndIsAViolationIsWorse() throws IOException {
    String line = line("a", "eave", "r", 0, 0, 0, 5, 0, 0);
    Comparison c = Comparison.of(findings(line, found("x/y", "warning", "", "m")), findings(line, found("x/y", "violation", "", "m")));
    assertThat(c.newFindings()).isEmpty();
    assertThat(c.worse(Severity.VIOLATION)).hasSize(1);
    assertThat(c.worse(Severity.WARNING)).as("it was one before").isEmpty();
  }

  @Test
  void aLineThatChangedHasItsNumbers() throws IOException {
    String before = line("a", "eave", "r", 0, 0, 0, 5, 0, 0).replace("\"faces\"",
        "\"seals\":[{\"form\":\"tape\",\"lengthM\":5},{\"form\":\"tape\",\"lengthM\":5}],"
            + "\"fasteners\":[{\"place\":\"cleat\",\"count\":51}],\"faces\"");
    String after = line("a", "eave", "r", 0, 0, 0, 6, 0, 0).replace("\"faces\"",
        "\"seals\":[{\"form\":\"tape\",\"lengthM\":6}],\"metal\":[{\"part\":\"drip\",\"pieces\":2,\"lengthM\":6}],\"faces\"");
    assertThat(Comparison.of(result(before), result(after)).pairs().get(0).figures()).containsExactly(
        new Comparison.Amount("lengthM", 5, 6),
        new Comparison.Amount("tape.lengthM", 10, 6), new Comparison.Amount("fasteners.cleat.count", 51, Double.NaN),
        new Comparison.Amount("metal.drip.lengthM", Double.NaN, 6), new Comparison.Amount("metal.drip.pieces", Double.NaN, 2));
  }

  @Test
  void anOverrideFitsWhileTheLineAndTheRulesChoiceAreTheSame() throws IOException {
    String chosen = "\"decided\":{\"kind\":\"hip\",\"detail\":null,\"reason\":\"seen\",\"byRules\":{\"kind\":\"ridge\",\"detail\":\"d\"}},";
    String line = line("a", "hip", "r", 0, 0, 0, 5, 0, 0).replace("\"faces\"", chosen + "\"faces\"");
    String rules = line("a", "ridge", "r", 0, 0, 0, 5, 0, 0).replace("\"faces\"", "\"detail\":\"d\",\"faces\"");
    assertThat(Comparison.of(result(line), result(line)).unfitOverrides()).isEmpty();
    assertThat(Comparison.of(result(line), result(rules)).unfitOverrides()).as("not applied, but it would fit").isEmpty();
    assertThat(Comparison.of(result(line), result(rules.replace("5.0,0.0,0.0", "6.0,0.0,0.0"))).unfitOverrides())
        .containsExactly(new Comparison.Unfit("a", "hip", "", "seen", List.of("place")));
    assertThat(Comparison.of(result(line), result(rules.replace("\"d\"", "\"e\""))).unfitOverrides().get(0).changes())
        .containsExactly("detail");
    assertThat(Comparison.of(result(line), result(line("z", "eave", "q", 90, 0, 0, 95, 0, 0))).unfitOverrides().get(0).changes())
        .containsExactly("gone");
  }

  @Test
  void linesOfTheOrderGoByTheirIdsAndNodesAndPanelsByTheirs() throws IOException {
    ResultOutline before = text("{\"contract\":1,\"order\":[{\"id\":\"tape\",\"net\":5,\"order\":1},{\"id\":\"clip\",\"net\":9}],"
        + "\"nodes\":[{\"id\":\"N1\",\"kind\":\"end\"},{\"id\":\"N2\",\"kind\":\"end\"}],"
        + "\"quantities\":{\"panels\":[{\"count\":2,\"lengthM\":3,\"areaM2\":1},{\"count\":1,\"lengthM\":4,\"areaM2\":2}],"
        + "\"curbs\":[{\"widthM\":0.8,\"depthM\":0.6,\"count\":1}]}}");
    ResultOutline after = text("{\"contract\":1,\"order\":[{\"id\":\"tape\",\"net\":7,\"order\":1}],"
        + "\"nodes\":[{\"id\":\"N1\",\"kind\":\"peak\"},{\"id\":\"N3\"}],\"quantities\":{\"panels\":[]}}");
    Comparison c = Comparison.of(before, after);
    assertThat(c.quantities()).contains(new Comparison.Amount("order.tape.net", 5, 7), new Comparison.Amount("order.tape.order", 1, 1),
        new Comparison.Amount("order.clip.net", 9, Double.NaN), new Comparison.Amount("panels.lengthM", 10, Double.NaN),
        new Comparison.Amount("curbs.800 × 600 mm.count", 1, Double.NaN));
    assertThat(c.entries()).containsExactly(new Comparison.Entry("nodes", "N1", "changed", List.of("kind")),
        new Comparison.Entry("nodes", "N3", "added", List.of()), new Comparison.Entry("nodes", "N2", "gone", List.of()));
  }

  @Test
  void otherRulesAreSaid() throws IOException {
    assertThat(Comparison.of(text("{\"contract\":1,\"program\":{\"version\":\"1\",\"shapes\":\"a\"},\"system\":{\"x\":1}}"),
        text("{\"contract\":1,\"program\":{\"version\":\"1\",\"shapes\":\"b\"},\"system\":{\"x\":2}}")).settings())
        .containsExactly("rules", "roof system");
  }

  @Test
  void aResultWithoutWhatMakesAJunctionIsNone() {
    assertThatThrownBy(() -> result("{\"id\":\"a\",\"kind\":\"eave\"}")).isInstanceOf(IOException.class).hasMessageContaining("path");
    assertThatThrownBy(() -> result("{\"id\":")).isInstanceOf(IOException.class);
  }
}
