package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * Cuts an area into strips between lines of constant u, by halving it again and again, as {@link Region#cut} would at each line and with
 * the same corners to the last bit. Of an area that is one ring, and stays one at each cut, only the corners are held meanwhile: most roof
 * faces are so. Where {@link HalfPlaneCut} would leave a cut to an overlay, or a ring falls apart, there are none.
 */
final class Strips {

  private final RobustLineIntersector meeting = new RobustLineIntersector();
  private final List<Double> bounds;
  private final List<Region> strips = new ArrayList<>();

  private Strips(List<Double> bounds) {
    this.bounds = bounds;
  }

  /** The strips between each two bounds, which ascend; none where they can't be cut so. */
  static Optional<List<Region>> of(Geometry area, List<Double> bounds) {
    if (bounds.size() < 3 || !(area instanceof Polygon p) || p.isEmpty() || p.getNumInteriorRing() > 0) {
      return Optional.empty();
    }
    Coordinate[] closed = p.getExteriorRing().getCoordinates();
    boolean left = Orientation.isCCW(closed);
    Coordinate[] ring = new Coordinate[closed.length - 1];
    for (int i = 0; i < ring.length; i++) {
      ring[i] = closed[left ? i : ring.length - i];
    }
    Strips cut = new Strips(bounds);
    return cut.split(ring, true, 0, bounds.size() - 1) ? Optional.of(cut.strips) : Optional.empty();
  }

  /**
   * @param ring with the area to the left; null for nothing
   * @param whole whether it is that of the area itself, whose strips begin with the corner that the area begins with
   */
  private boolean split(Coordinate[] ring, boolean whole, int from, int to) {
    if (to - from == 1) {
      strips.add(ring == null ? Region.EMPTY : region(ring));
      return !whole;
    }
    int middle = (from + to) / 2;
    if (ring == null) {
      return split(null, false, from, middle) && split(null, false, middle, to);
    }
    double left = ring[0].x;
    double right = ring[0].x;
    double low = ring[0].y;
    double high = ring[0].y;
    for (Coordinate c : ring) {
      left = Math.min(left, c.x);
      right = Math.max(right, c.x);
      low = Math.min(low, c.y);
      high = Math.max(high, c.y);
    }
    double pad = 1 + 0.01 * ((right - left) + (high - low));
    double u = bounds.get(middle);
    left -= pad;
    right += pad;
    // A line beyond the area is rare, and left to the general way.
    if (!(left - u < 0) || right - u < 0) {
      return false;
    }
    Vec2 bottom = new Vec2(left + (right - left) * ((left - u) / ((left - u) - (right - u))), low - pad);
    Vec2 top = new Vec2(right + (left - right) * ((right - u) / ((right - u) - (left - u))), high + pad);
    CutLine line = CutLine.of(bottom, top);
    return side(ring, line, from, middle) && side(ring, line.reversed(), middle, to);
  }

  /** The corners the other way round, as cuts leave them: sums over them are then the same to the last bit. */
  private static Region region(Coordinate[] ring) {
    Coordinate[] closed = new Coordinate[ring.length + 1];
    for (int i = 0; i <= ring.length; i++) {
      closed[i] = ring[(ring.length - i) % ring.length];
    }
    closed[ring.length] = ring[0].copy();
    return Region.of(Overlays.FACTORY.createPolygon(closed));
  }

  /** Goes on with what of a ring lies to the left of a line; false where that isn't one ring again, or nothing. */
  private boolean side(Coordinate[] ring, CutLine line, int from, int to) {
    int n = ring.length;
    double[] off = new double[n];
    int within = 0;
    int beyond = 0;
    for (int i = 0; i < n; i++) {
      off[i] = line.off(ring[i]);
      within += off[i] > 0 ? 1 : 0;
      beyond += off[i] < 0 ? 1 : 0;
    }
    if (beyond == n) {
      return split(null, false, from, to);
    }
    int start = within == n ? -1 : onlyStart(off);
    Coordinate[] kept = start < 0 ? null : kept(ring, off, start, line);
    return kept != null && split(kept, false, from, to);
  }

  /** The corner before the only run of corners on the kept side; below 0 where there are several, or a corner only touches the line. */
  private static int onlyStart(double[] off) {
    int n = off.length;
    int start = -1;
    for (int i = 0; i < n; i++) {
      double next = off[(i + 1) % n];
      boolean unclear = Double.isNaN(off[i]) || off[i] == 0 && !(next * off[(i + n - 1) % n] < 0);
      boolean begins = off[i] <= 0 && next > 0;
      if (unclear || begins && start >= 0) {
        return -1;
      }
      start = begins ? i : start;
    }
    return start;
  }

  /** The run of corners with its ends on the line; null where they can't be told. */
  private Coordinate[] kept(Coordinate[] ring, double[] off, int before, CutLine line) {
    int n = ring.length;
    List<Coordinate> run = new ArrayList<>();
    int at = (before + 1) % n;
    Coordinate in = crossing(ring, off, at, before, line);
    add(run, in);
    while (off[at] > 0) {
      add(run, ring[at]);
      at = (at + 1) % n;
    }
    Coordinate out = crossing(ring, off, (at + n - 1) % n, at, line);
    if (in == null || out == null || !(line.along(in) - line.along(out) >= CutLine.APART)) {
      return null;
    }
    add(run, out);
    if (run.get(0).equals2D(run.get(run.size() - 1))) {
      run.remove(run.size() - 1);
    }
    return run.size() < 3 ? null : run.toArray(Coordinate[]::new);
  }

  private static void add(List<Coordinate> run, Coordinate c) {
    if (c != null && (run.isEmpty() || !run.get(run.size() - 1).equals2D(c))) {
      run.add(c);
    }
  }

  private Coordinate crossing(Coordinate[] ring, double[] off, int within, int other, CutLine line) {
    return line.crossing(ring[within], off[within], ring[other], off[other], meeting);
  }
}
