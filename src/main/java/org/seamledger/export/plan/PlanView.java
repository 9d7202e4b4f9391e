package org.seamledger.export.plan;

import java.util.List;
import java.util.stream.Stream;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Facet;
import org.seamledger.takeoff.Takeoff;

/**
 * A roof seen from above, on paper.
 *
 * @param denominator n of the scale 1:n
 * @param low least x and y of the roof, metres
 * @param shift where that lies on paper, millimetres
 */
public record PlanView(double denominator, Vec2 low, Vec2 shift) {

  private static final double LEFT = 14;
  private static final double TOP = 28;
  private static final double PLAN_WIDTH = 306;
  private static final double PLAN_HEIGHT = 205;

  private static final double[] SCALES =
      {5, 10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000, 5000, 10_000, 50_000};

  /** The greatest scale at which the roof has room. */
  public static PlanView fit(Takeoff takeoff) {
    List<Vec3> all = points(takeoff);
    double minX = all.stream().mapToDouble(Vec3::x).min().orElse(0);
    double minY = all.stream().mapToDouble(Vec3::y).min().orElse(0);
    double width = all.stream().mapToDouble(Vec3::x).max().orElse(1) - minX;
    double depth = all.stream().mapToDouble(Vec3::y).max().orElse(1) - minY;
    double n = SCALES[SCALES.length - 1];
    for (int i = SCALES.length - 1; i >= 0; i--) {
      boolean fits = width * 1000 / SCALES[i] <= PLAN_WIDTH - 8 && depth * 1000 / SCALES[i] <= PLAN_HEIGHT - 8;
      n = fits ? SCALES[i] : n;
    }
    Vec2 shift = new Vec2(LEFT + (PLAN_WIDTH - width * 1000 / n) / 2, TOP + (PLAN_HEIGHT + depth * 1000 / n) / 2);
    return new PlanView(n, new Vec2(minX, minY), shift);
  }

  private static List<Vec3> points(Takeoff takeoff) {
    Stream<Vec3> lines = takeoff.junctions().stream().flatMap(j -> j.junction().path().stream());
    return Stream.concat(lines, takeoff.faces().stream().flatMap(f -> f.facets().stream()).flatMap(PlanView::corners)).toList();
  }

  private static Stream<Vec3> corners(Facet facet) {
    return facet.area().rings().stream().flatMap(r -> r.points().stream()).map(p -> facet.plane().at(p.u(), p.v()));
  }

  /** Millimetres on paper from metres of the roof. */
  public Vec2 paper(Vec3 p) {
    return new Vec2(shift.u() + (p.x() - low.u()) * 1000 / denominator, shift.v() - (p.y() - low.v()) * 1000 / denominator);
  }
}
