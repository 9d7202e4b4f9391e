package org.seamledger.drainage;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.seamledger.drainage.Node.Exit;
import org.seamledger.drainage.Node.Target;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.BoundaryEdge;

/** Where water comes down that crosses a stretch of an edge: in which cells of the facet beyond, or of the facets below. */
final class Landings {

  /** How far beyond an edge water drops, metres. */
  static final double BEYOND = 0.1;
  /** Less is no drop, metres. */
  static final double LEAST_DROP = 0.02;
  /** Metres: a shorter stretch is a point. */
  private static final double POINT = 1e-7;
  /** How far into the facet beyond an edge a stretch is looked for, metres. */
  private static final double INTO = 1e-4;

  private final RoofWater water;

  Landings(RoofWater water) {
    this.water = water;
  }

  /** A stretch in space that water crosses evenly, with its coordinate at the source. */
  record Stretch(Vec3 a, Vec3 b, double from, double to) {
    Vec3 at(double t) {
      return a.towards(b, t);
    }

    double coordinate(double t) {
      return from + (to - from) * t;
    }

    Stretch part(double t0, double t1) {
      return new Stretch(at(t0), at(t1), coordinate(t0), coordinate(t1));
    }
  }

  /** The stretch comes to a facet at its upper edge or from above. */
  List<Exit> on(FacetCells facet, Stretch s, UnaryOperator<Target> as) {
    if (facet.pool != null) {
      return List.of(new Exit(s.to, as.apply(Target.to(facet.pool)), 0, 1));
    }
    Vec2 p = facet.under(s.a);
    Vec2 q = facet.under(s.b);
    List<Double> bounds = new ArrayList<>(List.of(0.0));
    double run = q.u() - p.u();
    if (Math.abs(run) > POINT) {
      List<Double> breaks = new ArrayList<>();
      facet.breaksBetween(Math.min(p.u(), q.u()), Math.max(p.u(), q.u())).forEach(u -> breaks.add((u - p.u()) / run));
      breaks.sort(null);
      bounds.addAll(breaks);
    }
    bounds.add(1.0);
    List<Exit> exits = new ArrayList<>();
    for (int i = 0; i + 1 < bounds.size(); i++) {
      Vec2 mid = p.towards(q, (bounds.get(i) + bounds.get(i + 1)) / 2);
      Cell cell = facet.at(new Vec2(mid.u(), mid.v() - INTO));
      exits.add(new Exit(s.coordinate(bounds.get(i + 1)), cell == null ? Target.TRAP : as.apply(Target.to(cell.node())),
          p.u() + run * bounds.get(i), p.u() + run * bounds.get(i + 1)));
    }
    return exits;
  }

  /** The stretch is a free edge: water drops on the highest facet below, or leaves over the junction. */
  List<Exit> over(String junction, Stretch s, boolean caught) {
    Vec3 d = s.b.minus(s.a);
    double l = d.planLength();
    if (caught || l < POINT) {
      return List.of(new Exit(s.to, Target.leaving(junction), 0, 0));
    }
    Vec3 out = new Vec3(d.y(), -d.x(), 0).times((s.to > s.from ? 1 : -1) * BEYOND / l);
    Stretch beyond = new Stretch(s.a.plus(out), s.b.plus(out), s.from, s.to);
    List<Integer> candidates = water.facetsNear(Box3.of(List.of(beyond.a, beyond.b)), 0).stream()
        .filter(f -> water.edgesOf(f).stream().anyMatch(e -> water.lowEnd(e).z() < Math.max(s.a.z(), s.b.z()) - LEAST_DROP)).toList();
    List<Double> bounds = List.copyOf(crossings(beyond, candidates));
    List<Exit> exits = new ArrayList<>();
    for (int i = 0; i + 1 < bounds.size(); i++) {
      Stretch part = beyond.part(bounds.get(i), bounds.get(i + 1));
      FacetCells below = water.below(part.at(0.5), LEAST_DROP, candidates);
      exits.addAll(below == null ? List.of(new Exit(part.to, Target.leaving(junction), 0, 0)) : on(below, part, t -> t.from(junction)));
    }
    return exits;
  }

  /** Shares of the stretch at which it crosses the outlines of facets in plan, with 0 and 1. */
  private TreeSet<Double> crossings(Stretch s, List<Integer> facets) {
    TreeSet<Double> all = new TreeSet<>(List.of(0.0, 1.0));
    Vec3 d = s.b.minus(s.a);
    for (int f : facets) {
      for (int e : water.edgesOf(f)) {
        BoundaryEdge edge = water.edge(e);
        Vec3 g = edge.to().minus(edge.from());
        Vec3 w = edge.from().minus(s.a);
        double det = d.x() * g.y() - d.y() * g.x();
        if (Math.abs(det) > 1e-12) {
          double t = (w.x() * g.y() - w.y() * g.x()) / det;
          double k = (w.x() * d.y() - w.y() * d.x()) / det;
          if (t > 1e-9 && t < 1 - 1e-9 && k >= 0 && k <= 1) {
            all.add(t);
          }
        }
      }
    }
    return all;
  }
}
