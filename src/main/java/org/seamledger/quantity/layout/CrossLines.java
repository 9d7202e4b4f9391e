package org.seamledger.quantity.layout;

import java.util.ArrayList;
import java.util.List;

/**
 * Level lines across a facet, evenly spaced, at which panels are divided that are too long.
 *
 * @param start one of them, metres up the slope
 * @param spacing from line to line; infinite where there are none
 * @param mostM no panel that is longer stays undivided
 * @param apart whether what lies above and below a line moves by itself; else it is lapped and moves as one
 */
record CrossLines(double start, double spacing, double mostM, boolean apart) {

  static final CrossLines NONE = new CrossLines(0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, false);

  /** The fewest that divide a panel from {@code low} to {@code high} into equal parts no longer than {@code mostM}. */
  static CrossLines dividing(double low, double high, double mostM, boolean apart) {
    double parts = Math.ceil((high - low) / mostM - 1e-9);
    return new CrossLines(low, (high - low) / parts, mostM, apart);
  }

  boolean isNone() {
    return Double.isInfinite(spacing);
  }

  /** The lines at which a panel from {@code low} to {@code high} is divided, from the lowest: none that it can do without. */
  List<Double> through(double low, double high) {
    List<Double> needed = new ArrayList<>();
    if (isNone() || high - low <= mostM + FaceLayout.TOLERANCE) {
      return needed;
    }
    double from = low;
    for (long k = (long) Math.floor((low + FaceLayout.TOLERANCE - start) / spacing) + 1; at(k) < high - FaceLayout.TOLERANCE; k++) {
      if (Math.min(at(k + 1), high) - from > mostM + FaceLayout.TOLERANCE) {
        needed.add(at(k));
        from = at(k);
      }
    }
    return needed;
  }

  private double at(long k) {
    return start + k * spacing;
  }
}
