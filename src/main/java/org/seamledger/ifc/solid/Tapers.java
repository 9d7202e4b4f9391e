package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.PolygonOutline;
import org.seamledger.geometry.Vec2;
import org.seamledger.ifc.entity.EntityProblem;

/** Pairs of outlines whose corners correspond. */
final class Tapers {

  private Tapers() {
  }

  /** Both outlines with the same number of corners in every ring: the one with fewer gets points on its edges. */
  static List<PolygonOutline> matched(PolygonOutline a, PolygonOutline b) {
    if (a.holes().size() != b.holes().size()) {
      throw EntityProblem.broken("the two profiles of a tapered solid should have the same number of holes");
    }
    List<List<Vec2>> first = new ArrayList<>();
    List<List<Vec2>> second = new ArrayList<>();
    for (int i = 0; i < a.rings().size(); i++) {
      List<Vec2> p = a.rings().get(i);
      List<Vec2> q = b.rings().get(i);
      first.add(p.size() >= q.size() ? p : spread(p, q));
      second.add(q.size() >= p.size() ? q : spread(q, p));
    }
    return List.of(outline(first), outline(second));
  }

  private static PolygonOutline outline(List<List<Vec2>> rings) {
    return new PolygonOutline(rings.get(0), rings.subList(1, rings.size()));
  }

  /** As many points on {@code ring} as {@code like} has, at the same shares of the length. */
  private static List<Vec2> spread(List<Vec2> ring, List<Vec2> like) {
    double[] at = shares(ring);
    double[] wanted = shares(like);
    List<Vec2> points = new ArrayList<>();
    int k = 0;
    for (int i = 0; i < like.size(); i++) {
      while (k + 1 < ring.size() && at[k + 1] <= wanted[i]) {
        k++;
      }
      double next = k + 1 < ring.size() ? at[k + 1] : 1;
      points.add(ring.get(k).towards(ring.get((k + 1) % ring.size()), (wanted[i] - at[k]) / Math.max(1e-12, next - at[k])));
    }
    return points;
  }

  private static double[] shares(List<Vec2> ring) {
    double[] shares = new double[ring.size()];
    double sum = 0;
    for (int i = 0; i < shares.length; i++) {
      shares[i] = sum;
      sum += ring.get(i).distance(ring.get((i + 1) % ring.size()));
    }
    for (int i = 0; i < shares.length; i++) {
      shares[i] /= sum;
    }
    return shares;
  }

  /** The outline {@code share} of the way from one to the other; both have the same numbers of corners. */
  static PolygonOutline between(PolygonOutline a, PolygonOutline b, double share) {
    if (a == b) {
      return a;
    }
    List<List<Vec2>> rings = new ArrayList<>();
    for (int r = 0; r < a.rings().size(); r++) {
      List<Vec2> p = a.rings().get(r);
      List<Vec2> q = b.rings().get(r);
      List<Vec2> ring = new ArrayList<>();
      for (int i = 0; i < p.size(); i++) {
        ring.add(p.get(i).towards(q.get(i), share));
      }
      rings.add(ring);
    }
    return outline(rings);
  }
}
