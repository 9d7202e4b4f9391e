package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec3;

/** The stretch of outline that two neighbouring facets of a curved face have in common. */
final class FacetSeam {

  /** Facets come from one surface; their common edges agree to well under this. */
  private static final double SAME_M = 0.002;

  private FacetSeam() {
  }

  private record Edge(Vec3 from, Vec3 to) {
    double lengthM() {
      return from.distance(to);
    }
  }

  static double lengthM(Facet lower, Facet upper) {
    double sum = 0;
    List<Edge> others = edges(upper);
    for (Edge edge : edges(lower)) {
      for (Edge other : others) {
        sum += overlapM(edge, other);
      }
    }
    return sum;
  }

  private static List<Edge> edges(Facet facet) {
    List<Edge> edges = new ArrayList<>();
    for (Region.Ring ring : facet.area().rings()) {
      List<Vec3> corners = ring.points().stream().map(p -> facet.plane().at(p.u(), p.v())).toList();
      for (int i = 0; i < corners.size(); i++) {
        edges.add(new Edge(corners.get(i), corners.get((i + 1) % corners.size())));
      }
    }
    return edges;
  }

  /** Length along which {@code b} lies on {@code a}; zero where it leaves a's line by more than the slack. */
  private static double overlapM(Edge a, Edge b) {
    if (a.lengthM() == 0 || off(a, b.from()) > SAME_M || off(a, b.to()) > SAME_M) {
      return 0;
    }
    Vec3 along = a.to().minus(a.from()).unit();
    double s = along.dot(b.from().minus(a.from()));
    double t = along.dot(b.to().minus(a.from()));
    return Math.max(0, Math.min(a.lengthM(), Math.max(s, t)) - Math.max(0, Math.min(s, t)));
  }

  private static double off(Edge a, Vec3 p) {
    Vec3 along = a.to().minus(a.from()).unit();
    Vec3 to = p.minus(a.from());
    return to.minus(along.times(along.dot(to))).length();
  }
}
