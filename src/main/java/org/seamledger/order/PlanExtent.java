package org.seamledger.order;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

/** How wide a roof is in plan. */
final class PlanExtent {

  private PlanExtent() {
  }

  /** The shorter side of the smallest rectangle along a face's eave direction that holds the whole roof, metres; 0 without faces. */
  static double leastM(List<RoofFace> faces) {
    List<Vec3> points = new ArrayList<>();
    List<Vec3> directions = new ArrayList<>();
    for (RoofFace face : faces) {
      for (Facet facet : face.facets()) {
        facet.area().rings().forEach(r -> r.points().forEach((Vec2 p) -> points.add(facet.plane().at(p.u(), p.v()))));
        Vec3 along = new Vec3(facet.plane().u().x(), facet.plane().u().y(), 0);
        if (along.planLength() > 1e-6 && directions.stream().noneMatch(d -> isSame(d, along.unit()))) {
          directions.add(along.unit());
        }
      }
    }
    double area = Double.POSITIVE_INFINITY;
    double least = 0;
    for (Vec3 d : directions) {
      double along = extent(points, d);
      double across = extent(points, new Vec3(-d.y(), d.x(), 0));
      if (along * across < area - 1e-6) {
        area = along * across;
        least = Math.min(along, across);
      }
    }
    return least;
  }

  /** The same rectangle, to a tenth of a degree. */
  private static boolean isSame(Vec3 a, Vec3 b) {
    return Math.abs(a.dot(b) * a.cross(b).z()) < 1e-3;
  }

  private static double extent(List<Vec3> points, Vec3 direction) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Vec3 p : points) {
      low = Math.min(low, p.dot(direction));
      high = Math.max(high, p.dot(direction));
    }
    return high - low;
  }
}
