package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.seamledger.takeoff.Takeoff;

/** Corners that ordinary roofs don't have get their own kind. */
class RareCornersTest {

  @Test
  void eachHasItsKind() {
    for (Map.Entry<String, Supplier<House>> e : RareCorners.all().entrySet()) {
      Takeoff takeoff = Pipeline.analyse(e.getValue().get(), Form.PLAIN);
      Set<String> kinds = takeoff.nodes().stream().map(n -> n.kind().id()).collect(Collectors.toSet());
      assertThat(kinds).as(e.getValue().get().name()).contains(e.getKey()).doesNotContain("other-node");
    }
  }
}
