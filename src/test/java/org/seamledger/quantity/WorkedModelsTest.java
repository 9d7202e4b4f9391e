package org.seamledger.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamledger.quantity.formula.Order;

/** The worked examples again, from an IFC model of each roof through every stage. All expected figures were derived by hand. */
class WorkedModelsTest {

  private static final double IN = 0.0254;
  private static final double FT = 0.3048;
  private static final double TUBE_10_1 = 10.1 * 29.5735295625e-6;

  private static void soundness(Counted c) {
    assertThat(c.quantities().findings()).isEmpty();
    double tape = c.quantities().byJunction().values().stream().mapToDouble(Counted::tapeM).sum();
    assertThat(c.quantities().project().tape().netM()).isCloseTo(tape, within(1e-9));
  }

  @Test
  void ridgeOf40Feet() {
    Counted c = Counted.worked("ridge-40ft", RoofSystem.DEFAULT);
    soundness(c);
    JunctionQuantities ridge = c.ofKind("ridge").get(0);
    assertThat(ridge.closurePieces()).isEqualTo(60);
    assertThat(Counted.fasteners(ridge, "closure foot")).isEqualTo(300);
    assertThat(Counted.tapeM(ridge) / FT).isCloseTo(160, within(1e-4));
    assertThat(Counted.concealedBeadM(ridge) / FT).isCloseTo(2 * 88.75, within(1e-4));
    Order rolls = Order.of(Counted.tapeM(ridge), 0.1, 50 * FT);
    assertThat(rolls.withWaste() / FT).isCloseTo(176, within(1e-4));
    assertThat(rolls.units()).isEqualTo(4);
    assertThat(ridge.metal().stream().filter(m -> m.part().equals("ridge cap")).map(MetalLine::pieces)).containsExactly(5);
    assertThat(c.takeoff().faces()).allSatisfy(f -> assertThat(c.quantities().layout().face(f.id()).seams()).hasSize(29));
  }

  @Test
  void regularHips() {
    Counted c = Counted.worked("regular-hip", RoofSystem.DEFAULT);
    soundness(c);
    assertThat(c.ofKind("hip")).hasSize(4).allSatisfy(hip -> {
      assertThat(hip.closurePieces()).isEqualTo(18);
      assertThat(hip.closures()).allSatisfy(cut -> assertThat(cut.lengthM() / IN).isCloseTo(24.0, within(0.02)));
      assertThat(Counted.fasteners(hip, "closure foot")).isEqualTo(126);
      assertThat(Counted.tapeM(hip) / FT).isCloseTo(72, within(1e-3));
      assertThat(Counted.concealedBeadM(hip) / FT).isCloseTo(77.25, within(1e-3));
      assertThat(Counted.concealedBeadM3(hip) / TUBE_10_1).isCloseTo(2.4965, within(1e-4));
    });
    // Four hips are 10.984 cartridges with waste: 11 for the project, not 4 × 3.
    double hips = c.ofKind("hip").stream().mapToDouble(Counted::concealedBeadM3).sum();
    assertThat(c.quantities().project().bead().concealed().netMl()).isCloseTo(hips * 1e6, within(1e-6));
    assertThat(c.quantities().project().bead().cartridges()).isEqualTo(11);
  }

  @Test
  void unequalValleys() {
    Counted c = Counted.worked("unequal-valley", Counted.workedSystem("unequal-valley"));
    soundness(c);
    assertThat(c.ofKind("valley")).hasSize(2).allSatisfy(v -> {
      assertThat(Counted.fasteners(v, "cleat")).isEqualTo(86);
      // Six pans of 28 in meet it on the 4/12 face, twelve of 14 in on the 8/12 face: 5 and 11 seams end there.
      assertThat(v.seamEndPlugs()).isEqualTo(16);
    });
  }

  @Test
  void metricHeadwall() {
    Counted c = Counted.worked("metric-headwall", Counted.workedSystem("metric-headwall"));
    soundness(c);
    JunctionQuantities wall = c.ofKind("headwall").get(0);
    assertThat(wall.closurePieces()).isEqualTo(28);
    assertThat(wall.closures().stream().map(ClosureCut::count)).isEqualTo(List.of(27, 1));
    assertThat(wall.closures().get(1).lengthM()).isCloseTo(0.390, within(1e-6));
    assertThat(Counted.fasteners(wall, "closure foot")).isEqualTo(140);
    assertThat(Counted.tapeM(wall)).isCloseTo(24, within(1e-6));
    assertThat(Counted.concealedBeadM(wall)).isCloseTo(26.128, within(1e-6));
    assertThat(Counted.concealedBeadM3(wall) * 1e6).isCloseTo(738.75, within(5e-3));
  }

  @Test
  void hipRoof() {
    Counted c = Counted.worked("hip-roof", RoofSystem.DEFAULT);
    soundness(c);
    assertThat(c.ofKind("hip")).hasSize(4).allSatisfy(hip -> assertThat(Counted.fasteners(hip, "closure foot")).isEqualTo(126));
    assertThat(c.ofKind("ridge").get(0).closurePieces()).isEqualTo(24);
    double area = c.takeoff().faces().stream().mapToDouble(f -> f.areaM2()).sum();
    double panels = c.quantities().panels().stream().mapToDouble(p -> p.count() * p.panel().areaM2()).sum();
    assertThat(area / FT / FT).isCloseTo(1073.31, within(0.02));
    assertThat(panels).isCloseTo(area, within(0.01));
  }

  @Test
  void hipRoofWithSteeperEnds() {
    Counted c = Counted.worked("hip-roof-steeper-ends", RoofSystem.DEFAULT);
    soundness(c);
    assertThat(c.ofKind("hip")).hasSize(4).allSatisfy(hip -> {
      List<ClosureCut> cuts = hip.closures().stream().sorted((a, b) -> Double.compare(b.lengthM(), a.lengthM())).toList();
      assertThat(cuts.stream().filter(x -> x.lengthM() / IN > 30).mapToInt(ClosureCut::count).sum()).isEqualTo(6);
      assertThat(cuts.stream().filter(x -> x.lengthM() / IN < 22).mapToInt(ClosureCut::count).sum()).isEqualTo(9);
      assertThat(cuts.get(0).lengthM() / IN).isCloseTo(31.241, within(2e-3));
      assertThat(cuts.get(cuts.size() - 1).lengthM() / IN).isCloseTo(20.827, within(2e-3));
      assertThat(hip.metal().stream().filter(m -> m.part().equals("closure")).map(m -> Math.round(m.lengthM() / IN * 100) / 100.0))
          .containsExactlyInAnyOrder(187.45, 187.45);
    });
  }
}
