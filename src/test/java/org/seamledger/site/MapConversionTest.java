package org.seamledger.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/** The standard's map conversion. Numbers are worked by hand from the formula of ISO 16739-1, IfcMapConversion. */
class MapConversionTest {

  private static void assertAt(Vec3 p, double x, double y, double z, double slack) {
    assertThat(p.x()).isCloseTo(x, within(slack));
    assertThat(p.y()).isCloseTo(y, within(slack));
    assertThat(p.z()).isCloseTo(z, within(slack));
  }

  /**
   * A 3-4-5 turn: cos 0.8, sin 0.6, scale 0.9996. For (10, 20, 5):
   * E = 500000 + 0.9996 · (0.8 · 10 − 0.6 · 20) = 500000 + 0.9996 · (−4) = 499996.0016;
   * N = 4500000 + 0.9996 · (0.6 · 10 + 0.8 · 20) = 4500000 + 0.9996 · 22 = 4500021.9912;
   * H = 100 + 0.9996 · 5 = 104.998.
   */
  @Test
  void scalesTurnsAndMoves() {
    MapConversion m = MapConversion.of(500_000, 4_500_000, 100, 8, 6, 0.9996, "EPSG:32632");
    assertAt(m.toMap(new Vec3(10, 20, 5)), 499_996.0016, 4_500_021.9912, 104.998, 1e-9);
  }

  /**
   * With a factor an axis, which is applied before the turn: E = 0.8 · 2 · 10 − 0.6 · 3 · 20 = −20; N = 0.6 · 20 + 0.8 · 60 = 60; H = 4 ·
   * 5.
   */
  @Test
  void factorsOfTheAxesComeBeforeTheTurn() {
    assertAt(new MapConversion(0, 0, 0, 0.8, 0.6, 2, 3, 4, "").toMap(new Vec3(10, 20, 5)), -20, 60, 20, 1e-12);
  }

  /**
   * Two models of one corner: in the first at (3, 4, 1), turned by 90°, so it lies at E = 1000 − 4 = 996, N = 2000 + 3 = 2003, H = 11; in
   * the second, which is not turned, at (996 − 900, 2003 − 1950, 11 − 8).
   */
  @Test
  void bringsOneModelsWorldToAnothers() {
    MapConversion first = MapConversion.of(1000, 2000, 10, 0, 1, 1, "");
    MapConversion second = MapConversion.of(900, 1950, 8, 1, 0, 1, "");
    assertAt(second.into(first).apply(new Vec3(96, 53, 3)), 3, 4, 1, 1e-12);
    assertAt(first.into(second).apply(new Vec3(3, 4, 1)), 96, 53, 3, 1e-12);
  }

  @Test
  void equalConversionsMoveNothingAtAll() {
    MapConversion m = MapConversion.of(729_013.3488297004, 9_063_992.684697363, 1.3, 0.4999999999999999, 0.8660254037844387, 0.9996, "x");
    assertThat(m.into(m)).isEqualTo(Transform.IDENTITY);
  }

  /** Eastings as large as they come in metres: the difference of 12.345 mm between two models comes out to a micrometre. */
  @Test
  void farFromTheMapsOriginNothingIsLost() {
    MapConversion first = MapConversion.of(32_500_000, 9_999_999, 0, 0.8, 0.6, 1, "");
    MapConversion second = MapConversion.of(32_500_000.012345, 9_999_999, 0, 0.8, 0.6, 1, "");
    Vec3 moved = second.into(first).apply(new Vec3(1, 2, 3));
    // The shift is easting only: turned back it is (0.8, −0.6) of it.
    assertAt(moved, 1 + 0.8 * 0.012345, 2 - 0.6 * 0.012345, 3, 1e-8);
  }

  @ParameterizedTest
  @CsvSource({"EPSG:25832, epsg: 25832, true", "EPSG:25832, 25832, true", "EPSG:25832, EPSG:25833, false", "EPSG:25832, '', true"})
  void namesOfMapsAreComparedLeniently(String a, String b, boolean same) {
    assertThat(MapConversion.of(0, 0, 0, 1, 0, 1, a).sameMap(MapConversion.of(0, 0, 0, 1, 0, 1, b))).isEqualTo(same);
  }

  @Test
  void refusesWhatIsNoMap() {
    assertThatThrownBy(() -> MapConversion.of(0, 0, 0, 0, 0, 1, "")).hasMessageContaining("direction");
    assertThatThrownBy(() -> MapConversion.of(0, 0, 0, 1, 0, 0, "")).hasMessageContaining("scale");
    assertThatThrownBy(() -> MapConversion.of(Double.NaN, 0, 0, 1, 0, 1, "")).hasMessageContaining("finite");
  }
}
