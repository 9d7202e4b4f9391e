package org.seamledger.finding;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EditDistanceTest {

  /** The first two are the textbooks' examples of Levenshtein's distance (from memory); the others count letters by hand. */
  @ParameterizedTest
  @CsvSource({"kitten, sitting, 3", "saturday, sunday, 3", "'', eave, 4", "Ridge, ridge, 0", "hip, hips, 1", "valley, rake, 4"})
  void countsLettersToChange(String one, String other, int expected) {
    assertThat(EditDistance.between(one, other)).isEqualTo(expected);
    assertThat(EditDistance.between(other, one)).isEqualTo(expected);
  }
}
