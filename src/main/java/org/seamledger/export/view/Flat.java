package org.seamledger.export.view;

import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * A flat polygon in space, seen from both sides; local coordinates, metres.
 *
 * @param owner face id or GlobalId of what it is a part of
 * @param isRoof whether it is a part of the roof
 * @param normal unit normal, pointing to either side
 * @param rings outlines, by the even-odd rule, first corners not repeated
 * @param centre of the sphere that holds it
 * @param radius of that sphere
 */
record Flat(String owner, boolean isRoof, Vec3 normal, List<List<Vec3>> rings, Vec3 centre, double radius) {

  /** Corners nearer than this to each other, in metres, are none. */
  private static final double NEAR = 1e-9;

  static Flat of(String owner, boolean isRoof, Vec3 normal, List<List<Vec3>> rings) {
    List<Vec3> all = rings.stream().flatMap(List::stream).toList();
    Vec3 sum = Vec3.ZERO;
    for (Vec3 p : all) {
      sum = sum.plus(p.times(1.0 / all.size()));
    }
    double radius = 0;
    for (Vec3 p : all) {
      radius = Math.max(radius, p.distance(sum));
    }
    return new Flat(owner, isRoof, normal.unit(), rings, sum, radius);
  }

  /** Whether a ray from a point along a unit direction meets it at more than nothing and less than a length, metres. */
  boolean isHit(Vec3 from, Vec3 direction, double length) {
    Vec3 to = centre.minus(from);
    double along = to.dot(direction);
    if (to.dot(to) - along * along > radius * radius || along < -radius || along > length + radius) {
      return false;
    }
    double facing = normal.dot(direction);
    if (Math.abs(facing) < NEAR) {
      return false;
    }
    double t = normal.dot(rings.get(0).get(0).minus(from)) / facing;
    return t > NEAR && t < length && holds(from.plus(direction.times(t)));
  }

  /** By the even-odd rule, in the plane of the two axes that the polygon is widest in. */
  private boolean holds(Vec3 p) {
    boolean inside = false;
    for (List<Vec3> ring : rings) {
      for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        double[] a = flat(ring.get(i).minus(p));
        double[] b = flat(ring.get(j).minus(p));
        if (a[1] > 0 != b[1] > 0 && a[0] - a[1] * (b[0] - a[0]) / (b[1] - a[1]) > 0) {
          inside = !inside;
        }
      }
    }
    return inside;
  }

  private double[] flat(Vec3 p) {
    double x = Math.abs(normal.x());
    double y = Math.abs(normal.y());
    double z = Math.abs(normal.z());
    return z >= x && z >= y ? new double[] {p.x(), p.y()} : x >= y ? new double[] {p.y(), p.z()} : new double[] {p.x(), p.z()};
  }
}
