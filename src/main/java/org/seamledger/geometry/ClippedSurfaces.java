package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.List;

/**
 * The surface of a solid as plane polygons, for pictures: nothing may be measured from it. Half-spaces cut polygons off
 * (I. E. Sutherland, G. W. Hodgman, "Reentrant polygon clipping", 1974), and leave the cut open; other bodies that are taken away, such as
 * openings, stay filled.
 */
public final class ClippedSurfaces {

  /** What lies within this distance of a cutting plane, metres, is kept. */
  private static final double SLACK = 1e-9;

  private ClippedSurfaces() {
  }

  /** Corners of each polygon in order, metres, in the coordinates of the solid. */
  public static List<List<Vec3>> of(Solid solid) {
    if (solid instanceof Solid.Union union) {
      return union.parts().stream().flatMap(p -> of(p).stream()).toList();
    }
    if (solid instanceof Solid.Difference difference) {
      return cut(of(difference.body()), difference.tool(), 1);
    }
    if (solid instanceof Solid.Intersection both) {
      return both.first() instanceof HalfSpace ? cut(of(both.second()), both.first(), -1) : cut(of(both.first()), both.second(), -1);
    }
    List<List<Vec3>> polygons = new ArrayList<>();
    solid.eachSurface(s -> {
      if (s.isBounded()) {
        polygons.add(s.corners());
      }
    });
    return polygons;
  }

  /** @param sign 1 keeps what lies outside the tool, −1 what lies in it */
  private static List<List<Vec3>> cut(List<List<Vec3>> polygons, Solid tool, int sign) {
    if (!(tool instanceof HalfSpace half)) {
      return polygons;
    }
    Plane plane = Plane.through(half.point(), half.outward());
    return polygons.stream().map(p -> cut(p, plane, sign)).filter(p -> p.size() > 2).toList();
  }

  private static List<Vec3> cut(List<Vec3> polygon, Plane plane, int sign) {
    List<Vec3> kept = new ArrayList<>();
    for (int i = 0; i < polygon.size(); i++) {
      Vec3 a = polygon.get(i);
      Vec3 b = polygon.get((i + 1) % polygon.size());
      double ha = sign * plane.height(a);
      double hb = sign * plane.height(b);
      if (ha >= -SLACK) {
        kept.add(a);
      }
      if (ha < -SLACK && hb > SLACK || ha > SLACK && hb < -SLACK) {
        kept.add(a.plus(b.minus(a).times(ha / (ha - hb))));
      }
    }
    return kept;
  }
}
