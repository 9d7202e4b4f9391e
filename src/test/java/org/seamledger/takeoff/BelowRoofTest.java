package org.seamledger.takeoff;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Doors, rooms and walls below a roof, in small models whose distances are drawn by hand. */
class BelowRoofTest {

  /** By the names that authors of models give; common practice, no source. */
  @ParameterizedTest
  @CsvSource({"Copper sheet; Plywood, COPPER", "Stehfalz Kupfer 0.6, COPPER", "galvanised steel, GALVANIZED_STEEL", "Alu-Zink, ALUMINIUM_ZINC_STEEL",
      "Aluminium, ALUMINIUM", "zinc, ZINC", "leadership, ", "Concrete; Tiles, "})
  void metalsByName(String names, String metal) {
    assertThat(String.valueOf((Object) MetalNames.named(names))).isEqualTo(String.valueOf((Object) metal));
  }
}
