package org.seamledger.quantity.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamledger.quantity.formula.Pieces.Piece;

/**
 * Thirteen worked examples, each derived twice by hand: in closed form and with vectors. Lengths below are inches unless a name says more.
 */
class WorkedExamplesTest {

  private static final double IN = 0.0254;
  private static final double FT = 0.3048;
  private static final double TUBE_10_1 = 10.1 * 29.5735295625e-6;

  @Test
  void e1Ridge() {
    List<Piece> side = Pieces.between(0, 480, 0, 16, 1e-6);
    assertThat(side).hasSize(30);
    int perPiece = FastenerLine.open(16 * IN, 4 * IN, 1 * IN, 1).count();
    assertThat(perPiece).isEqualTo(5);
    assertThat(2 * side.size() * perPiece).isEqualTo(300);
    double tapeFt = 2 * 2 * 40;
    assertThat(tapeFt).isEqualTo(160);
    Order rolls = Order.of(tapeFt, 0.10, 50);
    assertThat(rolls.withWaste()).isEqualTo(176, within(1e-9));
    assertThat(rolls.withWaste() / 50).isEqualTo(3.52, within(1e-9));
    assertThat(rolls.units()).isEqualTo(4);
    double bead = side.stream().mapToDouble(p -> Beads.lengthM(p.width(), 2, 1, 2, 1.75)).sum();
    assertThat(bead).isEqualTo(1065, within(1e-9));
    assertThat(bead / 12).isEqualTo(88.75, within(1e-9));
  }

  @Test
  void e2Headwall() {
    List<Piece> pieces = Pieces.between(0, 240, 9, 18, 1e-6);
    assertThat(pieces).hasSize(14);
    assertThat(pieces.stream().map(Piece::width)).containsExactly(9.0, 18.0, 18.0, 18.0, 18.0, 18.0, 18.0, 18.0, 18.0, 18.0, 18.0, 18.0,
        18.0, 15.0);
    assertThat(pieces.stream().mapToInt(p -> FastenerLine.open(p.width() * IN, 4 * IN, 1 * IN, 1).count()).sum()).isEqualTo(68);
  }

  @Test
  void e3RegularHip() {
    HipGeometry hip = HipGeometry.square(0.5, 0.5);
    assertThat(hip.lengthFor(6)).isEqualTo(18.0, within(1e-12));
    assertThat(hip.cut1().lengthAcross(16)).isEqualTo(24.0, within(1e-12));
    List<Piece> pans = Pieces.between(0, 144, 0, 16, 1e-6);
    assertThat(pans).hasSize(9);
    assertThat(2 * pans.size() * FastenerLine.open(24 * IN, 4 * IN, 1 * IN, 1).count()).isEqualTo(126);
    assertThat(2 * 2 * 18.0).isEqualTo(72);
    double beadIn = 18 * Beads.lengthM(24, 2, 1, 2, 1.75);
    assertThat(beadIn).isEqualTo(927, within(1e-9));
    assertThat(beadIn / 12).isEqualTo(77.25, within(1e-9));
    double volume = Beads.volumeM3(beadIn * IN, BeadShape.ROUND, 0.25 * IN);
    assertThat(volume / (IN * IN * IN)).isEqualTo(45.504, within(5e-4));
    assertThat(volume / TUBE_10_1).isEqualTo(2.4965, within(5e-5));
    Order order = Order.of(volume, 0.10, TUBE_10_1);
    assertThat(order.withWaste() / TUBE_10_1).isEqualTo(2.746, within(5e-4));
    assertThat(order.units()).isEqualTo(3);
  }

  @Test
  void e4UnequalValley() {
    HipGeometry valley = HipGeometry.square(4 / 12.0, 8 / 12.0);
    assertThat(valley.lengthFor(4)).isEqualTo(14.0, within(1e-12));
    assertThat(valley.cut1().psiDegrees()).isEqualTo(25.377, within(5e-4));
    assertThat(valley.cut1().lengthAcross(12)).isEqualTo(28.0, within(1e-12));
    assertThat(valley.cut2().psiDegrees()).isEqualTo(58.997, within(5e-4));
    assertThat(valley.cut2().lengthAcross(12)).isEqualTo(14.0, within(1e-12));
    assertThat(6 * valley.cut1().lengthAcross(12)).isEqualTo(168, within(1e-9)).isEqualTo(12 * valley.cut2().lengthAcross(12),
        within(1e-9));
    assertThat(valley.dihedralDegrees()).isEqualTo(142.125, within(5e-4));
    FastenerLine cleat = FastenerLine.open(168 * IN, 4 * IN, 1 * IN, 1);
    assertThat(cleat.count()).isEqualTo(43);
    assertThat(2 * cleat.count()).isEqualTo(86);
    int asHip = 6 * FastenerLine.open(28 * IN, 4 * IN, 1 * IN, 1).count() + 12 * FastenerLine.open(14 * IN, 4 * IN, 1 * IN, 1).count();
    assertThat(asHip).isEqualTo(6 * 8 + 12 * 4).isEqualTo(96);
  }

  @Test
  void e5IrregularHip() {
    HipGeometry hip = HipGeometry.square(8 / 12.0, 10 / 12.0);
    assertThat(hip.lineDegrees()).isEqualTo(27.5005, within(5e-5));
    assertThat(new double[] {hip.backing1Degrees(), hip.backing2Degrees()}).containsExactly(new double[] {20.2745, 29.9934}, within(5e-5));
    assertThat(hip.planAngleFromEave2()).isEqualTo(38.66, within(5e-3));
    assertThat(hip.planAngleFromEave1()).isEqualTo(51.34, within(5e-3));
    assertThat(hip.runFor(6 + 2 / 3.0)).isEqualTo(12.8062, within(5e-5));
    assertThat(hip.foldDegrees()).isEqualTo(50.268, within(5e-4));
    // cos(fold) = cos θ1 · cos θ2 over a square corner.
    double fold = Math.acos(Math.cos(Math.atan(8 / 12.0)) * Math.cos(Math.atan(10 / 12.0)));
    assertThat(hip.foldDegrees()).isEqualTo(Math.toDegrees(fold), within(1e-9));
  }

  @Test
  void e6MetricHeadwall() {
    List<Piece> pieces = Pieces.between(0, 12, 0, 0.430, 1e-6);
    assertThat(pieces).hasSize(28);
    assertThat(pieces.get(27).width()).isEqualTo(0.390, within(1e-9));
    assertThat(pieces.stream().mapToInt(p -> FastenerLine.open(p.width(), 0.100, 0.025, 1).count()).sum()).isEqualTo(140);
    assertThat(2 * 12.0).isEqualTo(24);
    double bead = pieces.stream().mapToDouble(p -> Beads.lengthM(p.width(), 2, 1, 2, 0.038)).sum();
    assertThat(bead).isEqualTo(26.128, within(1e-9));
    double volume = Beads.volumeM3(bead, BeadShape.ROUND, 0.006);
    assertThat(volume * 1e6).isEqualTo(738.75, within(5e-3));
    assertThat(Order.of(volume, 0, 300e-6).withWaste() / 300e-6).isEqualTo(2.46, within(5e-3));
    Order small = Order.of(volume, 0.1, 300e-6);
    assertThat(small.withWaste() / 300e-6).isEqualTo(2.71, within(5e-3));
    assertThat(small.units()).isEqualTo(3);
    Order large = Order.of(volume, 0.1, 600e-6);
    assertThat(large.withWaste() / 600e-6).isEqualTo(1.35, within(5e-3));
    assertThat(large.units()).isEqualTo(2);
  }

  @Test
  void e7HipRoof() {
    HipGeometry hip = HipGeometry.square(0.5, 0.5);
    double slopeFactor = Math.sqrt(1 + 0.25);
    assertThat(40 * 24 * slopeFactor).isEqualTo(1073.31, within(5e-3));
    assertThat(4 * hip.lengthFor(6)).isEqualTo(72, within(1e-9));
    assertThat(4 * 12 * slopeFactor).isEqualTo(53.666, within(5e-4));
  }

  @Test
  void e8HipRoofWithSteeperEnds() {
    HipGeometry hip = HipGeometry.square(0.5, 0.75);
    assertThat(6 / 0.75).isEqualTo(8);
    assertThat(hip.lengthFor(6)).isEqualTo(15.6205, within(5e-5)).isEqualTo(Math.sqrt(244), within(1e-9));
    assertThat(hip.cut1().lengthAcross(16)).isEqualTo(31.241, within(5e-4));
    assertThat(hip.cut2().lengthAcross(16)).isEqualTo(20.827, within(5e-4));
    assertThat(6 * hip.cut1().lengthAcross(16)).isEqualTo(187.446, within(5e-4));
    assertThat(9 * hip.cut2().lengthAcross(16)).isEqualTo(187.446, within(5e-4));
  }

  @Test
  void e9WingValley() {
    assertThat(2 * HipGeometry.square(0.5, 0.5).lengthFor(4)).isEqualTo(2 * 12.0, within(1e-9));
  }

  @Test
  void e10Boot() {
    double perimeter = Math.PI * 7.25;
    assertThat(perimeter).isEqualTo(22.777, within(5e-4));
    assertThat(FastenerLine.closed(perimeter * IN, 1.5 * IN).count()).isEqualTo(16);
    assertThat(FastenerLine.closed(perimeter * IN, 4 * IN).count()).isEqualTo(6);
  }

  @Test
  void e11OrderIsRoundedOnce() {
    double hip = Beads.volumeM3(927 * IN, BeadShape.ROUND, 0.25 * IN);
    assertThat(Order.of(hip, 0.1, TUBE_10_1).units()).isEqualTo(3);
    Order four = Order.of(4 * hip, 0.1, TUBE_10_1);
    assertThat(four.withWaste() / TUBE_10_1).isEqualTo(10.984, within(1e-3));
    assertThat(four.units()).isEqualTo(11);
    assertThat(Order.of(3 * 0.4, 0, 1).units()).isEqualTo(2);
  }

  @Test
  void e12RoofPlane() {
    assertThat(120 * Math.cos(Math.toRadians(30))).isEqualTo(103.923, within(5e-4));
  }

  @Test
  void e13ASeamOnTheEndMakesNoPiece() {
    assertThat(Pieces.between(0, 32, 0, 16, 1e-6)).hasSize(2);
    assertThat(Pieces.between(1e-7, 32 - 1e-7, 0, 16, 1e-6)).hasSize(2);
    assertThat(Pieces.between(0, 32 + 1e-7, 0, 16, 1e-6)).hasSize(2);
    assertThat(Pieces.between(0, 32.01, 0, 16, 1e-6)).hasSize(3);
    assertThat(Pieces.between(5, 5, 0, 16, 1e-6)).isEmpty();
    assertThat(Pieces.between(20, -20, 0, 16, 1e-6).stream().map(Piece::width)).containsExactly(4.0, 16.0, 16.0, 4.0);
  }
}
