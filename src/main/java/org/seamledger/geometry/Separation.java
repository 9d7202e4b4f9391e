package org.seamledger.geometry;

import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/** Whether an edge of one of two areas lies between them, which is much quicker to tell than what they have in common. */
final class Separation {

  /** Edges times corners: with more an overlay is hardly slower. */
  private static final int MOST = 20_000;

  private Separation() {
  }

  /**
   * True where all of one area lies on one side of the line through an edge of the other, and all of that on the other side, at least this
   * far apart, metres; zero lets them touch. False where no such edge is found: they may be apart all the same.
   */
  static boolean isBetween(Geometry a, Geometry b, double metres) {
    int points = a.getNumPoints() + b.getNumPoints();
    return points * points <= MOST && (hasEdgeBetween(a, b, metres) || hasEdgeBetween(b, a, metres));
  }

  private static boolean hasEdgeBetween(Geometry a, Geometry b, double metres) {
    for (int i = 0; i < a.getNumGeometries(); i++) {
      Coordinate[] ring = ((Polygon) a.getGeometryN(i)).getExteriorRing().getCoordinates();
      for (int k = 1; k < ring.length; k++) {
        double side = side(ring[k - 1], ring[k], b, metres);
        if (side != 0 && side(ring[k - 1], ring[k], a, 0) == -side) {
          return true;
        }
      }
    }
    return false;
  }

  /** 1 where all of an area lies to the left of a line or on it, −1 to the right, 0 else. */
  private static double side(Coordinate p, Coordinate q, Geometry area, double metres) {
    double least = metres * Math.sqrt((q.x - p.x) * (q.x - p.x) + (q.y - p.y) * (q.y - p.y));
    double side = 0;
    for (int i = 0; i < area.getNumGeometries(); i++) {
      for (Coordinate c : ((Polygon) area.getGeometryN(i)).getExteriorRing().getCoordinates()) {
        double off = off(p, q, c);
        if (Math.abs(off) < least || side * off < 0) {
          return 0;
        }
        side = off == 0 ? side : Math.signum(off);
      }
    }
    return side;
  }

  private static double off(Coordinate p, Coordinate q, Coordinate c) {
    return (q.x - p.x) * (c.y - p.y) - (q.y - p.y) * (c.x - p.x);
  }
}
