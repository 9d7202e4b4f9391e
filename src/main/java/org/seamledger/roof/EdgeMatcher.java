package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Headway;

/**
 * Says for every stretch of every facet's outline what is on its other side: another facet whose outline faces it across no more than
 * the gap, a wall or a thing whose footprint does, a hole, the side of a roof element, or nothing.
 */
final class EdgeMatcher {

  /** Stretches shorter than this (metres) take the contact of their neighbours. */
  private static final double SHORT = 0.004;
  private static final double MIN_COSINE = 0.9;
  /** A roof this close above a face (metres) may sit on a wall that stands there. */
  private static final double UNDER_ROOF = 0.6;

  private final List<ExposedFacet> facets;
  private final Tolerance tolerance;
  private final List<Edge> edges = new ArrayList<>();
  private final PlanIndex<Edge> index;

  private record Edge(int facet, int ring, boolean hole, Vec2 p, Vec2 q, Vec3 a, Vec3 b) {
    Box3 box() {
      return Box3.of(List.of(a, b));
    }

    Vec3 at(double t) {
      return a.towards(b, t);
    }
  }

  /** A contact over the part [from, to] of an edge, 0 to 1, at a distance. */
  private record Stretch(double from, double to, Contact contact, double distance) {
  }

  private EdgeMatcher(List<ExposedFacet> facets, Tolerance tolerance) {
    this.facets = facets;
    this.tolerance = tolerance;
    int number = 0;
    for (int i = 0; i < facets.size(); i++) {
      for (Region.Ring ring : facets.get(i).region().rings()) {
        List<Vec2> p = ring.points();
        for (int k = 0; k < p.size(); k++) {
          Vec2 q = p.get((k + 1) % p.size());
          edges.add(new Edge(i, number, ring.hole(), p.get(k), q, TopSurface.at(facets.get(i).plane(), p.get(k)),
              TopSurface.at(facets.get(i).plane(), q)));
        }
        number++;
      }
    }
    this.index = new PlanIndex<>(edges, Edge::box);
  }

  static List<BoundaryEdge> edges(List<ExposedFacet> facets, Tolerance tolerance, Headway headway) {
    EdgeMatcher matcher = new EdgeMatcher(facets, tolerance);
    List<BoundaryEdge> all = new ArrayList<>();
    List<BoundaryEdge> ring = new ArrayList<>();
    for (int i = 0; i < matcher.edges.size(); i++) {
      headway.at(i / (double) matcher.edges.size());
      Edge edge = matcher.edges.get(i);
      matcher.match(edge, ring);
      if (i + 1 == matcher.edges.size() || matcher.edges.get(i + 1).ring() != edge.ring()) {
        all.addAll(absorbed(edge.hole() ? matcher.asOpening(matcher.upToTheRoof(ring)) : matcher.upToTheRoof(ring)));
        ring.clear();
      }
    }
    return all;
  }

  /** A wall often ends a little below the roof that sits on it: its line goes on, under that roof, to where the roof meets the face. */
  private List<BoundaryEdge> upToTheRoof(List<BoundaryEdge> ring) {
    int n = ring.size();
    List<BoundaryEdge> all = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      BoundaryEdge e = ring.get(i);
      Contact wall = Contact.FREE;
      for (BoundaryEdge beside : List.of(ring.get((i + n - 1) % n), ring.get((i + 1) % n))) {
        if (beside.contact().kind() == Contact.Kind.WALL && beside.lengthM() > e.lengthM() && collinear(e, beside)) {
          wall = beside.contact();
        }
      }
      boolean on = e.contact().kind() == Contact.Kind.FREE && wall != Contact.FREE && isUnderARoof(e);
      all.add(on ? new BoundaryEdge(e.facet(), e.from(), e.to(), wall, e.elements()) : e);
    }
    return all;
  }

  private static boolean collinear(BoundaryEdge a, BoundaryEdge b) {
    Vec3 d = a.to().minus(a.from()).unit();
    Vec3 e = b.to().minus(b.from()).unit();
    return d.cross(e).length() < 0.02 && d.dot(e) > 0;
  }

  /** Whether roof surface lies close above the place just beyond the middle of the stretch. */
  private boolean isUnderARoof(BoundaryEdge e) {
    Vec3 d = e.to().minus(e.from());
    Vec3 out = new Vec3(d.y(), -d.x(), 0).unit().times(0.02);
    Vec3 beyond = e.from().towards(e.to(), 0.5).plus(out);
    for (Edge other : index.overlappingInPlan(Box3.of(List.of(beyond)).grown(UNDER_ROOF))) {
      ExposedFacet f = facets.get(other.facet());
      double above = f.plane().elevation(beyond.x(), beyond.y()) - beyond.z();
      if (other.facet() != e.facet() && above > 0 && above < UNDER_ROOF) {
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
    if (ring.stream().anyMatch(e -> e.contact().kind() != Contact.Kind.FREE)) {
      return ring;
    }
    ExposedFacet facet = facets.get(ring.get(0).facet());
    Region hole = Region.polygon(ring.stream().map(e -> new Vec2(facet.plane().u(e.from()), facet.plane().v(e.from()))).toList());
    Obstacle inIt = facet.obstacles().stream().filter(o -> o.kind() == Obstacle.Kind.PENETRATION
        && o.footprint().intersect(hole).area() > 0.5 * o.footprint().area()).findFirst()
        .orElse(new Obstacle(Obstacle.Kind.OPENING, "", "", hole, 0, false));
    Contact contact = Contact.of(new Obstacle(inIt.kind(), inIt.globalId(), inIt.ifcClass(), hole, inIt.heightM(),
        RoundOutline.of(hole).isRound()));
    return ring.stream().map(e -> new BoundaryEdge(e.facet(), e.from(), e.to(), contact, e.elements())).toList();
  }

  /** Modelling slack leaves tiny stretches at corners: they take the contact of the much longer stretch beside them. */
  private static List<BoundaryEdge> absorbed(List<BoundaryEdge> ring) {
    int n = ring.size();
    List<BoundaryEdge> all = new ArrayList<>(n);
    for (int i = 0; i < n; i++) {
      BoundaryEdge e = ring.get(i);
      BoundaryEdge before = ring.get((i + n - 1) % n);
      BoundaryEdge after = ring.get((i + 1) % n);
      // Rather not to a line that another face shares and does not have this stretch of.
      boolean shared = before.contact().kind() == Contact.Kind.FACE;
      BoundaryEdge longer = shared == (after.contact().kind() == Contact.Kind.FACE)
          ? before.lengthM() >= after.lengthM() ? before : after : shared ? after : before;
      boolean tiny = e.lengthM() < BoundaryEdge.TINY && longer.lengthM() > 5 * e.lengthM()
          && !e.contact().sameAs(before.contact()) && !e.contact().sameAs(after.contact());
      all.add(tiny ? new BoundaryEdge(e.facet(), e.from(), e.to(), longer.contact(), e.elements()) : e);
    }
    return all;
  }

  private void match(Edge edge, List<BoundaryEdge> out) {
    List<Stretch> candidates = new ArrayList<>();
    for (Edge other : index.overlapping(edge.box().grown(tolerance.gapM()))) {
      if (other.facet() != edge.facet()) {
        addFace(edge, other, candidates);
      }
    }
    ExposedFacet facet = facets.get(edge.facet());
    for (Obstacle o : facet.obstacles()) {
      addOutline(edge, o, tolerance.gapM(), candidates);
    }
    for (TopSurface.Piece crossing : facet.top().crossing()) {
      addOutline(edge, new Obstacle(Obstacle.Kind.ROOF_SIDE, crossing.part().id(), crossing.part().element().ifcClass(),
          crossing.region(), 0, false), 2 * tolerance.coincidenceM(), candidates);
    }
    for (Stretch s : best(edge, candidates)) {
      Vec3 from = edge.at(s.from());
      Vec3 to = edge.at(s.to());
      out.add(new BoundaryEdge(edge.facet(), from, to, measured(s.contact(), facet, edge, s), elementsAt(facet, edge.p().towards(edge.q(), (s.from() + s.to()) / 2))));
    }
  }

  /** The side of a roof element gets its height: how far its body goes up just beyond the middle of the stretch. */
  private Contact measured(Contact c, ExposedFacet facet, Edge edge, Stretch s) {
    if (c.kind() != Contact.Kind.ROOF_SIDE) {
      return c;
    }
    Vec2 along = edge.q().minus(edge.p()).times(1 / edge.q().distance(edge.p()));
    Vec2 beyond = edge.p().towards(edge.q(), (s.from() + s.to()) / 2).minus(along.left().times(0.01));
    double height = facet.top().crossing().stream().filter(p -> p.part().id().equals(c.neighbour())).findFirst()
        .map(p -> Heights.above(p.part().solid(), facet.plane(), beyond, tolerance)).orElse(0.0);
    return new Contact(c.kind(), c.otherFacet(), c.neighbour(), c.neighbourClass(), height, c.round(), c.outline(), c.gapM());
  }

  private void addFace(Edge edge, Edge other, List<Stretch> candidates) {
    Vec3 d = edge.b().minus(edge.a());
    Vec3 e = other.b().minus(other.a());
    double length = d.length();
    double otherLength = e.length();
    if (length < 1e-9 || otherLength < 1e-9 || Math.abs(d.dot(e)) < MIN_COSINE * length * otherLength) {
      return;
    }
    double t0 = other.a().minus(edge.a()).dot(d) / (length * length);
    double t1 = other.b().minus(edge.a()).dot(d) / (length * length);
    double from = Math.max(0, Math.min(t0, t1));
    double to = Math.min(1, Math.max(t0, t1));
    if ((to - from) * length < Math.min(SHORT, 0.9 * Math.min(length, otherLength))) {
      return;
    }
    double gap = Math.max(distance(edge.at(from), other), distance(edge.at(to), other));
    if (gap <= tolerance.gapM()) {
      candidates.add(new Stretch(from, to, Contact.face(other.facet(), gap), gap));
    }
  }

  private static double distance(Vec3 p, Edge e) {
    Vec3 d = e.b().minus(e.a());
    double t = Math.max(0, Math.min(1, p.minus(e.a()).dot(d) / d.dot(d)));
    return p.distance(e.at(t));
  }

  private static void addOutline(Edge edge, Obstacle o, double reach, List<Stretch> candidates) {
    Vec2 d = edge.q().minus(edge.p());
    double length = d.length();
    if (length < 1e-9) {
      return;
    }
    for (Region.Ring ring : o.footprint().rings()) {
      List<Vec2> p = ring.points();
      for (int k = 0; k < p.size(); k++) {
        Vec2 c = p.get(k);
        Vec2 e = p.get((k + 1) % p.size());
        double along = Math.abs(e.minus(c).dot(d));
        if (along < MIN_COSINE * length * e.distance(c)) {
          continue;
        }
        double t0 = c.minus(edge.p()).dot(d) / (length * length);
        double t1 = e.minus(edge.p()).dot(d) / (length * length);
        double from = Math.max(0, Math.min(t0, t1));
        double to = Math.min(1, Math.max(t0, t1));
        if (to - from <= 0) {
          continue;
        }
        double gap = Math.max(distance(edge.p().towards(edge.q(), from), c, e), distance(edge.p().towards(edge.q(), to), c, e));
        if (gap <= reach) {
          candidates.add(new Stretch(from, to, Contact.of(o), gap));
        }
      }
    }
  }

  private static double distance(Vec2 p, Vec2 c, Vec2 e) {
    Vec2 d = e.minus(c);
    double t = Math.max(0, Math.min(1, p.minus(c).dot(d) / d.dot(d)));
    return p.distance(c.towards(e, t));
  }

  /** Cuts the edge at every end of a candidate and gives each stretch the best contact there. */
  private List<Stretch> best(Edge edge, List<Stretch> candidates) {
    TreeSet<Double> cuts = new TreeSet<>(List.of(0.0, 1.0));
    candidates.forEach(c -> {
      cuts.add(c.from());
      cuts.add(c.to());
    });
    Comparator<Stretch> order = Comparator.<Stretch>comparingInt(s -> s.contact().kind().ordinal())
        .thenComparingDouble(s -> Math.rint(s.distance() * 1e4))
        // Where walls overlap at a corner, the one that the edge runs along.
        .thenComparingDouble(s -> -Math.rint((s.to() - s.from()) * edge.a().distance(edge.b()) * 1e3))
        .thenComparingInt(s -> s.contact().otherFacet())
        .thenComparing(s -> s.contact().neighbour());
    List<Stretch> pieces = new ArrayList<>();
    double before = 0;
    for (double cut : cuts) {
      if (cut > before) {
        double mid = (before + cut) / 2;
        Contact contact = candidates.stream().filter(c -> c.from() <= mid && mid <= c.to()).min(order)
            .map(Stretch::contact).orElse(Contact.FREE);
        pieces.add(new Stretch(before, cut, contact, 0));
      }
      before = cut;
    }
    return merged(pieces, edge.a().distance(edge.b()));
  }

  private static List<Stretch> merged(List<Stretch> pieces, double length) {
    List<Stretch> merged = new ArrayList<>();
    for (Stretch s : pieces) {
      Stretch last = merged.isEmpty() ? null : merged.get(merged.size() - 1);
      if (last != null && (last.contact().sameAs(s.contact()) || (s.to() - s.from()) * length < SHORT)) {
        merged.set(merged.size() - 1, new Stretch(last.from(), s.to(), last.contact(), 0));
      } else if (last != null && merged.size() == 1 && (last.to() - last.from()) * length < SHORT) {
        merged.set(0, new Stretch(last.from(), s.to(), s.contact(), 0));
      } else {
        merged.add(s);
      }
    }
    return merged;
  }

  private List<String> elementsAt(ExposedFacet facet, Vec2 mid) {
    List<String> ids = facet.top().pieces().stream()
        .filter(p -> p.region().distance(mid) <= 2 * tolerance.gapM()).map(p -> p.part().id()).distinct().sorted().toList();
    return ids.isEmpty()
        ? facet.top().pieces().stream().min(Comparator.comparingDouble(p -> p.region().distance(mid))).map(p -> List.of(p.part().id()))
            .orElse(List.of())
        : ids;
  }
}
