package org.seamledger.quantity.formula;

/** Lengths and volumes of beads. */
public final class Beads {

  private Beads() {
  }

  /**
   * Beads of closures: {@code lines · Σℓ + pieces · upstands · h}. Lines along the base are 2 where it is bedded in front and behind, 1
   * behind only; at each end of a piece the bead turns up the seam leg by the upstand h.
   *
   * @param baseM length of all pieces together, metres
   * @param upstands how often a bead turns up at each piece, 2 for both its ends
   */
  public static double lengthM(double baseM, int lines, int pieces, int upstands, double upstandM) {
    return lines * baseM + (double) upstands * pieces * upstandM;
  }

  /** Volume of a bead, cubic metres, before waste. */
  public static double volumeM3(double lengthM, BeadShape shape, double sizeM) {
    return lengthM * shape.areaM2(sizeM);
  }
}
