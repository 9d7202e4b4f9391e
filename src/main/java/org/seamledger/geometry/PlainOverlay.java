package org.seamledger.geometry;

import java.util.Optional;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.overlayng.OverlayNG;

/**
 * Overlays of outlines that don't cross, without an overlay: two with the same corners, and one well within another. What comes out is the
 * same to the last bit, and begins with the same corner, so that sums over the corners are the same, too.
 */
final class PlainOverlay {

  /** Corners of the one times those of the other: with more an overlay is hardly slower. */
  private static final int MOST = 2_000;

  /** Corners nearer, metres, to an edge that isn't theirs may be moved on to it: ten steps of the grid. */
  private static final double BESIDE = 1e-6;

  private PlainOverlay() {
  }

  /** The overlay of two areas on the grid; none where the general method has to say. */
  static Optional<Geometry> of(Geometry a, Geometry b, int operation) {
    Coordinate[] first = onlyRing(a);
    Coordinate[] second = onlyRing(b);
    if (first == null || second == null || first.length * Math.max(first.length, second.length) > MOST) {
      return Optional.empty();
    }
    if (isSame(first, second) && isClear(first)) {
      boolean shared = operation == OverlayNG.INTERSECTION || operation == OverlayNG.UNION;
      return Optional.of(shared ? clockwise(first, Orientation.isCCW(first) ? 0 : 1) : Overlays.FACTORY.createPolygon());
    }
    return operation == OverlayNG.INTERSECTION && isWithin(first, second) && isClear(first) ? Optional.of(clockwise(first, 1))
        : Optional.empty();
  }

  /** What an area has in common with one that reaches beyond it on all sides; none where the general method has to say. */
  static Optional<Geometry> withinLarger(Geometry area) {
    Coordinate[] ring = onlyRing(area);
    return ring != null && ring.length * ring.length <= MOST && isClear(ring) ? Optional.of(clockwise(ring, 1)) : Optional.empty();
  }

  private static Coordinate[] onlyRing(Geometry g) {
    return g instanceof Polygon p && !p.isEmpty() && p.getNumInteriorRing() == 0 ? p.getExteriorRing().getCoordinates() : null;
  }

  /** Whether two closed rings have the same corners one after the other, whichever way round. */
  private static boolean isSame(Coordinate[] a, Coordinate[] b) {
    int n = a.length - 1;
    if (b.length != a.length) {
      return false;
    }
    for (int at = 0; at < n; at++) {
      if (b[at].equals2D(a[0])) {
        return goesOn(a, b, at, 1) || goesOn(a, b, at, n - 1);
      }
    }
    return false;
  }

  private static boolean goesOn(Coordinate[] a, Coordinate[] b, int at, int step) {
    int n = a.length - 1;
    int other = at;
    for (int i = 0; i < n; i++) {
      if (!a[i].equals2D(b[other])) {
        return false;
      }
      other = (other + step) % n;
    }
    return true;
  }

  /** Whether every corner of the one ring lies to the inner side of every edge of the other, beyond what rounding moves. */
  private static boolean isWithin(Coordinate[] inner, Coordinate[] outer) {
    double side = Orientation.isCCW(outer) ? 1 : -1;
    for (int k = 1; k < outer.length; k++) {
      double x = outer[k].x - outer[k - 1].x;
      double y = outer[k].y - outer[k - 1].y;
      double least = BESIDE * Math.sqrt(x * x + y * y);
      for (int i = 1; i < inner.length; i++) {
        if (!(side * (x * (inner[i].y - outer[k - 1].y) - y * (inner[i].x - outer[k - 1].x)) > least)) {
          return false;
        }
      }
    }
    return true;
  }

  /** Whether the overlay leaves a ring's corners where they are, and finds no others on its edges. */
  private static boolean isClear(Coordinate[] ring) {
    int n = ring.length - 1;
    for (int i = 0; i < n; i++) {
      Coordinate c = ring[i];
      if (Overlays.GRID.makePrecise(c.x) != c.x || Overlays.GRID.makePrecise(c.y) != c.y) {
        return false;
      }
      for (int k = 0; k < n; k++) {
        if (k != i && (k + 1) % n != i && !(Distance.pointToSegment(c, ring[k], ring[k + 1]) > BESIDE)) {
          return false;
        }
      }
    }
    return true;
  }

  /** @param start which corner, clockwise from the first, is the first of the result */
  private static Geometry clockwise(Coordinate[] ring, int start) {
    int n = ring.length - 1;
    boolean turned = Orientation.isCCW(ring);
    Coordinate[] corners = new Coordinate[n + 1];
    for (int i = 0; i <= n; i++) {
      int at = (start + i) % n;
      corners[i] = ring[turned ? n - at : at].copy();
    }
    return Overlays.FACTORY.createPolygon(corners);
  }
}
