package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The demo houses, from the building's solids on. */
class SamplesWithoutFileTest {

  static Stream<Sample> samples() {
    return Estate.samples().stream();
  }

  @ParameterizedTest
  @MethodSource("samples")
  void kindsAndLengths(Sample s) {
    var found = Comparison.byKind(Pipeline.lines(HouseBuilding.of(s.house(), s.form().cut())));
    assertThat(Comparison.differences(s.house().expectedByKind(), found, 1e-3)).as(s.file()).isEmpty();
  }
}
