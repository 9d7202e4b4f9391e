package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * Takes away from a top surface what stands in it, and the pieces that this hides inside the building.
 *
 * <p>A piece is hidden where other roof surfaces cover it whole and either all of its outline was cut (the attic side of a dormer), or
 * it ends at the underside of a roof that pierces it. A lower roof that runs under an overhang has an outline of its own and ends at no
 * underside: it stays whole.
 */
final class Exposure {

  private final PlanIndex<TopSurface> covers;
  private final MeshCurves curves;
  private final Tolerance tolerance;
  private final SurfaceLimits.Exposed limits;
  private final SurfaceLimits.Tops specks;

  /**
   * @param covers every top surface of the group, cut edges and inner layers among them: all that can cover something
   * @param curves whose narrow facets are no rounding
   */
  Exposure(List<TopSurface> covers, MeshCurves curves, Tolerance tolerance, SurfaceLimits limits) {
    this.curves = curves;
    this.covers = new PlanIndex<>(covers, t -> TopSurface.box(t.plane(), t.own()));
    this.tolerance = tolerance;
    this.limits = limits.exposed();
    this.specks = limits.tops();
  }

  /** The exposed part of a top surface. */
  Region of(TopSurface top, List<Obstacle> obstacles) {
    Region cutters = Region.unionOf(obstacles.stream().map(Obstacle::footprint).toList());
    Region crossing = Region.unionOf(top.crossing().stream().map(TopSurface.Piece::region).toList());
    Region rest = top.free().minus(cutters);
    // Cutters that meet at a corner leave a hair between them by rounding, which would join what is inside with what is outside: the
    // pieces are told apart with grown cutters, and taken from the exact rest.
    Region apart = rest.minus(cutters.union(crossing).grown(limits.hairM()));
    double narrow = curves.isCurved(top.plane()) ? 0 : specks.speckWidthM();
    List<Region> exposed = new ArrayList<>();
    for (Region piece : apart.parts()) {
      if (piece.area() > specks.speckM2() && !piece.isNarrowerThan(narrow) && !isRemnant(piece, cutters, top)
          && !isHidden(piece, top.plane(), cutters, crossing)) {
        exposed.add(rest.intersectGrown(piece, 2 * limits.hairM()));
      }
    }
    return Region.unionOf(exposed);
  }

  /** An edge of an outline: its middle and its length, metres. */
  private record Edge(Vec2 middle, double length) {
  }

  private static List<Edge> edges(Region piece) {
    List<Edge> edges = new ArrayList<>();
    for (Region.Ring ring : piece.rings()) {
      List<Vec2> p = ring.points();
      for (int k = 0; k < p.size(); k++) {
        Vec2 a = p.get(k);
        Vec2 b = p.get((k + 1) % p.size());
        edges.add(new Edge(a.towards(b, 0.5), a.distance(b)));
      }
    }
    return edges;
  }

  private boolean isHidden(Region piece, Plane plane, Region cutters, Region crossing) {
    double own = 0;
    double atCrossing = 0;
    for (Edge edge : edges(piece)) {
      if (crossing.boundaryDistance(edge.middle()) < tolerance.coincidenceM()) {
        atCrossing += edge.length();
      } else if (cutters.boundaryDistance(edge.middle()) >= tolerance.coincidenceM()) {
        own += edge.length();
      }
    }
    return (own < limits.ownEdgeM() || atCrossing > limits.ownEdgeM()) && coveredShare(piece, plane) > limits.coveredShare();
  }

  /**
   * What a wall leaves of a slab that was modelled a little into it; not what it leaves of a curve's facet that was as narrow before, or
   * that has more of the curve beyond it.
   */
  private boolean isRemnant(Region piece, Region cutters, TopSurface top) {
    return piece.isNarrowerThan(tolerance.gapM()) && piece.distance(cutters) < tolerance.coincidenceM()
        && !(curves.isCurved(top.plane()) && (isNarrowItself(top, piece) || goesOn(top.plane(), piece, cutters)));
  }

  /** Whether a piece is narrow because the facet is that it is what is left of. */
  private boolean isNarrowItself(TopSurface top, Region piece) {
    return top.own().parts().stream().filter(p -> p.distance(piece) < tolerance.coincidenceM())
        .allMatch(p -> p.isNarrowerThan(tolerance.gapM()));
  }

  /** Whether more of a piece's own outline is shared with the next facets of its curve than is open. */
  private boolean goesOn(Plane plane, Region piece, Region cutters) {
    double shared = 0;
    for (Edge edge : edges(piece)) {
      if (cutters.boundaryDistance(edge.middle()) >= tolerance.coincidenceM()) {
        boolean isShared = curves.isShared(plane, TopSurface.at(plane, edge.middle()), tolerance.coincidenceM());
        shared += isShared ? edge.length() : -edge.length();
      }
    }
    return shared > 0;
  }

  private double coveredShare(Region piece, Plane plane) {
    Region covered = Region.EMPTY;
    for (TopSurface cover : covers.overlappingInPlan(TopSurface.box(plane, piece))) {
      if (cover.plane() != plane) {
        covered = covered.union(shadow(cover, plane).intersect(piece));
        if (covered.area() > limits.coveredShare() * piece.area()) {
          return 1;
        }
      }
    }
    return covered.area() / piece.area();
  }

  /** Where the other surface lies vertically above the plane, in the plane's coordinates. */
  private Region shadow(TopSurface above, Plane plane) {
    Region all = above.own().projected(above.plane(), plane, Vec3.Z);
    // Height of the other plane over the point (u, v) of this one, times the other normal's z: linear in u and v.
    Vec3 n = above.plane().normal();
    double a = n.dot(plane.u());
    double b = n.dot(plane.v());
    double c = -above.plane().height(plane.origin());
    return all.cut(a, b, c - tolerance.coincidenceM());
  }
}
