package org.seamledger.ifc;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.finding.Finding;

/** Findings about models that type what carries their roof as something else. */
class RoofTypingTest {

  private static final String IN_PARTS = "roof/in-parts";
  private static final String CLOSED_BY_FLOOR = "roof/closed-by-floor";

  private static String box(Drawing d, String keyword, double[] at, double[] size, String rest) {
    return d.product(keyword, d.placement("$", d.at(at[0], at[1], at[2])),
        d.shape("SweptSolid", d.extruded(d.rectangle(size[0], size[1]), size[2])), rest);
  }

  /** A room of 6 m × 4 m, its walls 3 m high, with a slab on them; a roof stands 20 m off. */
  private static Drawing room(int walls, String type, double above) {
    Drawing d = Drawing.ifc4();
    d.roof(d.extruded(d.rectangle(4, 3), 0.2));
    double[][] at = {{20, -2, 0}, {20, 2, 0}, {17, 0, 0}, {23, 0, 0}};
    double[][] size = {{6, 0.2, 3}, {6, 0.2, 3}, {0.2, 4, 3}, {0.2, 4, 3}};
    for (int i = 0; i < walls; i++) {
      box(d, "IFCWALL", at[i], size[i], ",$,$");
    }
    box(d, "IFCSLAB", new double[] {20, 0, 3}, new double[] {6, 4, 0.2}, ",$," + type);
    if (above > 0) {
      box(d, "IFCWALL", new double[] {20, 0, 3.2}, new double[] {6, 0.2, above}, ",$,$");
    }
    return d;
  }

  @ParameterizedTest
  @CsvSource({"4, .FLOOR., 0, true", "3, .FLOOR., 0, true", "2, .FLOOR., 0, false", "4, .ROOF., 0, false", "4, .FLOOR., 1.7, true",
      "4, .FLOOR., 1.9, false"})
  void floorsThatCloseABuildingAreNamed(int walls, String type, double above, boolean named) {
    assertThat(room(walls, type, above).read().findings().stream().map(Finding::code).anyMatch(CLOSED_BY_FLOOR::equals)).isEqualTo(named);
  }

  /** A roof whose part carries the shape; members are no surface, slabs are. */
  @ParameterizedTest
  @CsvSource({"IFCBEAM, true", "IFCSLAB, false"})
  void roofsWithTheirShapeInPartsThatCarryNoneAreNamed(String keyword, boolean named) {
    Drawing d = Drawing.ifc4();
    String roof = d.product("IFCROOF", d.placement("$", d.at(0, 0, 0)), "$", ",$,.NOTDEFINED.");
    String part = box(d, keyword, new double[] {0, 0, 3}, new double[] {6, 4, 0.2}, ",$,$");
    d.add("IFCRELAGGREGATES('%s',$,$,$,%s,(%s))", d.id(), roof, part);
    assertThat(d.read().findings().stream().map(Finding::code).anyMatch(IN_PARTS::equals)).isEqualTo(named);
  }

  @Test
  void aRoofWithoutAnyShapeIsNamedAsSuch() {
    Drawing d = Drawing.ifc4();
    d.product("IFCROOF", d.placement("$", d.at(0, 0, 0)), "$", ",$,.NOTDEFINED.");
    assertThat(d.read().findings()).extracting(Finding::code).contains("roof/without-shape").doesNotContain(IN_PARTS);
  }
}
