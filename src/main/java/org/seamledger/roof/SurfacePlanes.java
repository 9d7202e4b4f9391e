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

  /** Steeper than this is no roof: mansards end at about 80 degrees. */
  private static final double MIN_NORMAL_Z = Math.cos(Math.toRadians(85));
  /** Normals of planes that lie together differ by no more (radians). */
  private static final double SAME_NORMAL = Math.toRadians(0.2);
  private static final double CELL = 0.02;
  /** Triangles smaller than this (square metres) say nothing reliable about a plane. */
  private static final double MIN_AREA = 1e-4;

  /** A plane and the elements that have a surface in it. */
  record Carried(Plane plane, Set<Part> carriers) {
  }

  private record Found(Surface surface, Part part) {
  }

  private final Tolerance tolerance;
  private final List<Carried> planes = new ArrayList<>();
  private final Map<Long, List<Carried>> cells = new HashMap<>();

  private SurfacePlanes(Tolerance tolerance) {
    this.tolerance = tolerance;
  }

  static List<Carried> of(List<Part> parts, Tolerance tolerance) {
    SurfacePlanes all = new SurfacePlanes(tolerance);
    all.surfaces(parts).forEach(all::join);
    return all.planes;
  }

  private List<Found> surfaces(List<Part> parts) {
    List<Found> found = new ArrayList<>();
    for (Part part : parts) {
      part.solid().eachSurface(s -> {
        if (Math.abs(s.plane().normal().z()) > MIN_NORMAL_Z && (s.area() == 0 || s.area() > MIN_AREA)) {
          found.add(new Found(s.plane().normal().z() < 0 ? new Surface(s.plane().flipped(), s.at(), s.area()) : s, part));
        }
      });
    }
    found.sort(Comparator.<Found>comparingDouble(f -> -Math.rint(f.surface().area() * 1e6))
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
              && c.plane().normal().cross(n).length() < SAME_NORMAL) {
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

  private static int cell(double x) {
    return (int) Math.floor(x / CELL);
  }

  private static long key(int x, int y) {
    return (long) x << 32 | y & 0xffffffffL;
  }
}
