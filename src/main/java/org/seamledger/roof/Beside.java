package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Segment;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/** Collects what runs beside one edge of an outline, and gives each stretch of the edge the contact that wins there. */
final class Beside {

  /** Edges shorter than this (metres) have no direction. */
  private static final double NO_LENGTH = 1e-9;
  /** Where contacts compete, distances count to a tenth of a millimetre and lengths to the millimetre, so that rounding decides nothing. */
  private static final double DISTANCES = 1e4;
  private static final double LENGTHS = 1e3;

  /** A contact over a part of the edge, shares 0 to 1, at a distance in metres. */
  record Stretch(double from, double to, Contact contact, double distanceM) {
    double middle() {
      return (from + to) / 2;
    }
  }

  private final OutlineEdge edge;
  private final SurfaceLimits.Stretches limits;
  private final double wallGapM;
  private final List<Stretch> candidates = new ArrayList<>();

  /** @param wallGapM how far from the edge a wall may stand that runs along it */
  Beside(OutlineEdge edge, SurfaceLimits.Stretches limits, double wallGapM) {
    this.edge = edge;
    this.limits = limits;
    this.wallGapM = wallGapM;
  }

  /**
   * An edge of another facet of the same smooth surface that lies beyond this one and faces it across no more than the gap, metres. Facets
   * of a curve may be narrower than the gap, so that the far edge of the next one is as near.
   *
   * @param normal unit, up, of this facet
   * @param slackM how far inside the edge it may lie
   */
  void addBeyond(OutlineEdge other, double gapM, Vec3 normal, double slackM) {
    Vec3 d = edge.b().minus(edge.a());
    Vec3 outward = d.cross(normal);
    double least = -slackM * d.length();
    if (d.dot(other.b().minus(other.a())) < 0 && other.a().minus(edge.a()).dot(outward) >= least
        && other.b().minus(edge.a()).dot(outward) >= least) {
      add(other, gapM);
    }
  }

  /** An edge of another facet that faces this one across no more than the gap, metres. */
  void add(OutlineEdge other, double gapM) {
    Vec3 d = edge.b().minus(edge.a());
    Vec3 e = other.b().minus(other.a());
    double length = d.length();
    double otherLength = e.length();
    if (length < NO_LENGTH || otherLength < NO_LENGTH || Math.abs(d.dot(e)) < limits.cosine() * length * otherLength) {
      return;
    }
    double t0 = other.a().minus(edge.a()).dot(d) / (length * length);
    double t1 = other.b().minus(edge.a()).dot(d) / (length * length);
    double from = Math.max(0, Math.min(t0, t1));
    double to = Math.min(1, Math.max(t0, t1));
    if ((to - from) * length < Math.min(limits.shortM(), limits.shortShare() * Math.min(length, otherLength))) {
      return;
    }
    double gap = Math.max(other.segment().distance(edge.at(from)), other.segment().distance(edge.at(to)));
    if (gap <= gapM) {
      candidates.add(new Stretch(from, to, new Contact.OtherFacet(other.facet(), gap), gap));
    }
  }

  /** An obstacle whose outline runs along the edge within reach, metres. */
  void add(Obstacle o, double reachM) {
    if (edge.p().distance(edge.q()) < NO_LENGTH || isBeyond(o.footprint(), Math.max(reachM, wallGapM))) {
      return;
    }
    for (Region.Ring ring : o.footprint().rings()) {
      List<Vec2> p = ring.points();
      for (int k = 0; k < p.size(); k++) {
        addSide(o, p.get(k), p.get((k + 1) % p.size()), reachM);
      }
    }
  }

  private boolean isBeyond(Region footprint, double reachM) {
    Vec2 p = edge.p();
    Vec2 q = edge.q();
    return footprint.isEmpty() || footprint.minU() > Math.max(p.u(), q.u()) + reachM || footprint.maxU() < Math.min(p.u(), q.u()) - reachM
        || footprint.minV() > Math.max(p.v(), q.v()) + reachM || footprint.maxV() < Math.min(p.v(), q.v()) - reachM;
  }

  private void addSide(Obstacle o, Vec2 c, Vec2 e, double reachM) {
    Vec2 d = edge.q().minus(edge.p());
    double length = d.length();
    if (Math.abs(e.minus(c).dot(d)) < limits.cosine() * length * e.distance(c)) {
      return;
    }
    double t0 = c.minus(edge.p()).dot(d) / (length * length);
    double t1 = e.minus(edge.p()).dot(d) / (length * length);
    double from = Math.max(0, Math.min(t0, t1));
    double to = Math.min(1, Math.max(t0, t1));
    if (to - from <= 0) {
      return;
    }
    double gap = Math.max(Segment.distance(edge.inPlane(from), c, e), Segment.distance(edge.inPlane(to), c, e));
    if (gap <= reachM) {
      candidates.add(new Stretch(from, to, o, gap));
    } else if (o instanceof Obstacle.Wall wall && gap <= wallGapM) {
      candidates.add(new Stretch(from, to, wall.apart(gap), gap));
    }
  }

  /** Cuts the edge at every end of a candidate and gives each stretch the best contact there. */
  List<Stretch> best() {
    TreeSet<Double> cuts = new TreeSet<>(List.of(0.0, 1.0));
    candidates.forEach(c -> {
      cuts.add(c.from());
      cuts.add(c.to());
    });
    List<Stretch> pieces = new ArrayList<>();
    double before = 0;
    for (double cut : cuts) {
      if (cut > before) {
        double mid = (before + cut) / 2;
        Contact contact = candidates.stream().filter(c -> c.from() <= mid && mid <= c.to()).min(order())
            .map(Stretch::contact).orElse(Contact.Free.EDGE);
        pieces.add(new Stretch(before, cut, contact, 0));
      }
      before = cut;
    }
    return merged(pieces);
  }

  private Comparator<Stretch> order() {
    // A wall across a wide gap is better than nothing, and nothing else.
    return Comparator.<Stretch>comparingInt(s -> s.contact() instanceof Obstacle.Wall wall && wall.gapM() > 0 ? 1 : 0)
        .thenComparingInt(s -> s.contact().precedence())
        .thenComparingDouble(s -> Math.rint(s.distanceM() * DISTANCES))
        // Where walls overlap at a corner, the one that the edge runs along.
        .thenComparingDouble(s -> -Math.rint((s.to() - s.from()) * edge.lengthM() * LENGTHS))
        .thenComparingInt(s -> s.contact() instanceof Contact.OtherFacet other ? other.facet() : -1)
        .thenComparing(s -> s.contact() instanceof Obstacle o ? o.globalId() : "");
  }

  /** Neighbours against the same thing are one stretch; what is too short goes with the one before it, at the begin with the next. */
  private List<Stretch> merged(List<Stretch> pieces) {
    double length = edge.lengthM();
    List<Stretch> merged = new ArrayList<>();
    for (Stretch s : pieces) {
      Stretch last = merged.isEmpty() ? null : merged.get(merged.size() - 1);
      if (last != null && (last.contact().sameAs(s.contact()) || (s.to() - s.from()) * length < limits.shortM())) {
        merged.set(merged.size() - 1, new Stretch(last.from(), s.to(), last.contact(), 0));
      } else if (last != null && merged.size() == 1 && (last.to() - last.from()) * length < limits.shortM()) {
        merged.set(0, new Stretch(last.from(), s.to(), s.contact(), 0));
      } else {
        merged.add(s);
      }
    }
    return merged;
  }
}
