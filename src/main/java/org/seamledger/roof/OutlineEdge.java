package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Segment;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * An edge of a facet's outline, the facet to its left.
 *
 * @param facet index of the facet
 * @param ring number of the closed line that it belongs to, counted over all facets
 * @param hole whether that goes round a hole
 * @param p its begin in the facet's plane, metres
 * @param q its end there
 * @param a its begin in space
 * @param b its end there
 */
record OutlineEdge(int facet, int ring, boolean hole, Vec2 p, Vec2 q, Vec3 a, Vec3 b) {

  /** Every edge of every facet, ring by ring. */
  static List<OutlineEdge> all(List<ExposedFacet> facets) {
    List<OutlineEdge> edges = new ArrayList<>();
    int number = 0;
    for (int i = 0; i < facets.size(); i++) {
      ExposedFacet facet = facets.get(i);
      for (Region.Ring ring : facet.region().rings()) {
        List<Vec2> p = ring.points();
        for (int k = 0; k < p.size(); k++) {
          Vec2 q = p.get((k + 1) % p.size());
          edges.add(new OutlineEdge(i, number, ring.hole(), p.get(k), q, TopSurface.at(facet.plane(), p.get(k)),
              TopSurface.at(facet.plane(), q)));
        }
        number++;
      }
    }
    return edges;
  }

  Box3 box() {
    return Box3.of(List.of(a, b));
  }

  /** The point in space at a share of the way. */
  Vec3 at(double t) {
    return a.towards(b, t);
  }

  /** The point in the plane at a share of the way. */
  Vec2 inPlane(double t) {
    return p.towards(q, t);
  }

  Segment segment() {
    return new Segment(a, b);
  }

  double lengthM() {
    return a.distance(b);
  }
}
