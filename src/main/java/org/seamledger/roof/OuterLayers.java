package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;

/**
 * Of parallel layers on top of each other keeps the outermost: a piece that others cover within the depth of a build-up is an
 * inner one.
 */
final class OuterLayers {

  private final OwnSurface own;
  private final Tolerance tolerance;
  private final SurfaceLimits.Tops limits;

  OuterLayers(OwnSurface own, Tolerance tolerance, SurfaceLimits.Tops limits) {
    this.own = own;
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /** The surfaces without inner layers, in the same order. */
  List<TopSurface> of(List<TopSurface> tops, Progress progress) {
    List<Box3> boxes = tops.stream().map(t -> TopSurface.box(t.plane(), t.own())).toList();
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < tops.size(); i++) {
      numbers.add(i);
    }
    PlanIndex<Integer> near = new PlanIndex<>(numbers, boxes::get);
    List<TopSurface> kept = new ArrayList<>();
    for (int i = 0; i < tops.size(); i++) {
      progress.at(i / (double) tops.size());
      TopSurface top = tops.get(i);
      List<TopSurface> others = near.overlapping(boxes.get(i).grown(limits.buildUpM())).stream().map(tops::get)
          .filter(o -> o != top && isParallel(o, top)).toList();
      if (others.isEmpty()) {
        kept.add(top);
        continue;
      }
      List<TopSurface.Piece> pieces = outer(top, others);
      if (!pieces.isEmpty()) {
        kept.add(own.bridged(top.plane(), pieces));
      }
    }
    return kept;
  }

  private boolean isParallel(TopSurface a, TopSurface b) {
    return a.plane().normal().cross(b.plane().normal()).length() < Math.sin(Math.toRadians(limits.parallelDegrees()));
  }

  private List<TopSurface.Piece> outer(TopSurface top, List<TopSurface> others) {
    List<TopSurface.Piece> pieces = new ArrayList<>();
    for (TopSurface.Piece piece : top.pieces()) {
      Region rest = Region.unionOf(
          piece.region().parts().stream().filter(r -> coveredShare(r, top.plane(), others) < limits.innerShare()).toList());
      if (!rest.isEmpty()) {
        pieces.add(new TopSurface.Piece(piece.part(), rest));
      }
    }
    return pieces;
  }

  private double coveredShare(Region region, Plane plane, List<TopSurface> others) {
    Region covered = Region.EMPTY;
    Vec3 middle = TopSurface.at(plane, region.centroid());
    for (TopSurface o : others) {
      double above = -o.plane().height(middle);
      if (above > tolerance.coincidenceM() && above <= limits.buildUpM()) {
        covered = covered.union(o.own().projected(o.plane(), plane, plane.normal()).intersect(region));
      }
    }
    return covered.area() / region.area();
  }
}
