package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;

/** Drops cut edges and reveals: what is steep against a larger face of the same element and lies within the depth below that face. */
final class CutEdges {

  private final OwnSurface own;
  private final Thickness thickness;
  private final SurfaceLimits.Tops limits;

  CutEdges(OwnSurface own, Thickness thickness, SurfaceLimits.Tops limits) {
    this.own = own;
    this.thickness = thickness;
    this.limits = limits;
  }

  /** The surfaces without cut edges; one that has nothing else goes. */
  List<TopSurface> dropped(List<TopSurface> tops, Progress progress) {
    Map<Part, List<TopSurface>> byPart = Covering.carriers(tops);
    List<TopSurface> kept = new ArrayList<>();
    for (TopSurface top : progress.over(tops)) {
      List<TopSurface.Piece> pieces = new ArrayList<>();
      for (TopSurface.Piece piece : top.pieces()) {
        Region rest = Region.unionOf(piece.region().parts().stream()
            .filter(r -> byPart.get(piece.part()).stream().noneMatch(main -> isCutEdge(r, top.plane(), main, piece.part()))).toList());
        if (!rest.isEmpty()) {
          pieces.add(new TopSurface.Piece(piece.part(), rest));
        }
      }
      if (!pieces.isEmpty()) {
        kept.add(own.bridged(top.plane(), pieces));
      }
    }
    return kept;
  }

  private boolean isCutEdge(Region region, Plane plane, TopSurface main, Part part) {
    Vec3 n = main.plane().normal();
    if (Math.abs(n.dot(plane.normal())) > Math.cos(Math.toRadians(limits.cutEdgeDegrees())) || main.of(part).area() <= region.area()) {
      return false;
    }
    double depth = thickness.below(part, main.plane(), main.of(part));
    return depth != 0 && isWithin(region, plane, main.plane(), depth);
  }

  private boolean isWithin(Region region, Plane plane, Plane main, double depth) {
    for (Region.Ring ring : region.rings()) {
      for (Vec2 p : ring.points()) {
        double h = main.height(TopSurface.at(plane, p));
        if (h > limits.cutEdgeSlackM() || h < -limits.cutEdgeDepth() * depth - limits.cutEdgeSlackM()) {
          return false;
        }
      }
    }
    return true;
  }
}
