package org.seamledger.quantity.layout;

/**
 * How long panels may be; infinite where there is no limit. What is longer is divided by level lines.
 *
 * @param moveM longest panel that may move as one, metres: longer ones are parted by step joints
 * @param makeM longest piece that can be formed, carried and lifted, metres: longer ones are lapped
 */
public record Division(double moveM, double makeM) {

  /** No limit. */
  public static final Division NONE = new Division(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

  public Division {
    if (!(moveM > 0 && makeM > 0)) {
      throw new IllegalArgumentException("panels of " + moveM + " m, of pieces of " + makeM + " m");
    }
  }

  /** The lines that divide the panels of a facet, the longest of which reaches from {@code low} to {@code high} up the slope. */
  CrossLines lines(double low, double high) {
    double length = high - low;
    if (length > moveM + FaceLayout.TOLERANCE) {
      return CrossLines.dividing(low, high, Math.min(moveM, makeM), true);
    }
    return length > makeM + FaceLayout.TOLERANCE ? CrossLines.dividing(low, high, makeM, false) : CrossLines.NONE;
  }
}
