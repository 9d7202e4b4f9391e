package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;

/** Collects faces, in metres, for a {@link Mesh}; corners closer than a micrometre are one. */
public final class MeshBuilder {

  /** Twice the area (square metres) below which a face is nothing. */
  private static final double NO_AREA = 1e-14;
  /** Sine of a turn below which a corner counts as straight. */
  private static final double STRAIGHT = 1e-6;
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final CornerIndex corners = new CornerIndex();
  private int[] triangles = new int[3 * 16];
  private int used;

  private void add(int i, int j, int k) {
    if (used == triangles.length) {
      triangles = Arrays.copyOf(triangles, 2 * used);
    }
    triangles[used++] = i;
    triangles[used++] = j;
    triangles[used++] = k;
  }

  /** A triangle, corners in metres; one of which two corners are the same is left out. */
  public MeshBuilder triangle(Vec3 a, Vec3 b, Vec3 c) {
    int i = corners.indexOf(a);
    int j = corners.indexOf(b);
    int k = corners.indexOf(c);
    if (i != j && j != k && k != i) {
      add(i, j, k);
    }
    return this;
  }

  /**
   * A flat face with holes. Its triangles keep every given corner, so faces that share an edge share its corners too. Corners
   * slightly off the plane are kept where they are.
   *
   * @param outer corners in order, the first not repeated; fewer than three different ones make no face
   */
  public MeshBuilder face(List<Vec3> outer, List<List<Vec3>> holes) {
    Interrupts.check();
    List<Integer> ring = indices(outer);
    if (ring.size() < 3) {
      return this;
    }
    if (ring.size() == 3 && holes.isEmpty()) {
      add(ring.get(0), ring.get(1), ring.get(2));
      return this;
    }
    Vec3 normal = newell(ring);
    if (normal.length() < NO_AREA) {
      return this;
    }
    if (holes.isEmpty() && isConvex(ring, normal)) {
      for (int i = 1; i + 1 < ring.size(); i++) {
        add(ring.get(0), ring.get(i), ring.get(i + 1));
      }
    } else {
      triangulate(ring, holes, normal);
    }
    return this;
  }

  private void triangulate(List<Integer> ring, List<List<Vec3>> holes, Vec3 normal) {
    Plane plane = Plane.through(corners.at(ring.get(0)), normal);
    Map<Coordinate, Integer> index = new HashMap<>();
    LinearRing shell = flatRing(ring, plane, index);
    List<LinearRing> inner = new ArrayList<>();
    for (List<Vec3> hole : holes) {
      List<Integer> h = indices(hole);
      if (h.size() >= 3) {
        inner.add(flatRing(h, plane, index));
      }
    }
    Polygon polygon = FACTORY.createPolygon(shell, inner.toArray(LinearRing[]::new));
    if (polygon.isValid()) {
      addTriangles(Overlays.guarded(() -> PolygonTriangulator.triangulate(polygon)), plane, index);
    } else {
      addMended(polygon, plane, index);
    }
  }

  /** True where every corner turns the same way by more than a trace; such a face is a fan, and most faces are. */
  private boolean isConvex(List<Integer> ring, Vec3 normal) {
    int n = ring.size();
    double turned = 0;
    for (int i = 0; i < n; i++) {
      Vec3 p = corners.at(ring.get(i));
      Vec3 in = p.minus(corners.at(ring.get((i + n - 1) % n)));
      Vec3 out = corners.at(ring.get((i + 1) % n)).minus(p);
      double sine = in.cross(out).dot(normal) / normal.length();
      if (sine <= STRAIGHT * in.length() * out.length()) {
        return false;
      }
      turned += Math.atan2(sine, in.dot(out));
    }
    // A star turns the same way everywhere, too, but more than once.
    return turned < 3 * Math.PI;
  }

  private void addMended(Polygon polygon, Plane plane, Map<Coordinate, Integer> index) {
    Tangles.refuse(polygon.getExteriorRing().getCoordinates());
    Geometry mended = Overlays.guarded(() -> GeometryFixer.fix(polygon));
    for (int i = 0; i < mended.getNumGeometries(); i++) {
      if (mended.getGeometryN(i) instanceof Polygon p && !p.isEmpty()) {
        addTriangles(Overlays.guarded(() -> PolygonTriangulator.triangulate(p)), plane, index);
      }
    }
  }

  private void addTriangles(Geometry parts, Plane plane, Map<Coordinate, Integer> index) {
    for (int i = 0; i < parts.getNumGeometries(); i++) {
      Coordinate[] c = parts.getGeometryN(i).getCoordinates();
      // The triangulator gives clockwise triangles; ours turn with the face's own normal.
      add(corner(c[2], plane, index), corner(c[1], plane, index), corner(c[0], plane, index));
    }
  }

  private int corner(Coordinate c, Plane plane, Map<Coordinate, Integer> index) {
    Integer i = index.get(c);
    return i != null ? i : corners.indexOf(plane.at(c.x, c.y));
  }

  private List<Integer> indices(List<Vec3> ring) {
    List<Integer> indices = new ArrayList<>(ring.size());
    for (Vec3 p : ring) {
      int i = corners.indexOf(p);
      if (indices.isEmpty() || indices.get(indices.size() - 1) != i) {
        indices.add(i);
      }
    }
    while (indices.size() > 1 && indices.get(0).equals(indices.get(indices.size() - 1))) {
      indices.remove(indices.size() - 1);
    }
    return indices;
  }

  /** Area vector of a closed line by Newell's sum; exact for flat faces, the best plane's for others. */
  private Vec3 newell(List<Integer> ring) {
    Vec3 o = corners.at(ring.get(0));
    Vec3 sum = Vec3.ZERO;
    for (int i = 0; i < ring.size(); i++) {
      Vec3 p = corners.at(ring.get(i)).minus(o);
      Vec3 q = corners.at(ring.get((i + 1) % ring.size())).minus(o);
      sum = sum.plus(p.cross(q));
    }
    return sum;
  }

  private LinearRing flatRing(List<Integer> ring, Plane plane, Map<Coordinate, Integer> index) {
    Coordinate[] c = new Coordinate[ring.size() + 1];
    for (int i = 0; i < ring.size(); i++) {
      Vec3 p = corners.at(ring.get(i));
      c[i] = new Coordinate(plane.u(p), plane.v(p));
      index.put(c[i], ring.get(i));
    }
    c[ring.size()] = new Coordinate(c[0]);
    return FACTORY.createLinearRing(c);
  }

  /** Whether no triangle has been collected. */
  public boolean isEmpty() {
    return used == 0;
  }

  /** The mesh of all triangles so far, over their corners in metres. */
  public Mesh build() {
    return Mesh.over(corners.coordinates(), Arrays.copyOf(triangles, used));
  }
}
