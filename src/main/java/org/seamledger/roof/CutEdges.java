package org.seamledger.roof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;

/** Drops cut edges and reveals: what is steep against a larger face of the same element and lies within the depth below that face. */
final class CutEdges {

  private final OwnSurface own;
  private final Thickness thickness;
  private final Tolerance tolerance;
  private final SurfaceLimits.Tops limits;

  CutEdges(OwnSurface own, Thickness thickness, Tolerance tolerance, SurfaceLimits.Tops limits) {
    this.own = own;
    this.thickness = thickness;
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /** The surfaces without cut edges; one that has nothing else goes. */
  List<TopSurface> dropped(List<TopSurface> tops, Progress progress) {
    Map<Part, List<TopSurface>> byPart = Covering.carriers(tops);
    SmoothAreas areas = new SmoothAreas(tops, tolerance);
    List<TopSurface> kept = new ArrayList<>();
    for (TopSurface top : progress.over(tops)) {
      List<TopSurface.Piece> pieces = new ArrayList<>();
      Map<Part, Integer> numbers = new HashMap<>();
      for (TopSurface.Piece piece : top.pieces()) {
        List<Region> rest = new ArrayList<>();
        for (Region r : piece.region().parts()) {
          int number = numbers.merge(piece.part(), 1, Integer::sum) - 1;
          if (byPart.get(piece.part()).stream().noneMatch(main -> isCutEdge(r, top, main, piece.part())
              && areas.isSmaller(piece.part(), top, number, r.area(), main))) {
            rest.add(r);
          }
        }
        if (!rest.isEmpty()) {
          pieces.add(new TopSurface.Piece(piece.part(), Region.unionOf(rest)));
        }
      }
      if (!pieces.isEmpty()) {
        kept.add(own.bridged(top.plane(), pieces));
      }
    }
    return kept;
  }

  private boolean isCutEdge(Region region, TopSurface top, TopSurface main, Part part) {
    Vec3 n = main.plane().normal();
    if (Math.abs(n.dot(top.plane().normal())) > Math.cos(Math.toRadians(limits.cutEdgeDegrees()))) {
      return false;
    }
    double depth = thickness.below(part, main.plane(), main.of(part));
    return depth != 0 && isWithin(region, top.plane(), main.plane(), depth);
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
