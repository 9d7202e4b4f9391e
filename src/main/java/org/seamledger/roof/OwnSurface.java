package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Tolerance;
import org.seamledger.progress.Headway;

/** In every plane that an element has: the element's section just below the plane less that just above it is its top surface there. */
final class OwnSurface {

  private final Tolerance tolerance;
  private final SurfaceLimits.Tops limits;

  OwnSurface(Tolerance tolerance, SurfaceLimits.Tops limits) {
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /** The top surface in each plane that has some, in the order of the planes. */
  List<TopSurface> of(List<SurfacePlanes.Carried> planes, Headway headway) {
    List<TopSurface> tops = new ArrayList<>();
    for (int i = 0; i < planes.size(); i++) {
      List<TopSurface.Piece> pieces = pieces(planes.get(i), headway.part(i, planes.size()));
      Region own = Region.unionOf(pieces.stream().map(TopSurface.Piece::region).toList());
      if (!own.isEmpty()) {
        tops.add(new TopSurface(planes.get(i).plane(), bridged(own), own, pieces, List.of()));
      }
    }
    return tops;
  }

  private List<TopSurface.Piece> pieces(SurfacePlanes.Carried carried, Headway headway) {
    Plane plane = carried.plane();
    List<TopSurface.Piece> pieces = new ArrayList<>();
    for (Part part : headway.over(carried.carriers())) {
      Region window = TopSurface.window(plane, part.box());
      Region below = part.solid().section(plane, tolerance.coincidenceM(), SectionSide.BELOW, window);
      Region top = below.isEmpty() ? below
          : withoutSpecks(below.minus(part.solid().section(plane, tolerance.coincidenceM(), SectionSide.ABOVE, window)));
      if (!top.isEmpty()) {
        pieces.add(new TopSurface.Piece(part, top));
      }
    }
    return pieces;
  }

  /** Without pieces that are left over by rounding. */
  Region withoutSpecks(Region region) {
    return Region.unionOf(region.parts().stream()
        .filter(p -> p.area() > limits.speckM2() && !p.isNarrowerThan(limits.speckWidthM())).toList());
  }

  /** The surface of a plane from the pieces that a step left of it. */
  TopSurface bridged(Plane plane, List<TopSurface.Piece> pieces) {
    Region own = bridged(Region.unionOf(pieces.stream().map(TopSurface.Piece::region).toList()));
    return new TopSurface(plane, own, own, pieces, List.of());
  }

  /** Pieces of one plane that touch across a small gap are one. */
  private Region bridged(Region region) {
    List<Region> pieces = region.parts();
    if (pieces.size() < 2) {
      return region;
    }
    Region closed = region.grown(tolerance.gapM() / 2).grown(-tolerance.gapM() / 2);
    return closed.parts().size() < pieces.size() ? closed.union(region) : region;
  }
}
