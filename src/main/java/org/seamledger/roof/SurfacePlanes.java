package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Solid.Surface;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;

/**
 * The planes that can carry a roof's surface: every plane of every element that is not near to vertical, normals turned up, with planes
 * that lie together made one. The largest surface gives the plane; smaller ones join it.
 */
final class SurfacePlanes {

  /** Width of the cells (of normals' components) in which planes are looked for; wider than planes that lie together may turn. */
  private static final double CELL = 0.02;
  private static final double MM2_PER_M2 = 1e6;

  /** A plane and the elements that have a surface in it. */
  record Carried(Plane plane, Set<Part> carriers) {
  }

  private record Found(Surface surface, Part part) {
  }

  private final Tolerance tolerance;
  private final SurfaceLimits.Planes limits;
  private final List<Carried> planes = new ArrayList<>();
  private final Map<Long, List<Carried>> cells = new HashMap<>();

  private SurfacePlanes(Tolerance tolerance, SurfaceLimits.Planes limits) {
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /** The planes, those of the largest surfaces first. */
  static List<Carried> of(List<Part> parts, Tolerance tolerance, SurfaceLimits.Planes limits) {
    SurfacePlanes all = new SurfacePlanes(tolerance, limits);
    all.surfaces(parts).forEach(all::join);
    return all.planes;
  }

  private List<Found> surfaces(List<Part> parts) {
    double leastZ = Math.cos(Math.toRadians(limits.steepestDegrees()));
    List<Found> found = new ArrayList<>();
    for (Part part : parts) {
      part.solid().eachSurface(s -> {
        if (Math.abs(s.plane().normal().z()) > leastZ && (s.area() == 0 || s.area() > limits.leastAreaM2())) {
          found.add(new Found(s.plane().normal().z() < 0 ? new Surface(s.plane().flipped(), s.at(), s.area()) : s, part));
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

  private void join(Found found) {
    Vec3 n = found.surface().plane().normal();
    Vec3 at = found.surface().area() == 0 ? found.part().box().centre() : found.surface().at();
    Vec3 onPlane = at.minus(n.times(found.surface().plane().height(at)));
    int cx = cell(n.x());
    int cy = cell(n.y());
    for (int dx = -1; dx <= 1; dx++) {
      for (int dy = -1; dy <= 1; dy++) {
        for (Carried c : cells.getOrDefault(key(cx + dx, cy + dy), List.of())) {
          if (Math.abs(c.plane().height(onPlane)) <= tolerance.coincidenceM()
              && c.plane().normal().cross(n).length() < Math.toRadians(limits.sameDegrees())) {
            c.carriers().add(found.part());
            return;
          }
        }
      }
    }
    Carried fresh = new Carried(found.surface().plane(), new LinkedHashSet<>(List.of(found.part())));
    planes.add(fresh);
    cells.computeIfAbsent(key(cx, cy), k -> new ArrayList<>()).add(fresh);
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
