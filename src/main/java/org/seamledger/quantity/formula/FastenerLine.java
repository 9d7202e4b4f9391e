package org.seamledger.quantity.formula;

/**
 * Fasteners along one line: as few as keep within a greatest spacing, spread evenly between end distances.
 *
 * <p>Open line of length L, greatest spacing s, end distance e: where {@code L ≤ 2e} one fastener in the middle; otherwise
 * {@code n = max(minimum, ceil((L − 2e)/s) + 1)}, actual spacing {@code (L − 2e)/(n − 1)}. Closed line of length P: {@code n = ceil(P/s)},
 * spacing {@code P/n}. Lines are counted one by one, never merged. A line of no length has no fasteners.
 *
 * @param lengthM length of the line
 * @param count number of fasteners
 * @param spacingM actual spacing; 0 where there is one fastener or none
 * @param endM distance of the first and the last fastener from the ends; 0 on a closed line
 */
public record FastenerLine(double lengthM, int count, double spacingM, double endM, boolean closed) {

  /** Ten micrometres: lengths that come from a model are no better, and a line must not get a fastener more for noise. */
  private static final double NOISE = 1e-5;

  /**
   * @param minimum least number on the line, at least 1
   * @throws IllegalArgumentException if spacing or minimum is not positive, or the end distance is negative
   */
  public static FastenerLine open(double lengthM, double greatestSpacingM, double endDistanceM, int minimum) {
    check(lengthM, greatestSpacingM);
    if (!(endDistanceM >= 0) || minimum < 1) {
      throw new IllegalArgumentException("end distance " + endDistanceM + " m, minimum " + minimum);
    }
    if (lengthM <= NOISE) {
      return new FastenerLine(lengthM, 0, 0, 0, false);
    }
    double between = lengthM - 2 * endDistanceM;
    if (between <= NOISE && minimum == 1) {
      return new FastenerLine(lengthM, 1, 0, lengthM / 2, false);
    }
    if (between <= NOISE) {
      // The least number asked for does not fit between the end distances: spread over the whole line.
      return new FastenerLine(lengthM, minimum, lengthM / minimum, lengthM / minimum / 2, false);
    }
    int count = Math.max(minimum, (int) Math.ceil((between - NOISE) / greatestSpacingM) + 1);
    return count == 1 ? new FastenerLine(lengthM, 1, 0, lengthM / 2, false)
        : new FastenerLine(lengthM, count, between / (count - 1), endDistanceM, false);
  }

  /** A ring, such as the flange of a boot. */
  public static FastenerLine closed(double perimeterM, double greatestSpacingM) {
    check(perimeterM, greatestSpacingM);
    int count = perimeterM <= NOISE ? 0 : (int) Math.ceil((perimeterM - NOISE) / greatestSpacingM);
    return new FastenerLine(perimeterM, count, count == 0 ? 0 : perimeterM / count, 0, true);
  }

  private static void check(double lengthM, double spacingM) {
    if (!(lengthM >= 0) || !(spacingM > 0)) {
      throw new IllegalArgumentException("line of " + lengthM + " m with spacing " + spacingM + " m");
    }
  }

  /**
   * Share of the line on which a tape is pressed, where a fastener presses it {@code reachM} to each side: the union of
   * {@code [x − reach, x + reach]} over the length. Full where spacing ≤ 2·reach and end distance ≤ reach. The reach itself is common
   * practice (2 in each side); no standard states it.
   *
   * @return 0 to 1; 1 for a line of no length
   */
  public double coverage(double reachM) {
    if (lengthM <= NOISE) {
      return 1;
    }
    if (count == 0) {
      return 0;
    }
    if (closed) {
      return Math.min(1, 2 * reachM * count / lengthM);
    }
    double ends = 2 * Math.min(endM, reachM);
    double gaps = (count - 1) * Math.min(spacingM, 2 * reachM);
    return Math.min(1, (ends + gaps) / lengthM);
  }
}
