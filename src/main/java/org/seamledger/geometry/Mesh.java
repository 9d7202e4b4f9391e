package org.seamledger.geometry;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;

/**
 * A body bounded by triangles, or an open sheet of them; {@link MeshBuilder} collects them. One shell a mesh: two bodies that may
 * overlap are two meshes in a
 * {@link Solid.Union}.
 *
 * <p>Orientation of the triangles does not matter: what is inside follows from the even-odd rule. An open sheet has no inside; its
 * section just below a plane is the sheet's part that lies in that plane, and just above it there is none of that, though the sheet may
 * rise round it as round a drain, but where something of the sheet lies over it. So the first is for what is closed, but no thicker than
 * what lies together: a metal sheet, or two faces back to back.
 */
public final class Mesh implements Solid {

  /** No fewer flat faces than a tetrahedron's bound a volume. */
  private static final int FEWEST_FACES = 4;
  /** Share of the whole area that is left of the area vectors' sum by rounding of coordinates. */
  private static final double CANCELLED = 1e-6;
  /** Twice the area (square metres) below which a triangle's normal is noise. */
  private static final double NO_AREA = 1e-12;

  private final double[] xyz;
  private final int[] triangles;
  private final boolean closed;
  private final boolean wall;
  private final Box3 bounds;

  private Mesh(double[] xyz, int[] triangles, boolean closed) {
    this(xyz, triangles, closed, false);
  }

  private Mesh(double[] xyz, int[] triangles, boolean closed, boolean wall) {
    this.xyz = xyz;
    this.triangles = triangles;
    this.closed = closed || areaVectorsCancel();
    this.wall = wall;
    this.bounds = box(xyz);
  }

  /** The same sheet as a thin wall: where a plane cuts it, it is as wide as what lies together. A closed mesh stays what it is. */
  public Mesh asWall() {
    return closed ? this : new Mesh(xyz, triangles, false, true);
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

  /** A mesh over corners, closed where every edge belongs to an even number of triangles. */
  static Mesh over(double[] xyz, int[] triangles) {
    return new Mesh(xyz, triangles, everyEdgeIsShared(triangles));
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
    return triangles.length >= 3 * FEWEST_FACES && sum.length() < CANCELLED * all;
  }

  static long edgeKey(int i, int j) {
    return (long) Math.min(i, j) << 32 | Math.max(i, j);
  }

  /** True where the triangles bound a volume. */
  public boolean isClosed() {
    return closed;
  }

  /** Number of triangles. */
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
    return over(Arrays.copyOf(points, 3 * count), indices);
  }

  /** Corner {@code k}, 0 to 2, of a triangle, metres. */
  public Vec3 corner(int triangle, int k) {
    return vertex(triangles[triangle * 3 + k]);
  }

  Vec3 vertex(int i) {
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
    return new Mesh(moved, triangles, closed, wall);
  }

  /** Signed distances of all corners from a plane, metres. */
  double[] heights(Plane plane) {
    double[] height = new double[vertexCount()];
    Vec3 n = plane.normal();
    for (int i = 0; i < height.length; i++) {
      height[i] = n.x() * xyz[3 * i] + n.y() * xyz[3 * i + 1] + n.z() * xyz[3 * i + 2] - plane.distance();
    }
    return height;
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
      if (n.length() > NO_AREA) {
        consumer.accept(
            new Surface(Plane.through(corner(t, 0), n), corner(t, 0), List.of(corner(t, 0), corner(t, 1), corner(t, 2)), n.length() / 2));
      }
    }
  }

  /** Normal of a triangle with twice its area (square metres) for length. */
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
  public Region section(Plane plane, double coincidence, SectionSide side, Region window) {
    if (bounds.isEmpty()) {
      return Region.EMPTY;
    }
    MeshSection section = new MeshSection(this, plane, coincidence);
    Region cut = wall ? section.cutSheet(side) : section.crossing(side);
    if (side == SectionSide.ABOVE) {
      return closed || wall || cut.isEmpty() ? cut : cut.minus(new MeshLayers(this, plane, coincidence).bare());
    }
    MeshLayers layers = new MeshLayers(this, plane, coincidence);
    return cut.union(closed ? layers.thin() : layers.lyingIn());
  }
}
