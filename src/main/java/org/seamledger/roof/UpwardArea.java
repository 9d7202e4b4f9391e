package org.seamledger.roof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Solid.Surface;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * What of an element's surface looks up, found without the steps that find faces, so that these can be checked by it.
 *
 * <p>Of triangles that all turn one way, those whose normal points up and out count; of an open sheet all. Where the triangles turn
 * either way, or a body is cut by others, sections on both sides of each plane tell.
 */
final class UpwardArea {

  /** Normals and distances (metres) are one plane's that agree to this many steps a unit. */
  private static final double NORMAL_STEPS = 1e5;
  private static final double DISTANCE_STEPS = 1e4;

  /** A flat part of it. */
  record Patch(Plane plane, Region region) {
    Box3 box() {
      return TopSurface.box(plane, region);
    }

    Patch with(Region other) {
      return new Patch(plane, other);
    }
  }

  private final Tolerance tolerance;
  private final SurfaceLimits limits;
  private final double leastZ;

  UpwardArea(Tolerance tolerance, SurfaceLimits limits) {
    this.tolerance = tolerance;
    this.limits = limits;
    this.leastZ = Math.cos(Math.toRadians(limits.planes().steepestDegrees()));
  }

  /** The upward area of a body, its parts by plane in the order of the body's surfaces. */
  List<Patch> of(Solid body) {
    if (body instanceof Solid.Union union) {
      return union.parts().stream().flatMap(p -> of(p).stream()).toList();
    }
    if (body instanceof Mesh mesh) {
      List<Surface> surfaces = surfaces(mesh);
      int turn = mesh.isClosed() ? turn(mesh) : 0;
      if (!mesh.isClosed() || turn != 0) {
        return patches(surfaces.stream().filter(s -> turn == 0 || turn * s.plane().normal().z() > 0).map(UpwardArea::up).toList());
      }
    }
    return bySections(body);
  }

  private List<Surface> surfaces(Solid body) {
    List<Surface> found = new ArrayList<>();
    body.eachSurface(s -> {
      if (Math.abs(s.plane().normal().z()) > leastZ && (!s.isBounded() || s.area() > limits.planes().leastAreaM2())) {
        found.add(s);
      }
    });
    return found;
  }

  private static Surface up(Surface s) {
    return s.plane().normal().z() < 0 ? s.flipped() : s;
  }

  /**
   * 1 where every triangle turns counter-clockwise seen from outside, or there is no inside; -1 where clockwise; 0 where they don't agree.
   */
  private static int turn(Mesh mesh) {
    Map<List<Vec3>, Integer> edges = new HashMap<>();
    double six = 0;
    Vec3 o = mesh.bounds().centre();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        Vec3 a = mesh.corner(t, k);
        Vec3 b = mesh.corner(t, (k + 1) % 3);
        edges.merge(List.of(a, b), 1, Integer::sum);
        edges.merge(List.of(b, a), -1, Integer::sum);
      }
      six += mesh.corner(t, 0).minus(o).dot(mesh.corner(t, 1).minus(o).cross(mesh.corner(t, 2).minus(o)));
    }
    return edges.values().stream().anyMatch(n -> n != 0) ? 0 : six < 0 ? -1 : 1;
  }

  private List<Patch> patches(List<Surface> surfaces) {
    List<Patch> patches = new ArrayList<>();
    byPlane(surfaces).values().forEach(same -> patches.add(new Patch(same.get(0).plane(), flat(same, same.get(0).plane()))));
    return patches.stream().filter(p -> !p.region().isEmpty()).toList();
  }

  private List<Patch> bySections(Solid body) {
    List<Patch> patches = new ArrayList<>();
    Box3 box = body.bounds();
    if (!box.isBounded()) {
      return patches;
    }
    byPlane(surfaces(body).stream().map(UpwardArea::up).toList()).values().forEach(same -> {
      Plane plane = same.get(0).plane();
      Region window = TopSurface.window(plane, box);
      Region below = body.section(plane, tolerance.coincidenceM(), SectionSide.BELOW, window);
      Region top = below.minus(body.section(plane, tolerance.coincidenceM(), SectionSide.ABOVE, window));
      Region own = same.stream().allMatch(Surface::isBounded) ? top.intersect(flat(same, plane)) : top;
      if (!own.isEmpty()) {
        patches.add(new Patch(plane, own));
      }
    });
    return patches;
  }

  private static Map<List<Long>, List<Surface>> byPlane(List<Surface> surfaces) {
    Map<List<Long>, List<Surface>> byPlane = new LinkedHashMap<>();
    for (Surface s : surfaces) {
      Vec3 n = s.plane().normal();
      byPlane.computeIfAbsent(List.of(Math.round(n.x() * NORMAL_STEPS), Math.round(n.y() * NORMAL_STEPS),
          Math.round(s.plane().distance() * DISTANCE_STEPS)), k -> new ArrayList<>()).add(s);
    }
    return byPlane;
  }

  private static Region flat(List<Surface> surfaces, Plane plane) {
    return Region.unionOf(surfaces.stream()
        .map(s -> Region.polygon(s.corners().stream().map(p -> new Vec2(plane.u(p), plane.v(p))).toList())).toList());
  }
}
