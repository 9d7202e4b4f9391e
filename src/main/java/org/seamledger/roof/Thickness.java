package org.seamledger.roof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Solid.Surface;
import org.seamledger.geometry.Vec3;

/** How thick roof elements are below a plane of theirs; remembers the elements' surfaces. */
final class Thickness {

  private final SurfaceLimits.Tops limits;
  private final Map<Part, List<Surface>> surfaces = new HashMap<>();

  Thickness(SurfaceLimits.Tops limits) {
    this.limits = limits;
  }

  /** Greatest distance of a surface of the element parallel to and below the plane, up to the limit, metres; zero where there is none. */
  double below(Part part, Plane plane) {
    double most = 0;
    for (Surface s : surfaces.computeIfAbsent(part, Thickness::surfacesOf)) {
      if (s.plane().normal().cross(plane.normal()).length() < Math.sin(Math.toRadians(limits.parallelDegrees()))) {
        double d = -plane.height(s.area() == 0 ? onPlane(s.plane(), part.box().centre()) : s.at());
        if (d > most && d <= limits.thickestM()) {
          most = d;
        }
      }
    }
    return most;
  }

  /** That of the thickest element that carries a surface, metres. */
  double of(TopSurface top) {
    return top.pieces().stream().mapToDouble(p -> below(p.part(), top.plane())).max().orElse(0);
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
