package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.triangulate.polygon.PolygonTriangulator;

/**
 * A body bounded by triangles, or an open sheet of them. One shell a mesh: two bodies that may overlap are two meshes in a
 * {@link Solid.Union}.
 *
 * <p>Orientation of the triangles does not matter: what is inside follows from the even-odd rule. An open sheet has no inside; its
 * section just below a plane is the sheet's part that lies in that plane.
 */
public final class Mesh implements Solid {

  private final double[] xyz;
  private final int[] triangles;
  private final boolean closed;
  private final Box3 bounds;

  private Mesh(double[] xyz, int[] triangles, boolean closed) {
    this.xyz = xyz;
    this.triangles = triangles;
    this.closed = closed || areaVectorsCancel();
    this.bounds = box(xyz);
  }

  private static Box3 box(double[] xyz) {
    double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (int i = 0; i < xyz.length; i++) {
      low[i % 3] = Math.min(low[i % 3], xyz[i]);
      high[i % 3] = Math.max(high[i % 3], xyz[i]);
    }
    return new Box3(low[0], low[1], low[2], high[0], high[1], high[2]);
  }

  /** A mesh over corners of which no two lie together, known to bound a volume. */
  static Mesh closed(double[] xyz, int[] triangles) {
    return new Mesh(xyz, triangles, true);
  }

  private static boolean everyEdgeIsShared(int[] triangles) {
    long[] edges = new long[triangles.length];
    for (int t = 0; t < triangles.length; t += 3) {
      for (int k = 0; k < 3; k++) {
        edges[t + k] = edgeKey(triangles[t + k], triangles[t + (k + 1) % 3]);
      }
    }
    Arrays.sort(edges);
    int i = 0;
    while (i + 1 < edges.length && edges[i] == edges[i + 1]) {
      i += 2;
    }
    return i > 0 && i == edges.length;
  }

  /**
   * A closed surface whose faces meet in T-shaped corners shares edges without sharing their ends; its area vectors still add up to
   * nothing, which those of an open sheet don't.
   */
  private boolean areaVectorsCancel() {
    Vec3 sum = Vec3.ZERO;
    double all = 0;
    for (int t = 0; t < triangleCount(); t++) {
      Vec3 a = areaVector(t);
      sum = sum.plus(a);
      all += a.length();
    }
    return triangles.length >= 12 && sum.length() < 1e-6 * all;
  }

  private static long edgeKey(int i, int j) {
    return (long) Math.min(i, j) << 32 | Math.max(i, j);
  }

  /** True where the triangles bound a volume. */
  public boolean isClosed() {
    return closed;
  }

  public int triangleCount() {
    return triangles.length / 3;
  }

  int vertexCount() {
    return xyz.length / 3;
  }

  int index(int triangle, int k) {
    return triangles[3 * triangle + k];
  }

  /** Some of the triangles with the corners that they use. */
  Mesh part(List<Integer> some) {
    int[] renumbered = new int[vertexCount()];
    Arrays.fill(renumbered, -1);
    double[] points = new double[9 * some.size()];
    int[] indices = new int[3 * some.size()];
    int count = 0;
    int at = 0;
    for (int t : some) {
      for (int k = 0; k < 3; k++) {
        int i = index(t, k);
        if (renumbered[i] < 0) {
          System.arraycopy(xyz, 3 * i, points, 3 * count, 3);
          renumbered[i] = count++;
        }
        indices[at++] = renumbered[i];
      }
    }
    return new Mesh(Arrays.copyOf(points, 3 * count), indices, everyEdgeIsShared(indices));
  }

  public Vec3 corner(int triangle, int k) {
    return vertex(triangles[triangle * 3 + k]);
  }

  private Vec3 vertex(int i) {
    return new Vec3(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
  }

  @Override
  public Box3 bounds() {
    return bounds;
  }

  @Override
  public Mesh transformed(Transform t) {
    double[] moved = new double[xyz.length];
    for (int i = 0; i < xyz.length / 3; i++) {
      Vec3 p = t.apply(vertex(i));
      moved[3 * i] = p.x();
      moved[3 * i + 1] = p.y();
      moved[3 * i + 2] = p.z();
    }
    return new Mesh(moved, triangles, closed);
  }

  /** Volume enclosed, cubic metres, by the divergence theorem; only meaningful for a closed, consistently oriented mesh. */
  public double volume() {
    Vec3 o = bounds.isEmpty() ? Vec3.ZERO : bounds.centre();
    double six = 0;
    for (int t = 0; t < triangleCount(); t++) {
      six += corner(t, 0).minus(o).dot(corner(t, 1).minus(o).cross(corner(t, 2).minus(o)));
    }
    return Math.abs(six) / 6;
  }

  @Override
  public void eachSurface(Consumer<Surface> consumer) {
    for (int t = 0; t < triangleCount(); t++) {
      Vec3 n = areaVector(t);
      if (n.length() > 1e-12) {
        consumer.accept(new Surface(Plane.through(corner(t, 0), n), corner(t, 0), n.length() / 2));
      }
    }
  }

  /** Normal of a triangle with twice its area for length. */
  public Vec3 areaVector(int triangle) {
    Vec3 a = corner(triangle, 0);
    return corner(triangle, 1).minus(a).cross(corner(triangle, 2).minus(a));
  }

  /**
   * Vertices within {@code coincidence} of the plane count as lying on the far side of it, so that a face that lies in the plane is
   * reached in the limit and its outline consists of the face's own corners. Each triangle that the plane then separates gives one
   * segment between two mesh edges, and segments that share a mesh edge form closed lines.
   */
  @Override
  public Region section(Plane plane, double coincidence, Side side, Region window) {
    if (bounds.isEmpty()) {
      return Region.EMPTY;
    }
    if (!closed && side == Side.BELOW) {
      return lyingIn(plane, coincidence).union(crossing(plane, coincidence, side));
    }
    return crossing(plane, coincidence, side);
  }

  private Region crossing(Plane plane, double coincidence, Side side) {
    double near = side == Side.BELOW ? coincidence : -coincidence;
    int count = xyz.length / 3;
    double[] height = new double[count];
    boolean any = false;
    boolean all = true;
    for (int i = 0; i < count; i++) {
      height[i] = plane.normal().x() * xyz[3 * i] + plane.normal().y() * xyz[3 * i + 1] + plane.normal().z() * xyz[3 * i + 2]
          - plane.distance();
      boolean above = height[i] > -near;
      any |= above;
      all &= above;
    }
    if (!any || all) {
      return Region.EMPTY;
    }
    Map<Long, List<Long>> links = new LinkedHashMap<>();
    for (int t = 0; t < triangles.length; t += 3) {
      long first = -1;
      for (int k = 0; k < 3; k++) {
        int i = triangles[t + k];
        int j = triangles[t + (k + 1) % 3];
        if (height[i] > -near != height[j] > -near) {
          long key = edgeKey(i, j);
          if (first < 0) {
            first = key;
          } else {
            links.computeIfAbsent(first, x -> new ArrayList<>(2)).add(key);
            links.computeIfAbsent(key, x -> new ArrayList<>(2)).add(first);
          }
        }
      }
    }
    return Region.evenOdd(chains(links, plane, height, coincidence));
  }

  /** Closed lines first joined along shared mesh edges, then, where a mesh is torn, by ends that lie together. */
  private List<List<Vec2>> chains(Map<Long, List<Long>> links, Plane plane, double[] height, double coincidence) {
    List<List<Vec2>> open = new ArrayList<>();
    for (Long start : List.copyOf(links.keySet())) {
      while (links.get(start).size() % 2 == 1) {
        open.add(walk(start, links, plane, height, coincidence));
      }
    }
    List<List<Vec2>> rings = new ArrayList<>(joined(open, coincidence));
    for (Long start : List.copyOf(links.keySet())) {
      while (!links.get(start).isEmpty()) {
        rings.add(walk(start, links, plane, height, coincidence));
      }
    }
    return rings;
  }

  private static List<List<Vec2>> joined(List<List<Vec2>> open, double reach) {
    List<List<Vec2>> rings = new ArrayList<>();
    List<List<Vec2>> rest = new ArrayList<>(open);
    while (!rest.isEmpty()) {
      List<Vec2> ring = new ArrayList<>(rest.remove(0));
      for (int i = 0; i < rest.size(); i++) {
        List<Vec2> piece = rest.get(i);
        Vec2 end = ring.get(ring.size() - 1);
        boolean forward = piece.get(0).distance(end) <= reach;
        if (forward || piece.get(piece.size() - 1).distance(end) <= reach) {
          List<Vec2> next = new ArrayList<>(piece);
          if (!forward) {
            java.util.Collections.reverse(next);
          }
          ring.addAll(next.subList(1, next.size()));
          rest.remove(i);
          i = -1;
        }
      }
      rings.add(ring);
    }
    return rings;
  }

  /** Follows links from {@code start}, using each once, until there is none left where it stands. */
  private List<Vec2> walk(long start, Map<Long, List<Long>> links, Plane plane, double[] height, double coincidence) {
    List<Vec2> chain = new ArrayList<>();
    long here = start;
    chain.add(crossingPoint(here, plane, height, coincidence));
    while (!links.get(here).isEmpty()) {
      List<Long> next = links.get(here);
      long there = next.remove(next.size() - 1);
      links.get(there).remove((Long) here);
      here = there;
      chain.add(crossingPoint(here, plane, height, coincidence));
    }
    return chain;
  }

  private Vec2 crossingPoint(long edge, Plane plane, double[] height, double coincidence) {
    int i = (int) (edge >> 32);
    int j = (int) edge;
    Vec3 p;
    if (Math.abs(height[i]) <= coincidence) {
      p = vertex(i);
    } else if (Math.abs(height[j]) <= coincidence) {
      p = vertex(j);
    } else {
      p = vertex(i).towards(vertex(j), height[i] / (height[i] - height[j]));
    }
    return new Vec2(plane.u(p), plane.v(p));
  }

  private Region lyingIn(Plane plane, double coincidence) {
    List<Region> parts = new ArrayList<>();
    for (int t = 0; t < triangleCount(); t++) {
      List<Vec2> corners = new ArrayList<>(3);
      for (int k = 0; k < 3; k++) {
        Vec3 p = corner(t, k);
        if (Math.abs(plane.height(p)) <= coincidence) {
          corners.add(new Vec2(plane.u(p), plane.v(p)));
        }
      }
      if (corners.size() == 3) {
        parts.add(Region.polygon(corners));
      }
    }
    return Region.unionOf(parts);
  }

  /** Collects faces; corners closer than a micrometre are one. */
  public static final class Builder {

    private static final double WELD = 1e-6;
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private double[] xyz = new double[3 * 16];
    private int count;
    /** First corner of each bucket of cells, and the next one in the same bucket; -1 for none. */
    private int[] first = filled(64);
    private int[] next = new int[16];
    private int[] triangles = new int[3 * 16];
    private int corners;

    private static int[] filled(int size) {
      int[] none = new int[size];
      Arrays.fill(none, -1);
      return none;
    }

    /** Index of the corner at {@code p}. */
    public int vertex(Vec3 p) {
      // A corner within the weld distance lies in one of the eight cells nearest to p.
      double x = p.x() / (4 * WELD);
      double y = p.y() / (4 * WELD);
      double z = p.z() / (4 * WELD);
      long cx = Math.round(x);
      long cy = Math.round(y);
      long cz = Math.round(z);
      for (int k = 0; k < 8; k++) {
        int bucket = bucket(cx + (k & 1) * (x < cx ? -1 : 1), cy + (k >> 1 & 1) * (y < cy ? -1 : 1), cz + (k >> 2) * (z < cz ? -1 : 1));
        for (int i = first[bucket]; i >= 0; i = next[i]) {
          if (at(i).distance(p) <= WELD) {
            return i;
          }
        }
      }
      return added(p, cx, cy, cz);
    }

    private int added(Vec3 p, long cx, long cy, long cz) {
      if (count == next.length) {
        xyz = Arrays.copyOf(xyz, 2 * xyz.length);
        next = Arrays.copyOf(next, 2 * count);
        rehash(4 * next.length);
      }
      xyz[3 * count] = p.x();
      xyz[3 * count + 1] = p.y();
      xyz[3 * count + 2] = p.z();
      enter(count, cx, cy, cz);
      return count++;
    }

    private void rehash(int size) {
      first = filled(size);
      for (int i = 0; i < count; i++) {
        enter(i, Math.round(xyz[3 * i] / (4 * WELD)), Math.round(xyz[3 * i + 1] / (4 * WELD)), Math.round(xyz[3 * i + 2] / (4 * WELD)));
      }
    }

    private void enter(int i, long cx, long cy, long cz) {
      int bucket = bucket(cx, cy, cz);
      next[i] = first[bucket];
      first[bucket] = i;
    }

    private int bucket(long x, long y, long z) {
      long h = (x * 73856093L) ^ (y * 19349663L << 1) ^ (z * 83492791L << 2);
      return (int) (h * 0x9E3779B97F4A7C15L >>> 33) & first.length - 1;
    }

    private Vec3 at(int i) {
      return new Vec3(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
    }

    private void add(int i, int j, int k) {
      if (corners == triangles.length) {
        triangles = Arrays.copyOf(triangles, 2 * corners);
      }
      triangles[corners++] = i;
      triangles[corners++] = j;
      triangles[corners++] = k;
    }

    public Builder triangle(Vec3 a, Vec3 b, Vec3 c) {
      int i = vertex(a);
      int j = vertex(b);
      int k = vertex(c);
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
    public Builder face(List<Vec3> outer, List<List<Vec3>> holes) {
      List<Integer> ring = indices(outer);
      if (ring.size() < 3) {
        return this;
      }
      if (ring.size() == 3 && holes.isEmpty()) {
        add(ring.get(0), ring.get(1), ring.get(2));
        return this;
      }
      Vec3 normal = newell(ring);
      if (normal.length() < 1e-14) {
        return this;
      }
      if (holes.isEmpty() && isConvex(ring, normal)) {
        for (int i = 1; i + 1 < ring.size(); i++) {
          add(ring.get(0), ring.get(i), ring.get(i + 1));
        }
        return this;
      }
      Plane plane = Plane.through(at(ring.get(0)), normal);
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
        addTriangles(PolygonTriangulator.triangulate(polygon), plane, index);
      } else {
        addMended(polygon, plane, index);
      }
      return this;
    }

    /** True where every corner turns the same way by more than a trace; such a face is a fan, and most faces are. */
    private boolean isConvex(List<Integer> ring, Vec3 normal) {
      int n = ring.size();
      double turned = 0;
      for (int i = 0; i < n; i++) {
        Vec3 p = at(ring.get(i));
        Vec3 in = p.minus(at(ring.get((i + n - 1) % n)));
        Vec3 out = at(ring.get((i + 1) % n)).minus(p);
        double sine = in.cross(out).dot(normal) / normal.length();
        if (sine <= 1e-6 * in.length() * out.length()) {
          return false;
        }
        turned += Math.atan2(sine, in.dot(out));
      }
      // A star turns the same way everywhere, too, but more than once.
      return turned < 3 * Math.PI;
    }

    private void addMended(Polygon polygon, Plane plane, Map<Coordinate, Integer> index) {
      Geometry mended = GeometryFixer.fix(polygon);
      for (int i = 0; i < mended.getNumGeometries(); i++) {
        if (mended.getGeometryN(i) instanceof Polygon p && !p.isEmpty()) {
          addTriangles(PolygonTriangulator.triangulate(p), plane, index);
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
      return i != null ? i : vertex(plane.at(c.x, c.y));
    }

    private List<Integer> indices(List<Vec3> ring) {
      List<Integer> indices = new ArrayList<>(ring.size());
      for (Vec3 p : ring) {
        int i = vertex(p);
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
      Vec3 o = at(ring.get(0));
      Vec3 sum = Vec3.ZERO;
      for (int i = 0; i < ring.size(); i++) {
        Vec3 p = at(ring.get(i)).minus(o);
        Vec3 q = at(ring.get((i + 1) % ring.size())).minus(o);
        sum = sum.plus(p.cross(q));
      }
      return sum;
    }

    private LinearRing flatRing(List<Integer> ring, Plane plane, Map<Coordinate, Integer> index) {
      Coordinate[] c = new Coordinate[ring.size() + 1];
      for (int i = 0; i < ring.size(); i++) {
        Vec3 p = at(ring.get(i));
        c[i] = new Coordinate(plane.u(p), plane.v(p));
        index.put(c[i], ring.get(i));
      }
      c[ring.size()] = new Coordinate(c[0]);
      return FACTORY.createLinearRing(c);
    }

    public boolean isEmpty() {
      return corners == 0;
    }

    public Mesh build() {
      int[] all = Arrays.copyOf(triangles, corners);
      return new Mesh(Arrays.copyOf(xyz, 3 * count), all, everyEdgeIsShared(all));
    }
  }
}
