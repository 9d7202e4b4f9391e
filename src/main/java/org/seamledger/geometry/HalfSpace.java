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
    return part(window, 1, plane, coincidence, side, window);
  }

  @Override
  public Region takenFrom(Region kept, Plane plane, double coincidence, SectionSide side, Region window) {
    return part(kept, -1, plane, coincidence, side, window);
  }

  /** @param which 1 for the part of the region in the material, -1 for that outside of it */
  private Region part(Region region, int which, Plane plane, double coincidence, SectionSide side, Region window) {
    // In-plane, the boundary is the line  a·u + b·v = c  with the material where a·u + b·v < c.
    double a = outward.dot(plane.u());
    double b = outward.dot(plane.v());
    double c = outward.dot(point.minus(plane.origin()));
    if (Math.hypot(a, b) < PARALLEL) {
      double gap = c - a * window.centreU() - b * window.centreV();
      if (Math.abs(gap) <= coincidence) {
        double step = side == SectionSide.BELOW ? -1 : 1;
        gap = -step * Math.signum(outward.dot(plane.normal()));
      }
      return gap > 0 == which > 0 ? region : Region.EMPTY;
    }
    return region.cut(which * a, which * b, which * c);
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
