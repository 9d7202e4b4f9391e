package org.seamledger.site;

import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Vec3;

/** Whether two models' roofs are two roofs in one place: of like extent, overlapping, and hardly any plane in common. */
final class RoofClash {

  /** Surfaces of one build-up are parallel within this (radians) and this far apart at most (metres). */
  private static final double PARALLEL = Math.toRadians(3);
  private static final double BUILD_UP = 0.6;

  private RoofClash() {
  }

  static boolean isBetween(Footprint a, Footprint b) {
    Box3 p = around(a.roofs());
    Box3 q = around(b.roofs());
    if (p.isEmpty() || q.isEmpty()) {
      return false;
    }
    double common = plan(p.intersection(q));
    return common > 0.3 * Math.min(plan(p), plan(q)) && common > 0.2 * Math.max(plan(p), plan(q)) && !hasPlaneInCommon(a, b);
  }

  private static Box3 around(List<Footprint.Slope> roofs) {
    return roofs.stream().map(Footprint.Slope::box).reduce(Box3.EMPTY, Box3::union);
  }

  private static double plan(Box3 b) {
    return b.isEmpty() ? 0 : (b.maxX() - b.minX()) * (b.maxY() - b.minY());
  }

  private static boolean hasPlaneInCommon(Footprint a, Footprint b) {
    return a.roofs().stream().anyMatch(s -> b.roofs().stream().anyMatch(t -> s.box().overlaps(t.box()) && isOneBuildUp(s, t)));
  }

  private static boolean isOneBuildUp(Footprint.Slope s, Footprint.Slope t) {
    Vec3 between = t.at().minus(s.at());
    return s.normal().cross(t.normal()).length() < PARALLEL && Math.abs(between.dot(s.normal())) < BUILD_UP;
  }
}
