package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Headway;

/**
 * Makes convex neighbours meet: where an edge of one facet and an edge of another run along the line in which their planes intersect, a
 * little short of it or beyond it, both are moved on to the line.
 *
 * <p>Slabs of thickness t that are cut square at a fold φ end t·tan(φ/2) short of the line, so edges are looked for up to that
 * distance and the gap on top of it. Concave neighbours need no such care: there one body cuts the other's surface.
 */
final class Meeting {

  private static final double EXACT = 2e-6;
  /** Planes that turn by less than this (radians) have no reliable line of intersection. */
  private static final double MIN_FOLD = Math.toRadians(2);
  /** An edge may turn by this much (sine) against the line. */
  private static final double MAX_TURN = 0.02;
  private static final double MIN_OVERLAP = 0.01;

  private final List<ExposedFacet> facets;
  private final PlanIndex<Integer> index;
  private final List<Box3> boxes;
  private final Tolerance tolerance;

  /** A stretch of an edge with the line it should lie on: {@code point + t · direction} in the facet's plane. */
  private record Stretch(Vec2 from, Vec2 to, Vec2 point, Vec2 direction, boolean moved) {
  }

  /** The line where another facet's plane cuts this one's: {@code normal·p = c}, the other plane above where larger. */
  private record Target(Vec2 normal, double c, double limit, double from, double to) {
    double distance(Vec2 p) {
      return normal.dot(p) - c;
    }

    Vec2 direction() {
      return normal.left();
    }
  }

  private Meeting(List<ExposedFacet> facets, Tolerance tolerance) {
    this.facets = facets;
    this.tolerance = tolerance;
    this.boxes = facets.stream().map(ExposedFacet::box).toList();
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < facets.size(); i++) {
      numbers.add(i);
    }
    this.index = new PlanIndex<>(numbers, boxes::get);
  }

  static List<ExposedFacet> of(List<ExposedFacet> facets, Tolerance tolerance, Headway headway) {
    Meeting meeting = new Meeting(facets, tolerance);
    List<ExposedFacet> met = new ArrayList<>();
    for (int i = 0; i < facets.size(); i++) {
      headway.at(i / (double) facets.size());
      met.add(meeting.met(i));
    }
    return met;
  }

  private ExposedFacet met(int i) {
    ExposedFacet facet = facets.get(i);
    List<List<Vec2>> rings = new ArrayList<>();
    boolean any = false;
    for (Region.Ring ring : facet.region().rings()) {
      List<Stretch> stretches = new ArrayList<>();
      List<Vec2> p = ring.points();
      for (int k = 0; k < p.size(); k++) {
        stretches.addAll(stretches(i, p.get(k), p.get((k + 1) % p.size())));
      }
      boolean moved = stretches.stream().anyMatch(Stretch::moved);
      rings.add(moved ? rejoined(stretches) : p);
      any |= moved;
    }
    return any ? facet.withRegion(Region.evenOdd(rings)) : facet;
  }

  private List<Stretch> stretches(int i, Vec2 a, Vec2 b) {
    Vec2 d = b.minus(a);
    double length = d.length();
    Stretch whole = new Stretch(a, b, a, d.times(1 / length), false);
    ExposedFacet facet = facets.get(i);
    Vec2 mid = a.towards(b, 0.5);
    if (length < MIN_OVERLAP || facet.obstacles().stream().anyMatch(o -> o.footprint().boundaryDistance(mid) < 0.005)) {
      return List.of(whole);
    }
    List<Target> targets = new ArrayList<>();
    double reach = Math.min(1.5, 3 * facet.thicknessM() + tolerance.gapM());
    Box3 box = Box3.of(List.of(TopSurface.at(facet.plane(), a), TopSurface.at(facet.plane(), b))).grown(reach);
    for (int j : index.overlapping(box)) {
      if (j != i) {
        targets.addAll(targets(i, j, a, b));
      }
    }
    return split(whole, targets);
  }

  /** The lines that edge a–b of facet i should be moved to because of edges of facet j. */
  private List<Target> targets(int i, int j, Vec2 a, Vec2 b) {
    ExposedFacet fi = facets.get(i);
    ExposedFacet fj = facets.get(j);
    Vec3 axis = fi.plane().normal().cross(fj.plane().normal());
    double fold = Math.atan2(axis.length(), fi.plane().normal().dot(fj.plane().normal()));
    if (fold < MIN_FOLD) {
      return List.of();
    }
    double limit = Math.max(fi.thicknessM(), fj.thicknessM()) * Math.tan(fold / 2) + tolerance.gapM();
    Target here = target(fi.plane(), fj.plane(), limit);
    if (!runsAlong(here, a, b) || Math.abs(here.distance(a)) < EXACT && Math.abs(here.distance(b)) < EXACT) {
      return List.of();
    }
    Target there = target(fj.plane(), fi.plane(), limit);
    Vec3 along = axis.unit();
    double s0 = along.dot(TopSurface.at(fi.plane(), a));
    double s1 = along.dot(TopSurface.at(fi.plane(), b));
    List<Target> found = new ArrayList<>();
    for (Region.Ring ring : fj.region().rings()) {
      List<Vec2> p = ring.points();
      for (int k = 0; k < p.size(); k++) {
        Vec2 c = p.get(k);
        Vec2 e = p.get((k + 1) % p.size());
        if (runsAlong(there, c, e)) {
          double t0 = along.dot(TopSurface.at(fj.plane(), c));
          double t1 = along.dot(TopSurface.at(fj.plane(), e));
          double from = (Math.max(Math.min(s0, s1), Math.min(t0, t1)) - s0) / (s1 - s0);
          double to = (Math.min(Math.max(s0, s1), Math.max(t0, t1)) - s0) / (s1 - s0);
          double low = Math.min(from, to);
          double high = Math.max(from, to);
          double slack = (limit + tolerance.gapM()) / Math.abs(s1 - s0);
          if (overlap(s0, s1, t0, t1) > MIN_OVERLAP) {
            found.add(new Target(here.normal(), here.c(), limit, low < slack ? 0 : low, high > 1 - slack ? 1 : high));
          }
        }
      }
    }
    return found;
  }

  private static double overlap(double s0, double s1, double t0, double t1) {
    return Math.min(Math.max(s0, s1), Math.max(t0, t1)) - Math.max(Math.min(s0, s1), Math.min(t0, t1));
  }

  private static Target target(Plane plane, Plane other, double limit) {
    Vec2 gradient = new Vec2(other.normal().dot(plane.u()), other.normal().dot(plane.v()));
    double l = gradient.length();
    return new Target(gradient.times(1 / l), -other.height(plane.origin()) / l, limit, 0, 1);
  }

  /** Within reach of the line, parallel to it, and with the facet on the side where the other plane is above it. */
  private static boolean runsAlong(Target line, Vec2 a, Vec2 b) {
    double da = line.distance(a);
    double db = line.distance(b);
    Vec2 d = b.minus(a);
    double length = d.length();
    return length > MIN_OVERLAP && Math.abs(da) <= line.limit() && Math.abs(db) <= line.limit()
        && Math.abs(da - db) <= MAX_TURN * length + 1e-3
        // The facet lies left of its edges; its outside is to the right.
        && d.left().dot(line.normal()) < 0;
  }

  private static List<Stretch> split(Stretch whole, List<Target> targets) {
    if (targets.isEmpty()) {
      return List.of(whole);
    }
    List<Target> ordered = new ArrayList<>(targets);
    ordered.sort(Comparator.comparingDouble(Target::from).thenComparingDouble(t -> -t.to()));
    List<Stretch> pieces = new ArrayList<>();
    double done = 0;
    for (Target t : ordered) {
      double from = Math.max(done, t.from());
      if (t.to() <= from) {
        continue;
      }
      if (from > done) {
        pieces.add(piece(whole, done, from, null));
      }
      pieces.add(piece(whole, from, t.to(), t));
      done = t.to();
    }
    if (done < 1) {
      pieces.add(piece(whole, done, 1, null));
    }
    return pieces;
  }

  private static Stretch piece(Stretch whole, double from, double to, Target target) {
    Vec2 a = whole.from().towards(whole.to(), from);
    Vec2 b = whole.from().towards(whole.to(), to);
    return target == null ? new Stretch(a, b, whole.point(), whole.direction(), false)
        : new Stretch(a, b, target.normal().times(target.c()), target.direction(), true);
  }

  private static List<Vec2> rejoined(List<Stretch> stretches) {
    List<Vec2> ring = new ArrayList<>();
    for (int k = 0; k < stretches.size(); k++) {
      Stretch before = stretches.get((k + stretches.size() - 1) % stretches.size());
      Stretch here = stretches.get(k);
      Vec2 corner = here.from();
      if (!before.moved() && !here.moved()) {
        ring.add(corner);
        continue;
      }
      double sine = before.direction().cross(here.direction());
      Vec2 cross = null;
      if (Math.abs(sine) > 0.02) {
        double t = here.point().minus(before.point()).cross(here.direction()) / sine;
        cross = before.point().plus(before.direction().times(t));
      }
      if (cross != null && cross.distance(corner) < 3) {
        ring.add(cross);
      } else {
        ring.add(onto(before, corner));
        ring.add(onto(here, corner));
      }
    }
    return ring;
  }

  private static Vec2 onto(Stretch s, Vec2 p) {
    return s.point().plus(s.direction().times(p.minus(s.point()).dot(s.direction())));
  }
}
