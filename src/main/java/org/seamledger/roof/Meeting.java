package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;

/**
 * Makes convex neighbours meet: where an edge of one facet and an edge of another run along the line in which their planes intersect, a
 * little short of it or beyond it, both are moved on to the line.
 *
 * <p>Slabs of thickness t that are cut square at a fold φ end t·tan(φ/2) short of the line, so edges are looked for up to that
 * distance and the gap on top of it. Concave neighbours need no such care: there one body cuts the other's surface.
 */
final class Meeting {

  private final List<ExposedFacet> facets;
  private final MeshCurves curves;
  private final PlanIndex<Integer> index;
  private final Tolerance tolerance;
  private final SurfaceLimits.Folds limits;
  private final double thickestM;

  private Meeting(List<ExposedFacet> facets, MeshCurves curves, Tolerance tolerance, SurfaceLimits.Folds limits) {
    this.facets = facets;
    this.curves = curves;
    this.tolerance = tolerance;
    this.limits = limits;
    List<Box3> boxes = facets.stream().map(ExposedFacet::box).toList();
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < facets.size(); i++) {
      numbers.add(i);
    }
    this.index = new PlanIndex<>(numbers, boxes::get);
    this.thickestM = facets.stream().mapToDouble(ExposedFacet::thicknessM).max().orElse(0);
  }

  /** The facets with their outlines on the lines in which they meet others, in the same order. */
  static List<ExposedFacet> of(List<ExposedFacet> facets, MeshCurves curves, Tolerance tolerance, SurfaceLimits.Folds limits,
      Progress progress) {
    Meeting meeting = new Meeting(facets, curves, tolerance, limits);
    List<ExposedFacet> met = new ArrayList<>();
    for (int i = 0; i < facets.size(); i++) {
      progress.at(i / (double) facets.size());
      met.add(meeting.met(i));
    }
    return met;
  }

  private ExposedFacet met(int i) {
    ExposedFacet facet = facets.get(i);
    List<List<Vec2>> rings = new ArrayList<>();
    boolean any = false;
    for (Region.Ring ring : facet.region().rings()) {
      List<MovedEdge> edges = new ArrayList<>();
      List<Vec2> p = ring.points();
      for (int k = 0; k < p.size(); k++) {
        edges.addAll(parted(i, p.get(k), p.get((k + 1) % p.size())));
      }
      boolean moved = edges.stream().anyMatch(MovedEdge::moved);
      rings.add(moved ? MovedEdge.rejoined(edges, limits) : p);
      any |= moved;
    }
    return any ? facet.withRegion(Region.evenOdd(rings)) : facet;
  }

  private List<MovedEdge> parted(int i, Vec2 a, Vec2 b) {
    MovedEdge whole = MovedEdge.still(a, b);
    ExposedFacet facet = facets.get(i);
    Vec2 mid = a.towards(b, 0.5);
    if (a.distance(b) < limits.overlapM()
        || facet.obstacles().stream().anyMatch(o -> o.footprint().boundaryDistance(mid) < limits.obstacleM())) {
      return List.of(whole);
    }
    List<FoldLine> lines = new ArrayList<>();
    double reach = Math.min(limits.farthestM(), limits.thicknesses() * thickestM + tolerance.gapM());
    Box3 box = Box3.of(List.of(TopSurface.at(facet.plane(), a), TopSurface.at(facet.plane(), b))).grown(reach);
    for (int j : index.overlapping(box)) {
      if (j != i && isShared(facet, facets.get(j), a, b)) {
        return List.of(whole);
      }
      // The mesh has the facets of one curve end at each other.
      if (j != i && !curves.areOne(facet.plane(), facets.get(j).plane())) {
        lines.addAll(lines(facet, facets.get(j), a, b));
      }
    }
    return whole.onto(lines);
  }

  /** Whether the whole edge is one of the other facet's already: a third one is not what it should meet. */
  private boolean isShared(ExposedFacet facet, ExposedFacet other, Vec2 a, Vec2 b) {
    for (Vec2 p : List.of(a, b, a.towards(b, 0.5))) {
      Vec3 at = TopSurface.at(facet.plane(), p);
      if (Math.abs(other.plane().height(at)) > tolerance.coincidenceM()
          || other.region().boundaryDistance(new Vec2(other.plane().u(at), other.plane().v(at))) > tolerance.coincidenceM()) {
        return false;
      }
    }
    return true;
  }

  /** The lines that edge a–b of a facet should be moved to because of edges of another. */
  private List<FoldLine> lines(ExposedFacet facet, ExposedFacet other, Vec2 a, Vec2 b) {
    Vec3 axis = facet.plane().normal().cross(other.plane().normal());
    double fold = Math.atan2(axis.length(), facet.plane().normal().dot(other.plane().normal()));
    if (fold < Math.toRadians(limits.leastDegrees())) {
      return List.of();
    }
    double limit = Math.max(facet.thicknessM(), other.thicknessM()) * Math.tan(fold / 2) + tolerance.gapM();
    FoldLine here = FoldLine.of(facet.plane(), other.plane(), limit);
    if (!here.isAlong(a, b, limits) || here.holds(a, b, limits)) {
      return List.of();
    }
    FoldLine there = FoldLine.of(other.plane(), facet.plane(), limit);
    Vec3 along = axis.unit();
    double s0 = along.dot(TopSurface.at(facet.plane(), a));
    double s1 = along.dot(TopSurface.at(facet.plane(), b));
    List<FoldLine> found = new ArrayList<>();
    for (Region.Ring ring : other.region().rings()) {
      List<Vec2> p = ring.points();
      for (int k = 0; k < p.size(); k++) {
        Vec2 c = p.get(k);
        Vec2 e = p.get((k + 1) % p.size());
        if (there.isAlong(c, e, limits)) {
          addBeside(here, s0, s1, along.dot(TopSurface.at(other.plane(), c)), along.dot(TopSurface.at(other.plane(), e)), found);
        }
      }
    }
    return found;
  }

  /**
   * Adds the line for the part of the edge from s0 to s1 (metres along the line) that the other facet's edge, from t0 to t1,
   * runs beside.
   */
  private void addBeside(FoldLine line, double s0, double s1, double t0, double t1, List<FoldLine> found) {
    double begin = Math.max(Math.min(s0, s1), Math.min(t0, t1));
    double end = Math.min(Math.max(s0, s1), Math.max(t0, t1));
    if (end - begin <= limits.overlapM()) {
      return;
    }
    double from = (begin - s0) / (s1 - s0);
    double to = (end - s0) / (s1 - s0);
    double low = Math.min(from, to);
    double high = Math.max(from, to);
    double slack = (line.limitM() + tolerance.gapM()) / Math.abs(s1 - s0);
    found.add(line.between(low < slack ? 0 : low, high > 1 - slack ? 1 : high));
  }
}
