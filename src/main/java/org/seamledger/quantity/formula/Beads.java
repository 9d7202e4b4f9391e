package org.seamledger.quantity.formula;

/** Lengths and volumes of beads. */
public final class Beads {

  private Beads() {
  }

  /**
   * Bead of one closure: {@code lines · ℓ + 2 · h}. Lines along the base are 2 where it is bedded in front and behind, 1 behind only; at
   * each end the bead turns up the seam leg by the upstand h.
   */
  public static double perClosureM(double closureLengthM, int baseLines, double upstandM) {
    return baseLines * closureLengthM + 2 * upstandM;
  }

  /** Volume of a bead, cubic metres, before waste. */
  public static double volumeM3(double lengthM, BeadShape shape, double sizeM) {
    return lengthM * shape.areaM2(sizeM);
  }

  /** Length of bead that one container yields, metres, without waste. */
  public static double lengthPerContainerM(double containerM3, BeadShape shape, double sizeM) {
    return containerM3 / shape.areaM2(sizeM);
  }
}
