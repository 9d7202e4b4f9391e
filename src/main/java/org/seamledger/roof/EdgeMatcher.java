package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.progress.Progress;
import org.seamledger.roof.Obstacle.RoofSide;

/**
 * Finds for every stretch of every facet's outline what is on its other side: another facet whose outline faces it across no more than
 * the gap, a wall or a penetration whose footprint does, a hole, the side of a roof element, or nothing.
 */
final class EdgeMatcher {

  private final List<ExposedFacet> facets;
  private final Tolerance tolerance;
  private final SurfaceLimits.Stretches limits;
  private final double wallGapM;
  private final Heights heights;
  private final List<OutlineEdge> edges;
  private final PlanIndex<OutlineEdge> index;

  private EdgeMatcher(List<ExposedFacet> facets, Tolerance tolerance, SurfaceLimits limits) {
    this.facets = facets;
    this.tolerance = tolerance;
    this.limits = limits.stretches();
    this.wallGapM = limits.obstacles().wallGapM();
    this.heights = new Heights(tolerance, limits.obstacles());
    this.edges = OutlineEdge.all(facets);
    this.index = new PlanIndex<>(edges, OutlineEdge::box);
  }

  /** The outlines of all facets, each stretch once a facet, in their order. */
  static List<BoundaryEdge> edges(List<ExposedFacet> facets, Tolerance tolerance, SurfaceLimits limits, Progress progress) {
    EdgeMatcher matcher = new EdgeMatcher(facets, tolerance, limits);
    RingContacts together = new RingContacts(facets, matcher.index, limits);
    List<BoundaryEdge> all = new ArrayList<>();
    List<BoundaryEdge> ring = new ArrayList<>();
    for (int i = 0; i < matcher.edges.size(); i++) {
      progress.at(i / (double) matcher.edges.size());
      OutlineEdge edge = matcher.edges.get(i);
      ring.addAll(matcher.matched(edge));
      if (i + 1 == matcher.edges.size() || matcher.edges.get(i + 1).ring() != edge.ring()) {
        all.addAll(together.settled(List.copyOf(ring), edge.hole()));
        ring.clear();
      }
    }
    return all;
  }

  private List<BoundaryEdge> matched(OutlineEdge edge) {
    Beside beside = new Beside(edge, limits, wallGapM);
    ExposedFacet facet = facets.get(edge.facet());
    for (OutlineEdge other : index.overlapping(edge.box().grown(tolerance.gapM()))) {
      if (other.facet() == edge.facet()) {
        continue;
      }
      if (facet.goesOnIn(facets.get(other.facet()), tolerance)) {
        beside.addBeyond(other, tolerance.gapM(), facet.plane().normal(), tolerance.coincidenceM());
      } else {
        beside.add(other, tolerance.gapM());
      }
    }
    for (Obstacle o : facet.obstacles()) {
      beside.add(o, tolerance.gapM());
    }
    for (TopSurface.Piece p : facet.top().crossing()) {
      beside.add(new RoofSide(p.part().id(), p.part().element().ifcClass(), p.region(), 0), 2 * tolerance.coincidenceM());
    }
    List<BoundaryEdge> matched = new ArrayList<>();
    for (Beside.Stretch s : beside.best()) {
      Contact contact = s.contact() instanceof RoofSide side ? orNothing(measured(side, facet, edge, s), facet) : s.contact();
      matched.add(new BoundaryEdge(edge.facet(), edge.at(s.from()), edge.at(s.to()), contact, elementsAt(facet, edge.inPlane(s.middle()))));
    }
    return matched;
  }

  /** An element's own body that doesn't rise above its surface is no wall there: the next facet of a curve comes close above the plane. */
  private static Contact orNothing(RoofSide side, ExposedFacet facet) {
    boolean own = facet.top().pieces().stream().anyMatch(p -> p.part().id().equals(side.globalId()));
    return own && side.heightM() == 0 ? Contact.Free.EDGE : side;
  }

  /** The side of a roof element gets its height: how far its body goes up just beyond the middle of the stretch. */
  private RoofSide measured(RoofSide side, ExposedFacet facet, OutlineEdge edge, Beside.Stretch s) {
    Vec2 along = edge.q().minus(edge.p()).times(1 / edge.q().distance(edge.p()));
    Vec2 beyond = edge.inPlane(s.middle()).minus(along.left().times(limits.besideM()));
    double height = facet.top().crossing().stream().filter(p -> p.part().id().equals(side.globalId())).findFirst()
        .map(p -> heights.above(p.part().solid(), facet.plane(), beyond)).orElse(0.0);
    return new RoofSide(side.globalId(), side.ifcClass(), side.footprint(), height);
  }

  /** The elements whose surface is near a place of the outline, or the nearest one. */
  private List<String> elementsAt(ExposedFacet facet, Vec2 mid) {
    List<String> ids = facet.top().pieces().stream()
        .filter(p -> p.region().distance(mid) <= 2 * tolerance.gapM()).map(p -> p.part().id()).distinct().sorted().toList();
    return ids.isEmpty()
        ? facet.top().pieces().stream().min(Comparator.comparingDouble(p -> p.region().distance(mid))).map(p -> List.of(p.part().id()))
            .orElse(List.of())
        : ids;
  }
}
