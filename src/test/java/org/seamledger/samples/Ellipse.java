package org.seamledger.samples;

/** Perimeter of an ellipse. */
final class Ellipse {
  private Ellipse() {
  }

  /**
   * The perimeter {@code 4·a·E(e)} with semi-axes a and b, E the complete elliptic integral of the second kind, by the arithmetic-geometric
   * mean: {@code E = K·(1 − Σ 2^(n−1)·c_n²)}, {@code K = π / (2·agm(1, b/a))}, after NIST Digital Library of Mathematical Functions
   * 19.8.5 and 19.8.6 (from memory).
   */
  static double perimeter(double a, double b) {
    double x = Math.max(a, b);
    double y = Math.min(a, b);
    double sum = x * x - (x * x - y * y) / 2;
    double weight = 0.5;
    while (x - y > 1e-15 * x) {
      double c = (x - y) / 2;
      double mean = (x + y) / 2;
      y = Math.sqrt(x * y);
      x = mean;
      weight *= 2;
      sum -= weight * c * c;
    }
    return 2 * Math.PI * sum / x;
  }
}
