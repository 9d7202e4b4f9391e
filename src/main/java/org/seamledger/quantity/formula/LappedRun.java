package org.seamledger.quantity.formula;

/**
 * A long part made of stock lengths that lap: {@code N = ceil((L − lap)/(P − lap))} pieces and N − 1 laps. A run no longer than a stock
 * length is one piece; a run of no length is none.
 *
 * @param pieces stock lengths needed
 * @param laps joints between them
 */
public record LappedRun(int pieces, int laps) {

  private static final double NOISE = 1e-5;

  /** @throws IllegalArgumentException if a lap is not shorter than a stock length */
  public static LappedRun of(double runM, double stockM, double lapM) {
    if (!(stockM > lapM) || !(lapM >= 0) || !(runM >= 0)) {
      throw new IllegalArgumentException("run " + runM + " m in pieces of " + stockM + " m lapped " + lapM + " m");
    }
    if (runM <= NOISE) {
      return new LappedRun(0, 0);
    }
    int pieces = Math.max(1, (int) Math.ceil((runM - lapM - NOISE) / (stockM - lapM)));
    return new LappedRun(pieces, pieces - 1);
  }
}
