package org.seamledger.samples;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/**
 * A circular cylinder.
 *
 * @param base centre of one end
 * @param axis from there to the centre of the other end
 */
public record Cylinder(Vec3 base, Vec3 axis, double radius) implements Body {

  /** Edges of the prism that stands for a cylinder where a representation knows only flat faces: perimeter 0.03 % short. */
  private static final int FACETS = 72;

  @Override
  public Cylinder moved(Transform t) {
    return new Cylinder(t.apply(base), t.applyDirection(axis), radius * t.applyDirection(across()).length());
  }

  @Override
  public Vec3 anchor() {
    return base;
  }

  /** A unit direction at a right angle to the axis. */
  Vec3 across() {
    Vec3 least = Math.abs(axis.x()) <= Math.abs(axis.y()) ? Vec3.X : Vec3.Y;
    return least.cross(axis).unit();
  }

  /** The inscribed prism. */
  Extrusion faceted() {
    Vec3 u = across();
    Vec3 v = axis.unit().cross(u);
    List<Vec3> ring = new ArrayList<>();
    for (int i = 0; i < FACETS; i++) {
      double a = 2 * Math.PI * i / FACETS;
      ring.add(base.plus(u.times(radius * StrictMath.cos(a))).plus(v.times(radius * StrictMath.sin(a))));
    }
    return new Extrusion(ring, List.of(), axis);
  }
}
