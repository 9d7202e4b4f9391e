package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/** Looks at the stretches of one closed line together, where what one ends at follows from the others. */
final class RingContacts {

  private final List<ExposedFacet> facets;
  private final PlanIndex<OutlineEdge> index;
  private final SurfaceLimits.Stretches limits;
  private final SurfaceLimits.Penetrating penetrating;

  RingContacts(List<ExposedFacet> facets, PlanIndex<OutlineEdge> index, SurfaceLimits limits) {
    this.facets = facets;
    this.index = index;
    this.limits = limits.stretches();
    this.penetrating = limits.penetrations();
  }

  /** The stretches of a closed line in order, with walls carried on, holes named and slack absorbed. */
  List<BoundaryEdge> settled(List<BoundaryEdge> ring, boolean hole) {
    List<BoundaryEdge> carriedOn = upToTheRoof(ring);
    return absorbed(hole ? asOpening(carriedOn) : carriedOn);
  }

  /** A wall often ends a little below the roof that sits on it: its line goes on, under that roof, to where the roof meets the face. */
  private List<BoundaryEdge> upToTheRoof(List<BoundaryEdge> ring) {
    int n = ring.size();
    List<BoundaryEdge> all = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      BoundaryEdge e = ring.get(i);
      Obstacle.Wall wall = null;
      for (BoundaryEdge beside : List.of(ring.get((i + n - 1) % n), ring.get((i + 1) % n))) {
        if (beside.contact() instanceof Obstacle.Wall w && beside.lengthM() > e.lengthM() && collinear(e, beside)) {
          wall = w;
        }
      }
      all.add(e.contact() instanceof Contact.Free && wall != null && isUnderARoof(e) ? e.with(wall) : e);
    }
    return all;
  }

  private boolean collinear(BoundaryEdge a, BoundaryEdge b) {
    Vec3 d = a.to().minus(a.from()).unit();
    Vec3 e = b.to().minus(b.from()).unit();
    return d.cross(e).length() < limits.collinear() && d.dot(e) > 0;
  }

  /** Whether roof surface lies close above the place just beyond the middle of the stretch. */
  private boolean isUnderARoof(BoundaryEdge e) {
    Vec3 d = e.to().minus(e.from());
    Vec3 out = new Vec3(d.y(), -d.x(), 0).unit().times(limits.beyondM());
    Vec3 beyond = e.from().towards(e.to(), 0.5).plus(out);
    for (OutlineEdge other : index.overlappingInPlan(Box3.of(List.of(beyond)).grown(limits.underRoofM()))) {
      ExposedFacet f = facets.get(other.facet());
      double above = f.plane().elevation(beyond.x(), beyond.y()) - beyond.z();
      if (other.facet() != e.facet() && above > 0 && above < limits.underRoofM()) {
        Vec3 on = new Vec3(beyond.x(), beyond.y(), beyond.z() + above);
        if (f.region().contains(new Vec2(f.plane().u(on), f.plane().v(on)))) {
          return true;
        }
      }
    }
    return false;
  }

  /** A hole in a face that ends at nothing else is an opening, modelled as such or not; or that of a thing that stands in it. */
  private List<BoundaryEdge> asOpening(List<BoundaryEdge> ring) {
    if (ring.stream().anyMatch(e -> !(e.contact() instanceof Contact.Free))) {
      return ring;
    }
    ExposedFacet facet = facets.get(ring.get(0).facet());
    Region hole = Region.polygon(ring.stream().map(e -> new Vec2(facet.plane().u(e.from()), facet.plane().v(e.from()))).toList());
    boolean round = RoundOutline.isRound(hole, penetrating);
    Obstacle contact = new Obstacle.OpenHole("", "", hole, round);
    for (Obstacle o : facet.obstacles()) {
      if (o instanceof Obstacle.Penetration p && p.footprint().sharesMoreThan(penetrating.inHoleShare() * p.footprint().area(), hole)) {
        contact = p.in(hole, round);
        break;
      }
    }
    Obstacle whole = contact;
    return ring.stream().map(e -> e.with(whole)).toList();
  }

  /**
   * Modelling slack leaves tiny stretches at corners: they take the contact of the much longer stretch beside them. A narrow facet of a
   * curve has such edges without any slack.
   */
  private List<BoundaryEdge> absorbed(List<BoundaryEdge> ring) {
    int n = ring.size();
    List<BoundaryEdge> all = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      BoundaryEdge e = ring.get(i);
      BoundaryEdge before = ring.get((i + n - 1) % n);
      BoundaryEdge after = ring.get((i + 1) % n);
      BoundaryEdge longer = taking(before, after);
      boolean tiny = e.lengthM() < (facets.get(e.facet()).asMeshed() ? limits.shortM() : limits.tinyM())
          && longer.lengthM() > limits.tinyRatio() * e.lengthM()
          && !e.contact().sameAs(before.contact()) && !e.contact().sameAs(after.contact());
      all.add(tiny ? e.with(longer.contact()) : e);
    }
    return all;
  }

  /** The longer one; but rather not a line that another facet shares and does not have the stretch between them of. */
  private static BoundaryEdge taking(BoundaryEdge before, BoundaryEdge after) {
    boolean sharedBefore = before.contact() instanceof Contact.OtherFacet;
    boolean sharedAfter = after.contact() instanceof Contact.OtherFacet;
    if (sharedBefore == sharedAfter) {
      return before.lengthM() >= after.lengthM() ? before : after;
    }
    return sharedBefore ? after : before;
  }
}
