package org.seamledger.export.node;

import java.util.Comparator;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.node.LineSort;
import org.seamledger.node.NodePart;

/** How far the longest piece reaches along each sort of line, beside the line in a plan. Figures are true lengths, along the slope. */
final class NodeDimensions {

  /** Draws none. */
  static final NodeDimensions NONE = new NodeDimensions(null, null);

  private static final double BESIDE = 5;
  private static final double SHORTEST = 9;
  private static final double TICK = 1;

  private final NodeScene scene;
  private final DrawingUnits units;

  NodeDimensions(NodeScene scene, DrawingUnits units) {
    this.scene = scene;
    this.units = units;
  }

  void draw(NodeView view, Svg svg) {
    if (scene == null) {
      return;
    }
    Set<LineSort> sorts = new HashSet<>();
    for (Arm arm : scene.arms()) {
      Optional<NodePart> part = scene.node().kind().content().parts().stream()
          .filter(p -> p.shape() != NodePart.Shape.END && p.liesOn(arm.line().sort())).max(Comparator.comparingDouble(NodePart::lengthM));
      if (part.isPresent() && sorts.add(arm.line().sort())) {
        draw(view, arm, part.get().lengthM(), svg);
      }
    }
  }

  private void draw(NodeView view, Arm arm, double lengthM, Svg svg) {
    Vec2 from = view.paper(scene.at());
    Vec2 to = view.paper(scene.at().plus(arm.way().times(lengthM)));
    double length = from.distance(to);
    if (length < SHORTEST) {
      return;
    }
    Vec2 along = to.minus(from).times(1 / length);
    // On the side where the piece has no flange, if there is one.
    boolean flangeLeft = arm.sides().size() == 1
        && view.paper(scene.at().plus(arm.sides().get(0))).minus(from).dot(along.left()) > 0;
    Vec2 off = along.left().times(flangeLeft ? -BESIDE : BESIDE);
    for (Vec2 end : new Vec2[] {from, to}) {
      svg.line("dim", end, end.plus(off.times(1.2)));
      Vec2 tick = along.plus(along.left()).times(TICK * 0.7);
      svg.line("dim", end.plus(off).minus(tick), end.plus(off).plus(tick));
    }
    svg.line("dim", from.plus(off), to.plus(off));
    double degrees = -Math.toDegrees(StrictMath.atan2(along.v(), along.u()));
    double upright = degrees > 90 ? degrees - 180 : degrees <= -90 ? degrees + 180 : degrees;
    double t = Math.toRadians(upright);
    Vec2 up = new Vec2(-StrictMath.sin(t), -StrictMath.cos(t));
    svg.turned("dim-text halo", from.plus(to).times(0.5).plus(off).plus(up.times(0.8)), upright, units.small(lengthM));
  }
}
