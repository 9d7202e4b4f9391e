package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Scene;
import org.seamledger.progress.Progress;

/** One step of the roof at a time over a small scene, with the default tolerance and limits. */
final class Steps {

  static final Tolerance TOLERANCE = Tolerance.DEFAULT;
  static final SurfaceLimits LIMITS = SurfaceLimits.DEFAULT;
  static final MeshCurves NO_CURVES = MeshCurves.of(List.of(), TOLERANCE, LIMITS.faces());
  static final Plane LEVEL = Plane.through(Vec3.ZERO, Vec3.Z);

  private Steps() {
  }

  static List<Part> parts(Scene scene) {
    return scene.roofs().stream().map(Part::roof).toList();
  }

  static OwnSurface own() {
    return new OwnSurface(NO_CURVES, TOLERANCE, LIMITS.tops());
  }

  static List<TopSurface> ownSurface(Scene scene) {
    SurfacePlanes.Planes planes = SurfacePlanes.of(parts(scene), TOLERANCE, LIMITS);
    return new OwnSurface(planes.curves(), TOLERANCE, LIMITS.tops()).of(planes.planes(), Progress.NONE);
  }

  static List<TopSurface> tops(Scene scene) {
    return TopSurfaceFinder.find(parts(scene), new Thickness(TOLERANCE, LIMITS.tops()), TOLERANCE, LIMITS, Progress.NONE).tops();
  }

  static List<Obstacle> obstacles(Scene scene, TopSurface top) {
    List<Part> neighbours = scene.neighbours().stream().map(Part::neighbour).toList();
    return new ObstacleFinder(new PlanIndex<>(neighbours, Part::box), new PlanIndex<>(parts(scene), Part::box), TOLERANCE, LIMITS)
        .find(top, Progress.NONE);
  }

  static TopSurface surface(Plane plane, Region region) {
    Part part = parts(new Scene().slab("any", new Vec3(0, 0, -0.2), 0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0)).get(0);
    return TopSurface.of(plane, List.of(new TopSurface.Piece(part, region)));
  }

  static ExposedFacet facet(Plane plane, Region region, double thicknessM, Obstacle... obstacles) {
    return new ExposedFacet(plane, region, surface(plane, region), List.of(obstacles), thicknessM, false);
  }

  static double area(List<TopSurface> tops) {
    return tops.stream().mapToDouble(t -> t.own().area()).sum();
  }
}
