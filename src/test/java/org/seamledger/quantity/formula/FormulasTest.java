package org.seamledger.quantity.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FormulasTest {

  private static final double IN = 0.0254;
  private static final double FT = 0.3048;
  private static final double FL_OZ = 29.5735295625e-6;

  // Derived by hand from "at most s apart, e from the ends"; the 2 in reach of a fastener in tape is common practice, no source.
  @ParameterizedTest
  @CsvSource({"16,4,1,5,3.5,100", "16,4,2,4,4.0,100", "16,6,1,4,4.6667,87.5", "24,4,1,7,3.6667,100", "480,4,1,121,3.9833,100",
      "480,4,2,120,4.0,100", "1.5,4,1,1,0,100"})
  void fastenersOnALine(double length, double spacing, double end, int count, double actual, double coveragePercent) {
    FastenerLine line = FastenerLine.open(length * IN, spacing * IN, end * IN, 1);
    assertThat(line.count()).isEqualTo(count);
    assertThat(line.spacingM() / IN).isEqualTo(actual, within(5e-5));
    assertThat(100 * line.coverage(2 * IN)).isEqualTo(coveragePercent, within(5e-3));
  }

  @Test
  void coverageAgreesWithAPointwiseCount() {
    long seed = 4711;
    Random random = new Random(seed);
    for (int i = 0; i < 200; i++) {
      double length = 0.02 + random.nextDouble() * 3;
      FastenerLine line = FastenerLine.open(length, 0.05 + random.nextDouble() * 0.3, random.nextDouble() * 0.06, 1 + random.nextInt(3));
      double reach = 0.01 + random.nextDouble() * 0.08;
      int pressed = 0;
      int samples = 20000;
      for (int k = 0; k < samples; k++) {
        double x = (k + 0.5) / samples * length;
        boolean hit = false;
        for (int n = 0; n < line.count() && !hit; n++) {
          hit = Math.abs(x - (line.endM() + n * line.spacingM())) <= reach;
        }
        pressed += hit ? 1 : 0;
      }
      assertThat(line.coverage(reach)).as("seed %d, case %d: %s", seed, i, line).isEqualTo((double) pressed / samples, within(2e-3));
    }
  }

  @Test
  void degenerateLines() {
    assertThat(FastenerLine.open(0, 0.1, 0.025, 1).count()).isZero();
    assertThat(FastenerLine.open(0.04, 0.1, 0.025, 2).count()).isEqualTo(2);
    assertThat(FastenerLine.open(1, 0.1, 0.025, 20).count()).isEqualTo(20);
    assertThat(FastenerLine.closed(0, 0.1).count()).isZero();
    assertThatThrownBy(() -> FastenerLine.open(1, 0, 0, 1)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> FastenerLine.open(Double.NaN, 1, 0, 1)).isInstanceOf(IllegalArgumentException.class);
  }

  // Area of the section and length per cartridge, from the geometry; 1 US fl oz = 231/128 in³ by definition.
  @ParameterizedTest
  @CsvSource({"ROUND,0.125,.012272,123.77,245.1", "ROUND,0.1875,.027612,55.01,108.93", "ROUND,0.25,.049087,30.94,61.27",
      "ROUND,0.375,.110447,13.75,27.23", "FILLET,0.25,.03125,48.61,96.25", "FILLET,0.375,.070312,21.60,42.78"})
  void beadsInInches(BeadShape shape, double size, double area, double feetPerSmall, double feetPerLarge) {
    assertThat(shape.areaM2(size * IN) / IN / IN).isEqualTo(area, within(6e-7));
    assertThat(10.1 * FL_OZ / Beads.volumeM3(1, shape, size * IN) / FT).isEqualTo(feetPerSmall, within(6e-3));
    assertThat(20 * FL_OZ / Beads.volumeM3(1, shape, size * IN) / FT).isEqualTo(feetPerLarge, within(0.06));
  }

  @ParameterizedTest
  @CsvSource({"ROUND,6,28.274,10.61,21.22", "ROUND,8,50.265,5.968,11.937", "ROUND,10,78.540,3.820,7.639", "FILLET,6,18,16.667,33.333",
      "FILLET,10,50,6.000,12.000"})
  void beadsInMillimetres(BeadShape shape, double size, double area, double metresPerSmall, double metresPerLarge) {
    assertThat(shape.areaM2(size / 1000) * 1e6).isEqualTo(area, within(6e-4));
    assertThat(300e-6 / Beads.volumeM3(1, shape, size / 1000)).isEqualTo(metresPerSmall, within(6e-3));
    assertThat(600e-6 / Beads.volumeM3(1, shape, size / 1000)).isEqualTo(metresPerLarge, within(6e-3));
  }

  @Test
  void beadShapesAgainstEachOther() {
    assertThat(BeadShape.FILLET.areaM2(1) / BeadShape.ROUND.areaM2(1)).isEqualTo(2 / Math.PI, within(1e-12));
    assertThat(BeadShape.TOOLED_FILLET.areaM2(1)).isEqualTo(0.215, within(5e-4));
    assertThat(BeadShape.HALF_ROUND.areaM2(2)).isEqualTo(BeadShape.ROUND.areaM2(2) / 2, within(1e-12));
  }

  // Volume balance of a tape of 3/16 by 7/8 in under a lip of 1 in, derived.
  @Test
  void tapeUnderALip() {
    Tape tape = new Tape(0.875 * IN, 0.1875 * IN);
    assertThat(tape.compressionThatFills(1 * IN)).isEqualTo(.125, within(1e-12));
    assertThat(tape.compressedThicknessM(.125) / IN).isEqualTo(.16406, within(5e-6));
    assertThat(tape.compressedWidthM(.25) / IN).isEqualTo(1.1667, within(5e-5));
    assertThat(tape.compressedWidthM(.30) / IN).isEqualTo(1.25, within(1e-12));
    assertThat(tape.compressedWidthM(.40) / IN).isEqualTo(1.458, within(5e-4));
    assertThat((tape.stackM(1.5 * IN, .25) - 1.5 * IN) / IN).isEqualTo(.1406, within(5e-5));
  }

  @ParameterizedTest
  @CsvSource({"480,120,4,5,4", "480,120,6,5,4", "116,120,4,1,0", "236,120,4,2,1", "0,120,4,0,0", "120,120,4,1,0", "120.1,120,4,2,1"})
  void capPieces(double run, double stock, double lap, int pieces, int laps) {
    assertThat(LappedRun.of(run * IN, stock * IN, lap * IN)).isEqualTo(new LappedRun(pieces, laps));
  }

  @Test
  void aLapIsShorterThanAStockLength() {
    assertThatThrownBy(() -> LappedRun.of(1, 0.1, 0.1)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @CsvSource({"0.1875,61", "0.25,81", "0.375,121", "0.5,162"})
  void slumpOnAVertical(double inches, double pascal) {
    // ρ = 1300 kg/m³, derived.
    assertThat(Slump.neededYieldStressPa(1300, inches * IN, 90)).isEqualTo(pascal, within(0.5));
  }

  // Framing-square table: hip or valley length per foot of common run = √(288 + r²); a piece across a pan of 12 in is as long.
  @ParameterizedTest
  @CsvSource({"2,17.09", "3,17.23", "4,17.44", "5,17.69", "6,18.00", "8,18.76", "10,19.70", "12,20.78", "18,24.74"})
  void closuresOnAHipAgreeWithTheFramingSquare(double rise, double inchesPerFoot) {
    assertThat(HipGeometry.square(rise / 12, rise / 12).cut1().lengthAcross(12)).isEqualTo(inchesPerFoot, within(6e-3));
  }

  // Table of hips over square corners: hip angle, backing, dihedral (derived; roof-framing formulas).
  @ParameterizedTest
  @CsvSource({"3,10.025,9.875,160.250", "6,19.471,18.435,143.130", "9,27.938,25.104,129.792", "12,35.264,30.000,120.000",
      "18,46.686,36.040,107.920"})
  void hipAngles(double rise, double hip, double backing, double dihedral) {
    HipGeometry g = HipGeometry.square(rise / 12, rise / 12);
    assertThat(g.lineDegrees()).isEqualTo(hip, within(5e-4));
    assertThat(g.backing1Degrees()).isEqualTo(backing, within(6e-4));
    assertThat(g.dihedralDegrees()).isEqualTo(dihedral, within(6e-4));
  }

  @Test
  void anOctagonsHip() {
    // Plan corner of 135° at 6/12: slope along the hip .461940, 24.794°, fold 19.708° (derived with vectors).
    HipGeometry g = new HipGeometry(0.5, 0.5, 135);
    assertThat(Math.tan(Math.toRadians(g.lineDegrees()))).isEqualTo(.461940, within(5e-7));
    assertThat(g.lineDegrees()).isEqualTo(24.794, within(5e-4));
    assertThat(g.foldDegrees()).isEqualTo(19.708, within(5e-4));
  }

  @Test
  void limitsOfAnObliqueCut() {
    assertThat(ObliqueCut.of(90, 40).lengthAcross(16)).isEqualTo(16, within(1e-9));
    assertThat(ObliqueCut.of(90, 40).bevelDegrees()).isEqualTo(0, within(1e-9));
    assertThat(ObliqueCut.of(0, 40).lengthAcross(16)).isInfinite();
    assertThat(Pieces.netLength(24, 0.2, HipGeometry.square(0.5, 0.5).cut1().psiDegrees())).isEqualTo(24 - 0.2 * 1.5, within(1e-9));
  }
}
