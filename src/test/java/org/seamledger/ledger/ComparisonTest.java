package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

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

  @Test
  void aResultWithoutWhatMakesAJunctionIsNone() {
    assertThatThrownBy(() -> result("{\"id\":\"a\",\"kind\":\"eave\"}")).isInstanceOf(IOException.class).hasMessageContaining("path");
    assertThatThrownBy(() -> result("{\"id\":")).isInstanceOf(IOException.class);
  }
}
