package org.seamledger.geometry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class DisjointSetsTest {

  @Test
  void leastNumberStandsForItsSetWhateverTheOrder() {
    DisjointSets sets = new DisjointSets(6);
    sets.join(5, 3);
    sets.join(3, 4);
    sets.join(1, 4);
    assertThat(sets.sets()).containsExactly(List.of(0), List.of(1, 3, 4, 5), List.of(2));
    assertThat(sets.root(5)).isEqualTo(1);
    assertThat(new DisjointSets(0).sets()).isEmpty();
  }
}
