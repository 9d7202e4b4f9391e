package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Solid.Surface;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Tolerance;
import org.seamledger.progress.Progress;

/** In every plane that an element has: the element's section just below the plane less that just above it is its top surface there. */
final class OwnSurface {

  /** What is narrower (metres) is rounding of the overlays. */
  private static final double HAIR = 1e-4;

  private final MeshCurves curves;
  private final Tolerance tolerance;
  private final SurfaceLimits.Tops limits;

  OwnSurface(MeshCurves curves, Tolerance tolerance, SurfaceLimits.Tops limits) {
    this.curves = curves;
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /** The top surface in each plane that has some, in the order of the planes. */
  List<TopSurface> of(List<SurfacePlanes.Carried> planes, Progress progress) {
    List<TopSurface> tops = new ArrayList<>();
    for (int i = 0; i < planes.size(); i++) {
      List<TopSurface.Piece> pieces = pieces(planes.get(i), progress.part(i, planes.size()));
      Region own = Region.unionOf(pieces.stream().map(TopSurface.Piece::region).toList());
      if (!own.isEmpty()) {
        tops.add(new TopSurface(planes.get(i).plane(), bridged(planes.get(i).plane(), own), own, pieces, List.of()));
      }
    }
    return tops;
  }

  private List<TopSurface.Piece> pieces(SurfacePlanes.Carried carried, Progress progress) {
    Plane plane = carried.plane();
    List<TopSurface.Piece> pieces = new ArrayList<>();
    for (Map.Entry<Part, List<Surface>> carrier : progress.over(carried.carriers().entrySet())) {
      Part part = carrier.getKey();
      Region window = TopSurface.window(plane, part.box());
      Region top = top(part.solid(), plane, window);
      Region own = carrier.getValue().stream().anyMatch(curves::holds) ? withCurve(part, carrier.getValue(), top, plane, window)
          : carriedBy(carrier.getValue(), withoutSpecks(top), plane);
      if (!own.isEmpty()) {
        pieces.add(new TopSurface.Piece(part, own));
      }
    }
    return pieces;
  }

  /**
   * Triangles of a curve that lie on top count whole, just as they are, less the element's openings: a section lacks strips beside their
   * neighbours, which lie in the plane, too, as far as it can tell.
   */
  private Region withCurve(Part part, List<Surface> surfaces, Region top, Plane plane, Region window) {
    List<Region> triangles = surfaces.stream().filter(curves::holds).map(s -> inPlane(s, plane)).toList();
    Region onTop = part.solid() instanceof Mesh ? top : top(part.mesh(), plane, window);
    Region own = Region.unionOf(triangles.stream().filter(t -> onTop.sharesMoreThan(t.area() / 2, t)).toList());
    if (part.solid() instanceof Solid.Difference cut) {
      own = withoutSpecks(own.minus(cut.tool().section(plane, tolerance.coincidenceM(), SectionSide.BELOW, window)));
    }
    List<Surface> others = surfaces.stream().filter(s -> !curves.holds(s)).toList();
    return others.isEmpty() ? own
        : own.union(carriedBy(others, withoutSpecks(top.minus(Region.unionOf(triangles))), plane));
  }

  private Region top(Solid solid, Plane plane, Region window) {
    Region below = solid.section(plane, tolerance.coincidenceM(), SectionSide.BELOW, window);
    return below.isEmpty() ? below : below.minus(solid.section(plane, tolerance.coincidenceM(), SectionSide.ABOVE, window));
  }

  /** Whether a surface is a part of a curve as its element's triangles have it. */
  boolean isMeshed(TopSurface top) {
    return curves.isCurved(top.plane());
  }

  private static Region inPlane(Surface s, Plane plane) {
    return Region.polygon(s.corners().stream().map(p -> new Vec2(plane.u(p), plane.v(p))).toList());
  }

  /**
   * Without what lies in the plane, too, but belongs to a plane of its own: a narrow facet beside a fold is within the coincidence of two
   * planes, and would count in both.
   */
  private Region carriedBy(List<Surface> surfaces, Region top, Plane plane) {
    if (top.isEmpty() || !surfaces.stream().allMatch(Surface::isBounded)) {
      return top;
    }
    Region carried = Region.unionOf(surfaces.stream().map(s -> inPlane(s, plane)).toList());
    if (withoutHairs(top.minus(carried)).isEmpty()) {
      return top;
    }
    // Cracks between triangles belong to neither of them.
    double crack = tolerance.coincidenceM();
    Region others = withoutHairs(top.minus(carried.grown(crack).grown(-crack)));
    return others.isEmpty() ? top : withoutSpecks(top.minus(others));
  }

  private static Region withoutHairs(Region region) {
    return Region.unionOf(region.parts().stream().filter(p -> !p.isNarrowerThan(HAIR)).toList());
  }

  /** Without pieces that are left over by rounding. */
  Region withoutSpecks(Region region) {
    return Region.unionOf(region.parts().stream()
        .filter(p -> p.area() > limits.speckM2() && !p.isNarrowerThan(limits.speckWidthM())).toList());
  }

  /** The surface of a plane from the pieces that a step left of it. */
  TopSurface bridged(Plane plane, List<TopSurface.Piece> pieces) {
    Region own = bridged(plane, Region.unionOf(pieces.stream().map(TopSurface.Piece::region).toList()));
    return new TopSurface(plane, own, own, pieces, List.of());
  }

  /** Pieces of one plane that touch across a small gap are one; between those of a curve there are others of it. */
  private Region bridged(Plane plane, Region region) {
    List<Region> pieces = region.parts();
    if (pieces.size() < 2 || curves.isCurved(plane)) {
      return region;
    }
    Region closed = region.grown(tolerance.gapM() / 2).grown(-tolerance.gapM() / 2);
    return closed.parts().size() < pieces.size() ? closed.union(region) : region;
  }
}
