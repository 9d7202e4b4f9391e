package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Solid.Surface;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;

/**
 * The planes that can carry a roof's surface: every plane of every element that is not near to vertical, normals turned up, with planes
 * that lie together made one. The largest surface gives the plane; smaller ones join it whose every corner lies in it: where two planes
 * turn by a trace, one point tells nothing of what is ten metres away.
 */
final class SurfacePlanes {

  /** Width of the cells (of normals' components) in which planes are looked for; wider than planes that lie together may turn. */
  private static final double CELL = 0.02;
  /**
   * Share of the coincidence within which a curve's triangles are one plane's: their corners are known, and what meets at one has to stay
   * together.
   */
  private static final double EXACT = 0.1;
  private static final double MM2_PER_M2 = 1e6;

  /** A plane, and the surfaces that each element has in it. */
  record Carried(Plane plane, Map<Part, List<Surface>> carriers) {
    private void add(Found found) {
      carriers.computeIfAbsent(found.part(), k -> new ArrayList<>()).add(found.surface());
    }
  }

  /** A surface, its normal up, and whose it is. */
  record Found(Surface surface, Part part) {
  }

  /** The planes, and the curves that they are parts of. */
  record Planes(List<Carried> planes, MeshCurves curves) {
  }

  private record Corner(Part part, Vec3 at) {
  }

  private final Tolerance tolerance;
  private final SurfaceLimits.Planes limits;
  private final List<Carried> planes = new ArrayList<>();
  private MeshCurves curves;
  private final Map<Long, List<Carried>> cells = new HashMap<>();
  private final Map<Corner, List<Carried>> atCorners = new HashMap<>();

  private SurfacePlanes(Tolerance tolerance, SurfaceLimits.Planes limits) {
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /** The planes, those of the largest surfaces first. */
  static Planes of(List<Part> parts, Tolerance tolerance, SurfaceLimits limits) {
    SurfacePlanes all = new SurfacePlanes(tolerance, limits.planes());
    List<Found> found = all.surfaces(parts);
    all.curves = MeshCurves.of(found, tolerance, limits.faces());
    for (Found f : found) {
      all.curves.carry(all.join(f), f.surface());
    }
    return new Planes(all.planes, all.curves);
  }

  private List<Found> surfaces(List<Part> parts) {
    double leastZ = Math.cos(Math.toRadians(limits.steepestDegrees()));
    List<Found> found = new ArrayList<>();
    for (Part part : parts) {
      part.solid().eachSurface(s -> {
        if (Math.abs(s.plane().normal().z()) > leastZ && (!s.isBounded() || s.area() > limits.leastAreaM2())) {
          found.add(new Found(s.plane().normal().z() < 0 ? s.flipped() : s, part));
        }
      });
    }
    found.sort(Comparator.<Found>comparingDouble(f -> -wholeMm2(f.surface().area()))
        .thenComparing(f -> f.part().id())
        .thenComparingDouble(f -> f.surface().plane().distance())
        .thenComparingDouble(f -> f.surface().plane().normal().x())
        .thenComparingDouble(f -> f.surface().plane().normal().y()));
    return found;
  }

  private Plane join(Found found) {
    Carried carried = Stream.concat(alike(found.surface().plane().normal()), beside(found))
        .filter(c -> liesIn(found, c.plane())).findFirst().orElseGet(() -> fresh(found.surface().plane()));
    carried.add(found);
    for (Vec3 corner : found.surface().corners()) {
      List<Carried> there = atCorners.computeIfAbsent(new Corner(found.part(), corner), k -> new ArrayList<>(2));
      if (!there.contains(carried)) {
        there.add(carried);
      }
    }
    return carried.plane();
  }

  /** Planes that turn little against a normal. */
  private Stream<Carried> alike(Vec3 n) {
    List<Carried> found = new ArrayList<>();
    for (int dx = -1; dx <= 1; dx++) {
      for (int dy = -1; dy <= 1; dy++) {
        found.addAll(cells.getOrDefault(key(cell(n.x()) + dx, cell(n.y()) + dy), List.of()));
      }
    }
    return found.stream().filter(c -> c.plane().normal().cross(n).length() < Math.toRadians(limits.sameDegrees()));
  }

  /** Planes of the same element that reach a corner of the surface: a sliver turns by what coordinates are rounded by. */
  private Stream<Carried> beside(Found found) {
    return found.surface().corners().stream().flatMap(p -> atCorners.getOrDefault(new Corner(found.part(), p), List.of()).stream())
        .filter(c -> c.plane().normal().dot(found.surface().plane().normal()) > 0);
  }

  /** What has no end is looked at over the extent of its element. */
  private boolean liesIn(Found found, Plane plane) {
    Surface s = found.surface();
    return s.isBounded() ? s.liesIn(plane, (curves.holds(s) ? EXACT : 1) * tolerance.coincidenceM())
        : extent(found.part().box(), s.plane()).allMatch(p -> Math.abs(plane.height(p)) <= tolerance.coincidenceM());
  }

  private static Stream<Vec3> extent(Box3 box, Plane plane) {
    return Stream.of(box.minX(), box.maxX())
        .flatMap(x -> Stream.of(box.minY(), box.maxY()).map(y -> new Vec3(x, y, plane.elevation(x, y))));
  }

  private Carried fresh(Plane plane) {
    Carried fresh = new Carried(plane, new LinkedHashMap<>());
    planes.add(fresh);
    cells.computeIfAbsent(key(cell(plane.normal().x()), cell(plane.normal().y())), k -> new ArrayList<>()).add(fresh);
    return fresh;
  }

  /** An area in square millimetres, whole, so that rounding decides no order. */
  static double wholeMm2(double areaM2) {
    return Math.rint(areaM2 * MM2_PER_M2);
  }

  private static int cell(double x) {
    return (int) Math.floor(x / CELL);
  }

  private static long key(int x, int y) {
    return (long) x << 32 | y & 0xffffffffL;
  }
}
