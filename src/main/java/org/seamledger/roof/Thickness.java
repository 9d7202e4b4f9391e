package org.seamledger.roof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Solid.Surface;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/** How thick roof elements are below a plane of theirs; remembers the elements' surfaces. */
final class Thickness {

  private final double coincidenceM;
  private final SurfaceLimits.Tops limits;
  private final Map<Part, List<Surface>> surfaces = new HashMap<>();
  private final Map<Part, Map<Surface, Region>> unbounded = new HashMap<>();
  private final Map<Part, Map<Plane, Double>> known = new HashMap<>();

  Thickness(Tolerance tolerance, SurfaceLimits.Tops limits) {
    this.coincidenceM = tolerance.coincidenceM();
    this.limits = limits;
  }

  /**
   * Greatest distance of a surface of the element parallel to and below a part of a plane, up to the limit, metres; zero where there is
   * none. What lies beside the part, seen along the normal, is no underside of it.
   */
  double below(Part part, Plane plane, Region region) {
    return known.computeIfAbsent(part, p -> new IdentityHashMap<>()).computeIfAbsent(plane, p -> measured(part, plane, region));
  }

  private double measured(Part part, Plane plane, Region region) {
    double most = 0;
    for (Surface s : surfaces.computeIfAbsent(part, Thickness::surfacesOf)) {
      if (s.plane().normal().cross(plane.normal()).length() < Math.sin(Math.toRadians(limits.parallelDegrees()))) {
        double d = -plane.height(s.isBounded() ? s.at() : onPlane(s.plane(), part.box().centre()));
        if (d > most && d <= limits.thickestM() && liesUnder(part, s, plane, region)) {
          most = d;
        }
      }
    }
    return most;
  }

  private boolean liesUnder(Part part, Surface s, Plane plane, Region region) {
    Region under = s.isBounded() ? Region.polygon(s.corners().stream().map(p -> new Vec2(plane.u(p), plane.v(p))).toList())
        : inPlaneOf(s, part).projected(s.plane(), plane, plane.normal());
    return under.sharesMoreThan(Math.min(limits.speckM2(), under.area() / 2), region);
  }

  /** The element's surface in a plane that has no end itself: where there is material on one side of it only. */
  private Region inPlaneOf(Surface s, Part part) {
    return unbounded.computeIfAbsent(part, p -> new IdentityHashMap<>()).computeIfAbsent(s, k -> {
      Region window = TopSurface.window(s.plane(), part.box());
      Region below = part.solid().section(s.plane(), coincidenceM, SectionSide.BELOW, window);
      Region above = part.solid().section(s.plane(), coincidenceM, SectionSide.ABOVE, window);
      return below.minus(above).union(above.minus(below));
    });
  }

  /** That of the thickest element that carries a surface, metres. */
  double of(TopSurface top) {
    return top.pieces().stream().mapToDouble(p -> below(p.part(), top.plane(), p.region())).max().orElse(0);
  }

  private static List<Surface> surfacesOf(Part part) {
    List<Surface> all = new ArrayList<>();
    part.solid().eachSurface(all::add);
    return all;
  }

  private static Vec3 onPlane(Plane plane, Vec3 p) {
    return p.minus(plane.normal().times(plane.height(p)));
  }
}
