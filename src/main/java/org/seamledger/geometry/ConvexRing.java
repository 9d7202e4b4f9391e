package org.seamledger.geometry;

import java.util.Arrays;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Coordinate;

/** Closed rings that turn one way all round: most faces of roofs are such, and much is told of them without general methods. */
final class ConvexRing {

  private ConvexRing() {
  }

  /**
   * Whether a ring, its first point repeated at its end, turns to one side at every corner and goes round once; it is simple then. A corner
   * on the line between its neighbours makes it false.
   */
  static boolean isOne(Coordinate[] ring) {
    int n = ring.length - 1;
    if (n < 3) {
      return false;
    }
    int turn = Orientation.index(ring[n - 1], ring[0], ring[1]);
    for (int i = 1; turn != 0 && i < n; i++) {
      if (Orientation.index(ring[i - 1], ring[i], ring[i + 1]) != turn) {
        return false;
      }
    }
    return turn != 0 && goesRoundOnce(ring);
  }

  /** Whether x turns back twice: a ring that winds twice does so four times. */
  private static boolean goesRoundOnce(Coordinate[] ring) {
    int turns = 0;
    double before = 0;
    for (int pass = 0; pass < 2; pass++) {
      for (int i = 1; i < ring.length; i++) {
        double dx = ring[i].x - ring[i - 1].x;
        turns += pass == 1 && before * dx < 0 ? 1 : 0;
        before = dx == 0 ? before : Math.signum(dx);
      }
    }
    return turns == 2;
  }

  /**
   * What a ring and a convex one have in common, square metres, to rounding: the ring is cut along each edge of the other. Where a ring
   * that is not convex falls apart, its parts stay joined by lines without area.
   */
  static double commonArea(Coordinate[] ring, Coordinate[] convex) {
    boolean left = Orientation.isCCW(convex);
    Coordinate[] rest = Arrays.copyOf(ring, ring.length - 1);
    for (int i = 1; i < convex.length && rest.length > 2; i++) {
      rest = left ? cut(rest, convex[i - 1], convex[i]) : cut(rest, convex[i], convex[i - 1]);
    }
    return Math.abs(twiceArea(rest)) / 2;
  }

  /** What of corners lies to the left of a line. */
  private static Coordinate[] cut(Coordinate[] corners, Coordinate p, Coordinate q) {
    Coordinate[] kept = new Coordinate[2 * corners.length];
    int count = 0;
    Coordinate a = corners[corners.length - 1];
    double offA = off(p, q, a);
    for (Coordinate b : corners) {
      double offB = off(p, q, b);
      if (offA * offB < 0) {
        double t = offA / (offA - offB);
        kept[count++] = new Coordinate(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
      }
      if (offB >= 0) {
        kept[count++] = b;
      }
      a = b;
      offA = offB;
    }
    return Arrays.copyOf(kept, count);
  }

  private static double off(Coordinate p, Coordinate q, Coordinate c) {
    return (q.x - p.x) * (c.y - p.y) - (q.y - p.y) * (c.x - p.x);
  }

  private static double twiceArea(Coordinate[] corners) {
    double sum = 0;
    for (int i = 2; i < corners.length; i++) {
      sum += off(corners[0], corners[i - 1], corners[i]);
    }
    return sum;
  }
}
