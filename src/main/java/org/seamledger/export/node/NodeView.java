package org.seamledger.export.node;

import java.util.List;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * A way to look at a node.
 *
 * @param middle where the node lies on paper, millimetres
 * @param perMetre millimetres on paper for a metre
 * @param oblique from above and one side, as an axonometric view; else straight down
 * @param turn of the plan before it is looked at, radians
 */
record NodeView(Vec3 at, Vec2 middle, double perMetre, boolean oblique, double turn) {

  /** Sine and cosine of the height from which an oblique view looks down: lengths across it and along it are true to one scale. */
  private static final double DOWN = 0.6;
  private static final double ACROSS = 0.8;

  /** At a scale of 1, its node at zero. */
  static NodeView unit(Vec3 at, boolean oblique, double turn) {
    return new NodeView(at, new Vec2(0, 0), 1, oblique, turn);
  }

  /** The same at a scale, so that what reaches from {@code low} to {@code high} at a scale of 1 stands in the middle of a place. */
  NodeView in(PaperBox place, double scale, PaperBox extent) {
    return new NodeView(at, place.middle().minus(extent.middle().times(scale)), scale, oblique, turn);
  }

  Vec2 paper(Vec3 p) {
    return paper(p, 0);
  }

  /** @param lift metres upwards, to draw what lies on other pieces apart from them; only seen in an oblique view */
  Vec2 paper(Vec3 p, double lift) {
    Vec3 d = p.minus(at);
    if (!oblique) {
      return new Vec2(middle.u() + perMetre * d.x(), middle.v() - perMetre * d.y());
    }
    Vec3 t = turned(d);
    return new Vec2(middle.u() + perMetre * t.x(), middle.v() - perMetre * (DOWN * t.y() + ACROSS * (d.z() + lift)));
  }

  List<Vec2> paper(List<Vec3> points, double lift) {
    return points.stream().map(p -> paper(p, lift)).toList();
  }

  /** How near a place is to who looks, metres from the node. */
  double nearness(Vec3 p) {
    return facing(p.minus(at));
  }

  /** Cosine of the angle between a unit vector and the way to who looks. */
  double facing(Vec3 direction) {
    return oblique ? -ACROSS * turned(direction).y() + DOWN * direction.z() : direction.z();
  }

  private Vec3 turned(Vec3 d) {
    return new Vec3(d.x() * StrictMath.cos(turn) - d.y() * StrictMath.sin(turn),
        d.x() * StrictMath.sin(turn) + d.y() * StrictMath.cos(turn),
        d.z());
  }
}
