package org.seamledger.export.node;

import java.util.List;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * A way to look at a node.
 *
 * @param middle where the node lies on paper, millimetres
 * @param perMetre millimetres on paper for a metre
 * @param oblique from the south-east and above, as an axonometric view; else straight down
 */
record NodeView(Vec3 at, Vec2 middle, double perMetre, boolean oblique, double turn) {

  /** Height in an oblique view, of a plan turned by 30 degrees: a military axonometric, in which the plan keeps its lengths. */
  private static final double TILT = 0.6;

  Vec2 paper(Vec3 p) {
    return paper(p, 0);
  }

  /** @param lift metres upwards, to draw what lies on other pieces apart from them; only seen in an oblique view */
  Vec2 paper(Vec3 p, double lift) {
    Vec3 d = p.minus(at);
    if (!oblique) {
      return new Vec2(middle.u() + perMetre * d.x(), middle.v() - perMetre * d.y());
    }
    double x = d.x() * StrictMath.cos(turn) - d.y() * StrictMath.sin(turn);
    double y = d.x() * StrictMath.sin(turn) + d.y() * StrictMath.cos(turn);
    return new Vec2(middle.u() + perMetre * x, middle.v() - perMetre * (TILT * y + (1 - TILT / 3) * (d.z() + lift)));
  }

  List<Vec2> paper(List<Vec3> points, double lift) {
    return points.stream().map(p -> paper(p, lift)).toList();
  }
}
