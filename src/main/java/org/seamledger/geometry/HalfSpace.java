package org.seamledger.geometry;

import java.util.List;
import java.util.function.Consumer;

/**
 * Everything on one side of a plane: the material lies where {@code outward} does not point to.
 *
 * @param point a point of the bounding plane
 * @param outward unit normal of the bounding plane, out of the material
 */
public record HalfSpace(Vec3 point, Vec3 outward) implements Solid {

  /** Planes that turn by less than this (radians) are parallel here: half a millimetre in ten metres. */
  private static final double PARALLEL = 5e-5;

  public HalfSpace {
    outward = outward.unit();
  }

  @Override
  public Region section(Plane plane, double coincidence, SectionSide side, Region window) {
    // In-plane, the boundary is the line  a·u + b·v = c  with the material where a·u + b·v < c.
    double a = outward.dot(plane.u());
    double b = outward.dot(plane.v());
    double c = outward.dot(point.minus(plane.origin()));
    return isParallel(a, b) ? gap(a, b, c, plane, coincidence, side, window) > 0 ? window : Region.EMPTY : window.cut(a, b, c);
  }

  @Override
  public Region takenFrom(Region kept, Plane plane, double coincidence, SectionSide side, Region window) {
    double a = outward.dot(plane.u());
    double b = outward.dot(plane.v());
    double c = outward.dot(point.minus(plane.origin()));
    return isParallel(a, b) ? gap(a, b, c, plane, coincidence, side, window) > 0 ? Region.EMPTY : kept : kept.cut(-a, -b, -c);
  }

  private static boolean isParallel(double a, double b) {
    return Math.hypot(a, b) < PARALLEL;
  }

  /** How far the material reaches beyond a plane that is parallel to its own; one that coincides lies to that side of it that is asked for. */
  private double gap(double a, double b, double c, Plane plane, double coincidence, SectionSide side, Region window) {
    double gap = c - a * window.centreU() - b * window.centreV();
    double step = side == SectionSide.BELOW ? -1 : 1;
    return Math.abs(gap) <= coincidence ? -step * Math.signum(outward.dot(plane.normal())) : gap;
  }

  @Override
  public void eachSurface(Consumer<Surface> consumer) {
    consumer.accept(new Surface(Plane.through(point, outward), point, List.of(), 0));
  }

  @Override
  public Box3 bounds() {
    return Box3.EVERYWHERE;
  }

  @Override
  public Solid transformed(Transform t) {
    // A normal is mapped by the inverse transpose; the sign of the determinant does not turn inside out.
    Transform i = t.inverse();
    Vec3 n = new Vec3(
        i.m00() * outward.x() + i.m10() * outward.y() + i.m20() * outward.z(),
        i.m01() * outward.x() + i.m11() * outward.y() + i.m21() * outward.z(),
        i.m02() * outward.x() + i.m12() * outward.y() + i.m22() * outward.z());
    return new HalfSpace(t.apply(point), n);
  }
}
