package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * Finds what lies across a narrow gap from stretches of outline that seem to end in the open, or at a side of their own element. Where a
 * curve is cut into narrow triangles, slivers among them are left out as rounding; the edges on both sides of one may run at any angle to
 * each other, so that neither faces the other.
 */
final class NarrowGaps {

  /** The gap is looked across at its width and at halves of it, down to what lies together. */
  private static final int HALVES = 4;

  /** A stretch of outline as it was matched, and its parts with what lies across the gap. */
  record Stretch(BoundaryEdge matched, List<BoundaryEdge> across) {
  }

  /** Another facet lies beyond the edge between two shares of its length, so far (metres) from it. */
  private record Beyond(double from, double to, int facet, double distanceM) {
    boolean holds(double t) {
      return from <= t && t <= to;
    }
  }

  private final List<ExposedFacet> facets;
  private final Tolerance tolerance;
  private final double tinyM;
  private final PlanIndex<Integer> index;

  private NarrowGaps(List<ExposedFacet> facets, Tolerance tolerance, SurfaceLimits.Stretches limits) {
    this.facets = facets;
    this.tolerance = tolerance;
    this.tinyM = limits.tinyM();
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < facets.size(); i++) {
      numbers.add(i);
    }
    this.index = new PlanIndex<>(numbers, i -> facets.get(i).box());
  }

  /** Every stretch, in the same order; one across from which nothing lies has itself for its only part. */
  static List<Stretch> of(List<ExposedFacet> facets, List<BoundaryEdge> edges, Tolerance tolerance, SurfaceLimits.Stretches limits) {
    NarrowGaps gaps = new NarrowGaps(facets, tolerance, limits);
    return edges.stream().map(e -> new Stretch(e, isOpen(e) ? gaps.across(e) : List.of(e))).toList();
  }

  static boolean isOpen(BoundaryEdge e) {
    return e.contact() instanceof Contact.Free || e.contact() instanceof Obstacle.RoofSide side && e.elements().contains(side.globalId());
  }

  private List<BoundaryEdge> across(BoundaryEdge e) {
    List<Beyond> beyond = beyond(e);
    if (beyond.isEmpty()) {
      return List.of(e);
    }
    TreeSet<Double> cuts = new TreeSet<>(List.of(0.0, 1.0));
    beyond.forEach(b -> Collections.addAll(cuts, b.from(), b.to()));
    List<BoundaryEdge> parts = new ArrayList<>();
    double before = 0;
    for (double cut : cuts.tailSet(0.0, false)) {
      double middle = (before + cut) / 2;
      Contact contact = beyond.stream().filter(b -> b.holds(middle)).findFirst()
          .map(b -> (Contact) new Contact.OtherFacet(b.facet(), b.distanceM())).orElse(e.contact());
      add(parts, new BoundaryEdge(e.facet(), e.from().towards(e.to(), before), e.from().towards(e.to(), cut), contact, e.elements()));
      before = cut;
    }
    return parts;
  }

  /** What is tiny goes with what is before it, or what comes after it; what ends at the same thing is one part. */
  private void add(List<BoundaryEdge> parts, BoundaryEdge next) {
    BoundaryEdge last = parts.isEmpty() ? null : parts.get(parts.size() - 1);
    if (last != null && (last.contact().sameAs(next.contact()) || next.lengthM() < tinyM || last.lengthM() < tinyM)) {
      Contact contact = last.lengthM() < tinyM ? next.contact() : last.contact();
      parts.set(parts.size() - 1, new BoundaryEdge(last.facet(), last.from(), next.to(), contact, last.elements()));
    } else {
      parts.add(next);
    }
  }

  /** The nearest first. */
  private List<Beyond> beyond(BoundaryEdge e) {
    Plane plane = facets.get(e.facet()).plane();
    Vec2 a = new Vec2(plane.u(e.from()), plane.v(e.from()));
    Vec2 b = new Vec2(plane.u(e.to()), plane.v(e.to()));
    List<Beyond> found = new ArrayList<>();
    List<Integer> near = index.overlapping(Box3.of(List.of(e.from(), e.to())).grown(tolerance.gapM())).stream()
        .filter(j -> j != e.facet() && facets.get(e.facet()).goesOnIn(facets.get(j), tolerance)).toList();
    for (int j : near) {
      Region region = beside(facets.get(j), plane);
      for (int half = 0; half <= HALVES; half++) {
        double by = tolerance.gapM() / (1 << half);
        Vec2 out = b.minus(a).times(-by / a.distance(b)).left();
        addInside(found, region, a.plus(out), b.plus(out), j, by);
      }
    }
    found.sort(Comparator.comparingDouble(Beyond::distanceM).thenComparing(Beyond::facet).thenComparing(Beyond::from));
    return found;
  }

  /** Where the other facet lies no farther above or below the plane than edges may that meet, in the plane's coordinates. */
  private Region beside(ExposedFacet other, Plane plane) {
    Vec3 n = other.plane().normal();
    double a = n.dot(plane.u());
    double b = n.dot(plane.v());
    double c = other.plane().height(plane.origin());
    double reach = tolerance.gapM();
    return other.region().projected(other.plane(), plane, plane.normal()).cut(a, b, reach - c).cut(-a, -b, reach + c);
  }

  private static void addInside(List<Beyond> found, Region region, Vec2 a, Vec2 b, int facet, double distanceM) {
    TreeSet<Double> cuts = new TreeSet<>(List.of(0.0, 1.0));
    Vec2 d = b.minus(a);
    for (Region.Ring ring : region.rings()) {
      List<Vec2> p = ring.points();
      for (int k = 0; k < p.size(); k++) {
        Vec2 c = p.get(k);
        Vec2 e = p.get((k + 1) % p.size()).minus(c);
        double sine = d.cross(e);
        double t = c.minus(a).cross(e) / sine;
        double s = c.minus(a).cross(d) / sine;
        if (sine != 0 && t > 0 && t < 1 && s >= 0 && s <= 1) {
          cuts.add(t);
        }
      }
    }
    double before = 0;
    for (double cut : cuts.tailSet(0.0, false)) {
      if (region.contains(a.towards(b, (before + cut) / 2))) {
        found.add(new Beyond(before, cut, facet, distanceM));
      }
      before = cut;
    }
  }
}
