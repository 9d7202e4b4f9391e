package org.seamledger.ifc.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.placement.Placements;

/** B-spline and Bézier curves of the three schemas. */
final class Splines {

  private static final int MOST = 100_000;

  private Splines() {
  }

  static Spline withKnots(Entity e) {
    List<Vec3> poles = poles(e);
    int degree = degree(e, poles.size());
    double[] knots = knots(e, e.wholes(5), e.numbers(6), poles.size() + degree + 1);
    return new Spline(degree, poles, weights(e, 8, poles.size()), knots);
  }

  /** IFC2X3: piecewise Bézier curves that share their end poles. */
  static Spline bezier(Entity e) {
    List<Vec3> poles = poles(e);
    int degree = degree(e, poles.size());
    if ((poles.size() - 1) % degree != 0) {
      throw EntityProblem.broken(e + ": the number of control points does not fit the degree");
    }
    int pieces = (poles.size() - 1) / degree;
    double[] knots = new double[poles.size() + degree + 1];
    Arrays.fill(knots, 0, degree + 1, 0);
    for (int i = 1; i < pieces; i++) {
      Arrays.fill(knots, 1 + i * degree, 1 + (i + 1) * degree, i);
    }
    Arrays.fill(knots, knots.length - degree - 1, knots.length, pieces);
    return new Spline(degree, poles, weights(e, 5, poles.size()), knots);
  }

  private static List<Vec3> poles(Entity e) {
    List<Vec3> poles = new ArrayList<>();
    for (Entity p : e.entities(1)) {
      poles.add(Placements.point(p));
    }
    return poles;
  }

  private static int degree(Entity e, int poles) {
    double degree = e.number(0);
    if (degree < 1 || degree > 25 || degree != Math.rint(degree) || poles <= degree) {
      throw EntityProblem.broken(e + ": a degree of " + degree + " does not fit " + poles + " control points");
    }
    return (int) degree;
  }

  static double[] weights(Entity e, int attribute, int poles) {
    double[] weights = new double[poles];
    Arrays.fill(weights, 1);
    if (e.keyword().contains("RATIONAL")) {
      List<Double> given = e.numbers(attribute);
      if (given.size() != poles || given.stream().anyMatch(w -> !(w > 0))) {
        throw EntityProblem.broken(e + ": every control point needs one weight above zero");
      }
      Arrays.setAll(weights, given::get);
    }
    return weights;
  }

  /** Knots repeated as their multiplicities say. */
  static double[] knots(Entity e, int[] multiplicities, List<Double> values, int expected) {
    int total = 0;
    for (int m : multiplicities) {
      total = m < 1 || total > MOST ? Integer.MIN_VALUE / 2 : total + m;
    }
    if (multiplicities.length != values.size() || total != expected) {
      throw EntityProblem.broken(e + ": knots and multiplicities do not fit the control points");
    }
    double[] knots = new double[expected];
    int k = 0;
    for (int i = 0; i < multiplicities.length; i++) {
      if (i > 0 && values.get(i) <= values.get(i - 1)) {
        throw EntityProblem.broken(e + ": knots should ascend");
      }
      Arrays.fill(knots, k, k + multiplicities[i], values.get(i));
      k += multiplicities[i];
    }
    return knots;
  }
}
