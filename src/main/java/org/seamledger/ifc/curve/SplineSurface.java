package org.seamledger.ifc.curve;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.placement.Placements;
import org.seamledger.step.Value;

/** A B-spline surface, rational where its weights differ (The NURBS Book, 2nd edition, A3.5 and A4.3). */
final class SplineSurface implements Surface {

  private static final int GRID = 24;
  private static final int STEPS = 30;

  private final int uDegree;
  private final int vDegree;
  private final Vec3[][] poles;
  private final double[][] weights;
  private final double[] uKnots;
  private final double[] vKnots;
  private final Vec3[][] grid = new Vec3[GRID + 1][GRID + 1];

  private SplineSurface(int uDegree, int vDegree, Vec3[][] poles, double[][] weights, double[] uKnots, double[] vKnots) {
    this.uDegree = uDegree;
    this.vDegree = vDegree;
    this.poles = poles;
    this.weights = weights;
    this.uKnots = uKnots;
    this.vKnots = vKnots;
    for (int i = 0; i <= GRID; i++) {
      for (int k = 0; k <= GRID; k++) {
        grid[i][k] = at(u(i), v(k));
      }
    }
  }

  /** IfcBSplineSurfaceWithKnots or IfcRationalBSplineSurfaceWithKnots. */
  static SplineSurface of(Entity e) {
    List<List<Vec3>> rows = new ArrayList<>();
    for (Value row : e.list(2)) {
      List<Vec3> points = new ArrayList<>();
      for (Value p : row instanceof Value.Aggregate a ? a.items() : List.<Value>of()) {
        if (!(p instanceof Value.Reference r)) {
          throw e.mismatch(2, "a list of lists of points");
        }
        points.add(Placements.point(e.model().get(r.id())));
      }
      rows.add(points);
    }
    int uDegree = (int) e.number(0);
    int vDegree = (int) e.number(1);
    int width = rows.isEmpty() ? 0 : rows.get(0).size();
    if (uDegree < 1 || vDegree < 1 || uDegree > 25 || vDegree > 25 || rows.size() <= uDegree || width <= vDegree
        || rows.stream().anyMatch(r -> r.size() != width)) {
      throw EntityProblem.broken(e + ": the degrees do not fit the control points");
    }
    double[] uKnots = Splines.knots(e, e.wholes(7), e.numbers(9), rows.size() + uDegree + 1);
    double[] vKnots = Splines.knots(e, e.wholes(8), e.numbers(10), width + vDegree + 1);
    return new SplineSurface(uDegree, vDegree, rows.stream().map(r -> r.toArray(Vec3[]::new)).toArray(Vec3[][]::new),
        weights(e, rows.size(), width), uKnots, vKnots);
  }

  private static double[][] weights(Entity e, int rows, int width) {
    double[][] weights = new double[rows][width];
    List<List<Double>> given = e.keyword().contains("RATIONAL") ? e.matrix(12) : null;
    for (int i = 0; i < rows; i++) {
      for (int k = 0; k < width; k++) {
        weights[i][k] = given == null ? 1 : i < given.size() && k < given.get(i).size() ? given.get(i).get(k) : -1;
        if (!(weights[i][k] > 0)) {
          throw EntityProblem.broken(e + ": every control point needs one weight above zero");
        }
      }
    }
    return weights;
  }

  private double u(double i) {
    return uKnots[uDegree] + (uKnots[poles.length] - uKnots[uDegree]) * i / GRID;
  }

  private double v(double k) {
    return vKnots[vDegree] + (vKnots[poles[0].length] - vKnots[vDegree]) * k / GRID;
  }

  @Override
  public Vec3 at(double u, double v) {
    double uu = Math.min(u(GRID), Math.max(u(0), u));
    double vv = Math.min(v(GRID), Math.max(v(0), v));
    int i = Spline.span(uu, uDegree, poles.length, uKnots);
    int k = Spline.span(vv, vDegree, poles[0].length, vKnots);
    double[][] column = new double[uDegree + 1][];
    for (int a = 0; a <= uDegree; a++) {
      double[][] row = new double[vDegree + 1][];
      for (int b = 0; b <= vDegree; b++) {
        Vec3 p = poles[i - uDegree + a][k - vDegree + b];
        double w = weights[i - uDegree + a][k - vDegree + b];
        row[b] = new double[] {p.x() * w, p.y() * w, p.z() * w, w};
      }
      Spline.deBoor(row, vv, k, vDegree, vKnots);
      column[a] = row[vDegree];
    }
    Spline.deBoor(column, uu, i, uDegree, uKnots);
    double[] h = column[uDegree];
    return new Vec3(h[0] / h[3], h[1] / h[3], h[2] / h[3]);
  }

  /** Gauss–Newton from the nearest point of a grid, or from nearby. */
  @Override
  public Vec2 parameters(Vec3 p, Vec2 near) {
    Vec2 from = nearest(p);
    if (near != null && at(near.u(), near.v()).distance(p) <= at(from.u(), from.v()).distance(p)) {
      from = near;
    }
    double u = from.u();
    double v = from.v();
    double du = (u(GRID) - u(0)) * 1e-6;
    double dv = (v(GRID) - v(0)) * 1e-6;
    for (int step = 0; step < STEPS; step++) {
      Vec3 s = at(u, v);
      Vec3 su = at(u + du, v).minus(at(u - du, v)).times(1 / spread(u, du, u(0), u(GRID)));
      Vec3 sv = at(u, v + dv).minus(at(u, v - dv)).times(1 / spread(v, dv, v(0), v(GRID)));
      Vec3 d = p.minus(s);
      double a = su.dot(su);
      double b = su.dot(sv);
      double c = sv.dot(sv);
      double det = a * c - b * b;
      if (!(Math.abs(det) > 1e-18 * a * c) || d.length() < 1e-9) {
        break;
      }
      double nu = Math.min(u(GRID), Math.max(u(0), u + (c * su.dot(d) - b * sv.dot(d)) / det));
      double nv = Math.min(v(GRID), Math.max(v(0), v + (a * sv.dot(d) - b * su.dot(d)) / det));
      if (at(nu, nv).distance(p) >= d.length()) {
        break;
      }
      u = nu;
      v = nv;
    }
    return new Vec2(u, v);
  }

  private static double spread(double x, double d, double low, double high) {
    return Math.min(high, x + d) - Math.max(low, x - d);
  }

  private Vec2 nearest(Vec3 p) {
    int bi = 0;
    int bk = 0;
    for (int i = 0; i <= GRID; i++) {
      for (int k = 0; k <= GRID; k++) {
        if (grid[i][k].distance(p) < grid[bi][bk].distance(p)) {
          bi = i;
          bk = k;
        }
      }
    }
    return new Vec2(u(bi), v(bk));
  }

  @Override
  public double uPeriod() {
    return closed(true) ? u(GRID) - u(0) : 0;
  }

  @Override
  public double vPeriod() {
    return closed(false) ? v(GRID) - v(0) : 0;
  }

  private boolean closed(boolean inU) {
    for (int i = 0; i <= GRID; i++) {
      if ((inU ? grid[0][i].distance(grid[GRID][i]) : grid[i][0].distance(grid[i][GRID])) > 1e-6) {
        return false;
      }
    }
    return true;
  }
}
