package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.triangulate.polygon.ConstrainedDelaunayTriangulator;

/** Flat polygons as triangles over their own corners: none is added, none left out. */
public final class FlatTriangles {

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private FlatTriangles() {
  }

  /**
   * Counter-clockwise triangles, each three indices into the outer ring's points followed by the holes' in order.
   *
   * @throws IllegalArgumentException if the rings cross themselves or each other, or two corners lie in one place
   */
  public static List<int[]> of(List<Vec2> outer, List<List<Vec2>> holes) {
    return holes.isEmpty() && isConvex(outer) ? fan(outer.size()) : wellShaped(outer, holes);
  }

  /** The same with triangles as little pointed as the corners allow (Delaunay's), to be refined further. */
  public static List<int[]> wellShaped(List<Vec2> outer, List<List<Vec2>> holes) {
    Map<Coordinate, Integer> index = new HashMap<>();
    LinearRing shell = ring(outer, index);
    List<LinearRing> inner = new ArrayList<>();
    for (List<Vec2> hole : holes) {
      inner.add(ring(hole, index));
    }
    Polygon polygon = FACTORY.createPolygon(shell, inner.toArray(LinearRing[]::new));
    if (index.size() != outer.size() + holes.stream().mapToInt(List::size).sum() || !polygon.isValid()) {
      throw new IllegalArgumentException("the outline crosses or touches itself");
    }
    Geometry parts = Overlays.guarded(() -> ConstrainedDelaunayTriangulator.triangulate(polygon));
    List<int[]> triangles = new ArrayList<>();
    for (int i = 0; i < parts.getNumGeometries(); i++) {
      Coordinate[] c = parts.getGeometryN(i).getCoordinates();
      int[] t = {index.get(c[0]), index.get(c[1]), index.get(c[2])};
      boolean left = (c[1].x - c[0].x) * (c[2].y - c[0].y) - (c[2].x - c[0].x) * (c[1].y - c[0].y) > 0;
      triangles.add(left ? t : new int[] {t[0], t[2], t[1]});
    }
    return triangles;
  }

  private static boolean isConvex(List<Vec2> ring) {
    int n = ring.size();
    double turned = 0;
    for (int i = 0; i < n; i++) {
      Vec2 in = ring.get(i).minus(ring.get((i + n - 1) % n));
      Vec2 out = ring.get((i + 1) % n).minus(ring.get(i));
      double sine = in.cross(out);
      if (sine <= 1e-6 * in.length() * out.length()) {
        return false;
      }
      turned += Math.atan2(sine, in.dot(out));
    }
    return turned < 3 * Math.PI;
  }

  private static List<int[]> fan(int corners) {
    List<int[]> triangles = new ArrayList<>(corners - 2);
    for (int i = 1; i + 1 < corners; i++) {
      triangles.add(new int[] {0, i, i + 1});
    }
    return triangles;
  }

  private static LinearRing ring(List<Vec2> points, Map<Coordinate, Integer> index) {
    Coordinate[] c = new Coordinate[points.size() + 1];
    for (int i = 0; i < points.size(); i++) {
      c[i] = new Coordinate(points.get(i).u(), points.get(i).v());
      index.put(c[i], index.size());
    }
    c[points.size()] = new Coordinate(c[0]);
    return FACTORY.createLinearRing(c);
  }
}
