package org.seamledger.geometry;

import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;

/**
 * A directed line between two points of the grid, along which areas are cut, and how corners and edges lie to it. Where an overlay would
 * do more than to move a crossing on to the grid there is no answer.
 */
record CutLine(Coordinate from, Coordinate to, double length) {

  /** Corners nearer to the line than this may be snapped on to it, metres: ten steps of the grid. */
  private static final double NEAR = 1e-6;
  /** Crossings nearer to each other than this may share a step of the grid with an edge, metres. */
  static final double APART = 1e-3;
  /** Edges that cross the line at less than this sine run along it for many steps of the grid. */
  private static final double FLAT = 1e-3;

  /** Through two points, which are moved to the grid. */
  static CutLine of(Vec2 from, Vec2 to) {
    Coordinate a = onGrid(from);
    Coordinate b = onGrid(to);
    return new CutLine(a, b, a.distance(b));
  }

  private static Coordinate onGrid(Vec2 p) {
    return new Coordinate(Overlays.GRID.makePrecise(p.u()), Overlays.GRID.makePrecise(p.v()));
  }

  CutLine reversed() {
    return new CutLine(to, from, length);
  }

  /** Metres to the left of the line; exactly zero on it; not a number for a corner off the grid, or all but on the line. */
  double off(Coordinate c) {
    if (c.x != Overlays.GRID.makePrecise(c.x) || c.y != Overlays.GRID.makePrecise(c.y)) {
      return Double.NaN;
    }
    double off = ((to.x - from.x) * (c.y - from.y) - (to.y - from.y) * (c.x - from.x)) / length;
    if (Math.abs(off) >= NEAR) {
      return off;
    }
    return Orientation.index(from, to, c) == 0 ? 0 : Double.NaN;
  }

  /** Metres along the line from its begin. */
  double along(Coordinate c) {
    return ((c.x - from.x) * (to.x - from.x) + (c.y - from.y) * (to.y - from.y)) / length;
  }

  /**
   * Where an edge meets the line, on the grid; null for one that runs all but along it.
   *
   * @param within corner to the left of the line, {@code off} metres from it
   * @param other corner on the line or beyond, {@code otherOff} metres from it
   */
  Coordinate crossing(Coordinate within, double off, Coordinate other, double otherOff, RobustLineIntersector meeting) {
    if (off - otherOff < FLAT * within.distance(other)) {
      return null;
    }
    if (otherOff == 0) {
      return other;
    }
    meeting.computeIntersection(within, other, from, to);
    if (!meeting.isProper()) {
      return null;
    }
    Coordinate at = meeting.getIntersection(0).copy();
    Overlays.GRID.makePrecise(at);
    return at;
  }
}
