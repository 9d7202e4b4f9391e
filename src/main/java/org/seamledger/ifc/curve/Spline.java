package org.seamledger.ifc.curve;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Facets;
import org.seamledger.geometry.Vec3;

/**
 * A B-spline curve, rational where its weights differ, evaluated by de Boor's algorithm in homogeneous coordinates (Piegl and Tiller,
 * The NURBS Book, 2nd edition, A3.1 and A4.1).
 *
 * @param knots with repetitions: {@code poles.size() + degree + 1} of them, not descending
 */
record Spline(int degree, List<Vec3> poles, double[] weights, double[] knots) implements Curve {

  private static final int SAMPLES = 64;
  private static final int DEEPEST = 12;

  @Override
  public double start() {
    return knots[degree];
  }

  @Override
  public double end() {
    return knots[poles.size()];
  }

  @Override
  public Vec3 at(double t) {
    double u = Math.min(end(), Math.max(start(), t));
    int k = span(u, degree, poles.size(), knots);
    double[][] d = new double[degree + 1][];
    for (int j = 0; j <= degree; j++) {
      int i = k - degree + j;
      Vec3 p = poles.get(i);
      double w = weights[i];
      d[j] = new double[] {p.x() * w, p.y() * w, p.z() * w, w};
    }
    deBoor(d, u, k, degree, knots);
    double[] h = d[degree];
    return new Vec3(h[0] / h[3], h[1] / h[3], h[2] / h[3]);
  }

  /** The knot span that holds {@code u}. */
  static int span(double u, int degree, int poles, double[] knots) {
    int k = degree;
    while (k < poles - 1 && u >= knots[k + 1]) {
      k++;
    }
    return k;
  }

  static void deBoor(double[][] d, double u, int k, int degree, double[] knots) {
    for (int r = 1; r <= degree; r++) {
      for (int j = degree; j >= r; j--) {
        double low = knots[k - degree + j];
        double high = knots[j + 1 + k - r];
        double a = high > low ? (u - low) / (high - low) : 0;
        for (int c = 0; c < d[j].length; c++) {
          d[j][c] = (1 - a) * d[j - 1][c] + a * d[j][c];
        }
      }
    }
  }

  @Override
  public double parameterAt(Vec3 p) {
    double best = start();
    int n = SAMPLES * Math.max(1, poles.size() - degree);
    double step = (end() - start()) / n;
    for (int i = 0; i <= n; i++) {
      double t = start() + i * step;
      if (at(t).distance(p) < at(best).distance(p)) {
        best = t;
      }
    }
    // The nearest point lies between the neighbours of the nearest sample: golden-section search.
    double a = Math.max(start(), best - step);
    double b = Math.min(end(), best + step);
    double g = (Math.sqrt(5) - 1) / 2;
    for (int i = 0; i < 60; i++) {
      double c = b - g * (b - a);
      double d = a + g * (b - a);
      if (at(c).distance(p) < at(d).distance(p)) {
        b = d;
      } else {
        a = c;
      }
    }
    return (a + b) / 2;
  }

  @Override
  public List<Vec3> points(double from, double to) {
    List<Vec3> points = new ArrayList<>();
    double[] stops = stops(Math.min(from, to), Math.max(from, to));
    points.add(at(stops[0]));
    for (int i = 0; i + 1 < stops.length; i++) {
      int pieces = degree == 1 ? 1 : 4;
      for (int k = 0; k < pieces; k++) {
        double a = stops[i] + (stops[i + 1] - stops[i]) * k / pieces;
        double b = stops[i] + (stops[i + 1] - stops[i]) * (k + 1) / pieces;
        refine(a, b, 0, points);
      }
    }
    if (from > to) {
      java.util.Collections.reverse(points);
    }
    return points;
  }

  /** Adds the points after {@code a} up to {@code b}. */
  private void refine(double a, double b, int depth, List<Vec3> points) {
    double m = (a + b) / 2;
    Vec3 pa = at(a);
    Vec3 pb = at(b);
    if (depth < DEEPEST && degree > 1 && at(m).distance(pa.towards(pb, 0.5)) > Facets.DEVIATION / 2) {
      refine(a, m, depth + 1, points);
      refine(m, b, depth + 1, points);
    } else {
      points.add(pb);
    }
  }

  /** The ends and every knot between them. */
  private double[] stops(double from, double to) {
    return java.util.stream.DoubleStream.concat(java.util.stream.DoubleStream.of(from, to),
        java.util.Arrays.stream(knots).filter(k -> k > from && k < to)).sorted().distinct().toArray();
  }
}
