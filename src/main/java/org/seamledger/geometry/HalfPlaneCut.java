package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.CoordinateList;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;

/**
 * Cuts areas along one straight line, ring by ring, many times quicker than an overlay does.
 *
 * <p>With the area to the left of every ring, each ring leaves runs of corners on the kept side, from where it crosses the line inwards to
 * where it crosses it outwards. Along the line, with the kept side to the left, crossings alternate: outwards, inwards, outwards, … and
 * between an outward one and the next inward one lies an edge of the rest. Rings that are closed so reach to the line, and are outsides.
 *
 * <p>The result has the corners that a snap-rounding overlay on the grid has. Where that does more than to move the crossings on to the
 * grid, there is none: corners off the grid, all but on the line, or on it with both edges on one side of it; crossings next to each
 * other; edges all but along the line.
 */
final class HalfPlaneCut {

  private final CutLine line;
  private final RobustLineIntersector meeting = new RobustLineIntersector();
  private final List<Polygon> kept = new ArrayList<>();

  /** The line is crossed so many metres along it; the run of corners begins here (inwards) or ends here. */
  private record Crossing(double along, boolean inwards, List<Coordinate> run) {
  }

  /** What can't be told ring by ring. */
  private static final class Unclear extends Exception {
    private static final long serialVersionUID = 1;

    Unclear() {
      super(null, null, false, false);
    }
  }

  private HalfPlaneCut(CutLine line) {
    this.line = line;
  }

  /**
   * What of polygons lies to the left of the line through two points, which are moved to the grid; none where an overlay has to say.
   *
   * @param from before all polygons along the line
   * @param to beyond all polygons
   */
  static Optional<Geometry> left(Geometry areas, Vec2 from, Vec2 to) {
    HalfPlaneCut cut = new HalfPlaneCut(CutLine.of(from, to));
    if (!(cut.line.length() > CutLine.APART)) {
      return Optional.empty();
    }
    try {
      for (int i = 0; i < areas.getNumGeometries(); i++) {
        cut.keep((Polygon) areas.getGeometryN(i));
      }
    } catch (Unclear e) {
      return Optional.empty();
    }
    return Optional.of(cut.kept.size() == 1 ? cut.kept.get(0) : Overlays.FACTORY.createMultiPolygon(cut.kept.toArray(Polygon[]::new)));
  }

  private void keep(Polygon polygon) throws Unclear {
    List<LinearRing> whole = new ArrayList<>();
    List<Crossing> crossings = new ArrayList<>();
    add(polygon.getExteriorRing(), true, whole, crossings);
    boolean isShellWhole = !whole.isEmpty();
    for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
      add(polygon.getInteriorRingN(i), false, whole, crossings);
    }
    if (isShellWhole) {
      kept.add(polygon);
    } else {
      List<LinearRing> shells = shells(crossings);
      if (polygon.getNumInteriorRing() > 0) {
        refuseTouching(whole, shells);
      }
      enclose(whole, shells);
    }
  }

  /** Rings of one polygon may touch in corners; where one of them is opened by the cut, what is left could touch itself. */
  private static void refuseTouching(List<LinearRing> whole, List<LinearRing> shells) throws Unclear {
    Set<Coordinate> met = new HashSet<>();
    List<LinearRing> rings = new ArrayList<>(whole);
    rings.addAll(shells);
    for (LinearRing ring : rings) {
      for (int i = 1; i < ring.getNumPoints(); i++) {
        if (!met.add(ring.getCoordinateN(i))) {
          throw new Unclear();
        }
      }
    }
  }

  /** Adds a ring that is kept as it is, or where it crosses the line. */
  private void add(LinearRing ring, boolean shell, List<LinearRing> whole, List<Crossing> crossings) throws Unclear {
    Coordinate[] c = ring.getCoordinates();
    int n = c.length - 1;
    double[] off = new double[n];
    int within = 0;
    int beyond = 0;
    for (int i = 0; i < n; i++) {
      off[i] = off(c[i]);
      within += off[i] > 0 ? 1 : 0;
      beyond += off[i] < 0 ? 1 : 0;
    }
    if (within == n) {
      whole.add(ring);
    } else if (beyond < n) {
      cross(c, off, Orientation.isCCW(c) == shell ? 1 : n - 1, crossings);
    }
  }

  private double off(Coordinate c) throws Unclear {
    double off = line.off(c);
    if (Double.isNaN(off)) {
      throw new Unclear();
    }
    return off;
  }

  /** @param step to the next corner with the area to the left: 1, or n − 1 backwards */
  private void cross(Coordinate[] c, double[] off, int step, List<Crossing> crossings) throws Unclear {
    int n = off.length;
    for (int i = 0; i < n; i++) {
      int next = (i + step) % n;
      if (off[i] == 0 && !(off[next] * off[(i + n - step) % n] < 0)) {
        throw new Unclear();
      }
      if (off[i] <= 0 && off[next] > 0) {
        run(c, off, i, step, crossings);
      }
    }
  }

  private void run(Coordinate[] c, double[] off, int before, int step, List<Crossing> crossings) throws Unclear {
    int n = off.length;
    int at = (before + step) % n;
    List<Coordinate> run = new ArrayList<>();
    run.add(crossing(c, off, at, before));
    while (off[at] > 0) {
      run.add(c[at]);
      at = (at + step) % n;
    }
    run.add(crossing(c, off, (at + n - step) % n, at));
    crossings.add(new Crossing(line.along(run.get(0)), true, run));
    crossings.add(new Crossing(line.along(run.get(run.size() - 1)), false, run));
  }

  /** Where the edge from a corner on the kept side to one on the line or beyond meets the line, on the grid. */
  private Coordinate crossing(Coordinate[] c, double[] off, int within, int other) throws Unclear {
    Coordinate at = line.crossing(c[within], off[within], c[other], off[other], meeting);
    if (at == null) {
      throw new Unclear();
    }
    return at;
  }

  /** Joins runs along the line. */
  private static List<LinearRing> shells(List<Crossing> crossings) throws Unclear {
    crossings.sort(Comparator.comparingDouble(Crossing::along));
    Map<List<Coordinate>, List<Coordinate>> next = new IdentityHashMap<>();
    for (int i = 0; i < crossings.size(); i++) {
      Crossing crossing = crossings.get(i);
      if (crossing.inwards != (i % 2 == 1) || i > 0 && crossing.along - crossings.get(i - 1).along < CutLine.APART) {
        throw new Unclear();
      }
      if (crossing.inwards) {
        next.put(crossings.get(i - 1).run, crossing.run);
      }
    }
    List<LinearRing> shells = new ArrayList<>();
    for (Crossing crossing : crossings) {
      if (next.containsKey(crossing.run)) {
        shells.add(shell(crossing.run, next));
      }
    }
    return shells;
  }

  private static LinearRing shell(List<Coordinate> first, Map<List<Coordinate>, List<Coordinate>> next) {
    CoordinateList ring = new CoordinateList();
    List<Coordinate> run = first;
    do {
      ring.addAll(run, false);
      run = next.remove(run);
    } while (run != first);
    ring.closeRing();
    return Overlays.FACTORY.createLinearRing(ring.toCoordinateArray(false));
  }

  /** Gives each hole to the outside that it lies in. */
  private void enclose(List<LinearRing> holes, List<LinearRing> shells) throws Unclear {
    List<List<LinearRing>> within = new ArrayList<>();
    shells.forEach(s -> within.add(new ArrayList<>()));
    for (LinearRing hole : holes) {
      within.get(shells.size() == 1 ? 0 : around(hole, shells)).add(hole);
    }
    for (int i = 0; i < shells.size(); i++) {
      kept.add(Overlays.FACTORY.createPolygon(shells.get(i), within.get(i).toArray(LinearRing[]::new)));
    }
  }

  private static int around(LinearRing hole, List<LinearRing> shells) throws Unclear {
    for (int i = 0; i < shells.size(); i++) {
      Coordinate[] shell = shells.get(i).getCoordinates();
      for (Coordinate c : hole.getCoordinates()) {
        int at = PointLocation.locateInRing(c, shell);
        if (at == Location.INTERIOR) {
          return i;
        }
        if (at == Location.EXTERIOR) {
          break;
        }
      }
    }
    throw new Unclear();
  }
}
