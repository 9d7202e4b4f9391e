package org.seamledger.geometry;

import java.util.List;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Outlines that cross or run over themselves again and again. Mending one takes time with the square of its crossings, and what comes out
 * means nothing; outlines that are meant, such as those with holes joined to the outside, touch themselves a few times for each hole.
 */
final class Tangles {

  /** Crossings that an outline may have besides one for each of its corners. */
  private static final int ALLOWED = 1000;

  private Tangles() {
  }

  /**
   * Refuses a tangle.
   *
   * @param ring closed: the first corner is the last, too
   * @throws DegenerateGeometryException where it meets itself too often
   */
  static void refuse(Coordinate[] ring) {
    int n = ring.length - 1;
    if (n <= Math.sqrt(ALLOWED)) {
      return;
    }
    STRtree index = new STRtree();
    for (int i = 0; i < n; i++) {
      index.insert(new Envelope(ring[i], ring[i + 1]), i);
    }
    int allowed = ALLOWED + n;
    int met = 0;
    RobustLineIntersector meeting = new RobustLineIntersector();
    for (int i = 0; i < n; i++) {
      Interrupts.check();
      @SuppressWarnings("unchecked")
      List<Integer> near = index.query(new Envelope(ring[i], ring[i + 1]));
      for (int k : near) {
        if (k > i + 1 && !(i == 0 && k == n - 1)) {
          meeting.computeIntersection(ring[i], ring[i + 1], ring[k], ring[k + 1]);
          met += meeting.hasIntersection() ? 1 : 0;
          if (met > allowed) {
            throw new DegenerateGeometryException("the outline of " + n + " corners meets itself more than " + allowed + " times");
          }
        }
      }
    }
  }
}
