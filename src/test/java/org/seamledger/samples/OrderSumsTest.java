package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.detail.Seal;
import org.seamledger.order.OrderLine;
import org.seamledger.order.OrderList;
import org.seamledger.order.OrderShare;
import org.seamledger.progress.Progress;
import org.seamledger.quantity.ClosureCut;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** The order of every sample, and of roofs by chance, against plain sums over its junctions and faces: nothing lost, nothing twice. */
public class OrderSumsTest {

  private static final long SEED = Long.getLong("seamledger.seed", System.nanoTime());
  private static final int HOUSES = Integer.getInteger("seamledger.houses", 15);

  public static List<Path> samples() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("ifc-samples"))) {
      return files.filter(f -> f.toString().endsWith(".ifc")).sorted().toList();
    }
  }

  /** What is bought, by plain addition: one figure an id or a beginning of ids. */
  private static Map<String, Double> plainSums(Takeoff takeoff) {
    Map<String, Double> sums = new TreeMap<>();
    for (JunctionQuantities q : takeoff.quantities().byJunction().values()) {
      for (SealLine s : q.seals()) {
        String id = s.form() == Seal.Form.TAPE ? "tape" : s.form() == Seal.Form.IN_SEAM ? "non-curing"
            : s.exposure() == Seal.Exposure.EXPOSED ? "bead-exposed" : "bead-concealed";
        sums.merge(id, s.form() == Seal.Form.TAPE ? s.lengthM() : s.volumeM3() * 1e6, Double::sum);
      }
      for (ClosureCut c : q.closures()) {
        sums.merge("closure*", takeoff.system().clearM(c) < 0.006 ? 0.0 : c.count(), Double::sum);
      }
      for (FastenerRow f : q.fasteners()) {
        sums.merge("fastener:*", (double) f.count(), Double::sum);
      }
      for (MetalLine m : q.metal()) {
        if (m.lengthM() > 0 && q.closures().stream().noneMatch(c -> c.part().equals(m.part()))) {
          // A gutter is bought with the drainage.
          sums.merge(m.part().equals("gutter") ? "gutter" : "trim:" + m.part() + "*", m.lengthM(), Double::sum);
        }
      }
    }
    // Each piece of each node: end plates, kick-outs, end dams, corner pieces.
    takeoff.nodes().forEach(n -> takeoff.quantities().byJunction().get(n.id()).metal()
        .forEach(m -> sums.merge("piece:*", (double) m.pieces(), Double::sum)));
    for (RoofFace face : takeoff.faces()) {
      int panels = takeoff.quantities().layout().face(face.id()).panels().size();
      sums.merge("panel:*", (double) panels, Double::sum);
      sums.merge("underlayment", panels > 0 ? face.areaM2() : 0, Double::sum);
    }
    sums.values().removeIf(v -> v < 1e-6);
    return sums;
  }

  @ParameterizedTest
  @MethodSource("samples")
  void theOrderIsThePlainSum(Path model) {
    check(Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE));
  }

  @Test
  void roofsByChance() {
    for (int i = 0; i < HOUSES; i++) {
      RandomHouses chance = new RandomHouses(new Random(SEED + i));
      House house = chance.house();
      try {
        check(Pipeline.analyse(house, chance.form()));
      } catch (AssertionError e) {
        throw new AssertionError("seed " + (SEED + i) + ": " + house.name(), e);
      }
    }
  }

  private static void check(Takeoff takeoff) {
    OrderList order = OrderList.of(takeoff);
    plainSums(takeoff).forEach((id, sum) -> assertThat(order.lines().stream()
        .filter(l -> id.endsWith("*") ? l.id().startsWith(id.substring(0, id.length() - 1)) : l.id().equals(id))
        .filter(l -> !l.id().equals("fastener:clip-screw") && !l.id().equals("closure-plug")).mapToDouble(OrderLine::net).sum()).as(id)
        .isCloseTo(sum, within(1e-6 * Math.max(1, sum))));
    assertThat(order.lines()).allSatisfy(l -> {
      assertThat(l.shares().stream().mapToDouble(OrderShare::amount).sum()).as(l.id()).isCloseTo(l.net(), within(1e-6 * l.net()));
      assertThat(l.order() * l.pack()).as(l.id()).isGreaterThanOrEqualTo(l.withWaste() - 1e-6);
      assertThat(l.order()).as(l.id()).isPositive();
    });
    assertThat(order.lines().stream().map(OrderLine::id)).doesNotHaveDuplicates();
  }
}
