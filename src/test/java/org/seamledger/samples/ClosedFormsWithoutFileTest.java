package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every closed form, from the building's solids on. Sources: the formula beside each expected line of the house. */
@Tag("slow")
class ClosedFormsWithoutFileTest {

  static List<ClosedForms.Case> cases() {
    return ClosedForms.all();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void kindsAndLengths(ClosedForms.Case c) {
    check(c, RoofPlane.Cut.PLUMB);
  }

  @ParameterizedTest
  @MethodSource("cases")
  void kindsAndLengthsOfSquareCutSlabs(ClosedForms.Case c) {
    check(c, RoofPlane.Cut.SQUARE);
  }

  private static void check(ClosedForms.Case c, RoofPlane.Cut cut) {
    House house = c.house().get();
    Map<String, List<Double>> found = Comparison.byKind(Pipeline.lines(HouseBuilding.of(house, cut)));
    assertThat(Comparison.differences(house.expectedByKind(), found, 1e-3)).as(c.name()).isEmpty();
  }
}
