package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Laws that hold for every roof: houses by chance, the seed in every message. {@code -Dseamledger.seed=N} repeats a run,
 * {@code -Dseamledger.houses=N} sets how many.
 */
@Tag("slow")
class LawsTest {

  private static final long SEED = Long.getLong("seamledger.seed", System.nanoTime());
  private static final int HOUSES = Integer.getInteger("seamledger.houses", 40);

  /** Every house has the lines that its measures say, in whatever form it is written. */
  @Test
  void formsChangeNoKindAndNoLength() {
    List<String> failures = new ArrayList<>();
    for (int i = 0; i < HOUSES; i++) {
      RandomHouses chance = new RandomHouses(new Random(SEED + i));
      House house = chance.house();
      Form form = chance.form();
      List<String> differences;
      try {
        differences = Comparison.differences(house.expectedByKind(), Comparison.byKind(Pipeline.lines(house, form)), 1e-3);
      } catch (RuntimeException e) {
        differences = List.of(e.toString());
      }
      if (!differences.isEmpty()) {
        failures.add("seed " + (SEED + i) + ": " + house.name() + " " + form + "\n    " + String.join("\n    ", differences));
      }
    }
    assertThat(failures).as(() -> failures.size() + " of " + HOUSES + " from seed " + SEED + "\n" + String.join("\n", failures)).isEmpty();
  }
}
