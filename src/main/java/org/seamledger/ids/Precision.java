package org.seamledger.ids;

/**
 * IDS 1.0, tolerance.md: a number x is equal to v where v − |v|·ε − ε ≤ x ≤ v + |v|·ε + ε with ε = 1.0e-6. Inclusive bounds are stretched
 * by as much, exclusive ones are shrunk. A value on the very edge counts as equal (the body's cases with 1.000002 for 1 pass).
 */
final class Precision {

  private static final double EPSILON = 1e-6;

  private Precision() {
  }

  static boolean equal(double x, double v) {
    return x == v || Math.abs(x - v) <= spread(v, x);
  }

  static boolean above(double x, double bound, boolean inclusive) {
    return inclusive ? x >= bound - spread(bound, x) : x > bound + spread(bound, x);
  }

  static boolean below(double x, double bound, boolean inclusive) {
    return inclusive ? x <= bound + spread(bound, x) : x < bound - spread(bound, x);
  }

  /** The tolerance, and what the digits of a double may add: a few units in the last place. */
  private static double spread(double v, double x) {
    return Double.isInfinite(v) ? 0 : Math.abs(v) * EPSILON + EPSILON + 4 * Math.ulp(Math.max(Math.abs(v), Math.abs(x)));
  }
}
