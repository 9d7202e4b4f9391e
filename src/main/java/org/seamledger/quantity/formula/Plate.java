package org.seamledger.quantity.formula;

/**
 * A plate under the boot of a pipe that stands on a seam: a rectangle from the middle of one pan to the middle of the next, and no
 * smaller than the boot's fastener circle and a margin all round.
 *
 * @param widthM across the seams
 * @param lengthM along them
 */
public record Plate(double widthM, double lengthM) {

  /**
   * @param coverageM seam spacing: the least width
   * @param lengthM least length
   * @param ringMarginM from the pipe to its boot's fastener circle
   * @param edgeM from that circle to the plate's edges, for its own fasteners
   */
  public record Allowance(double coverageM, double lengthM, double ringMarginM, double edgeM) {
  }

  public static Plate over(double diameterM, Allowance a) {
    double least = diameterM + 2 * a.ringMarginM() + 2 * a.edgeM();
    return new Plate(Math.max(a.coverageM(), least), Math.max(a.lengthM(), least));
  }

  /** All round. */
  public double perimeterM() {
    return 2 * (widthM + lengthM);
  }
}
