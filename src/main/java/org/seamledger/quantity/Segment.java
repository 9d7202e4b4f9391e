package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;

/** A straight stretch in space. */
record Segment(Vec3 from, Vec3 to) {

  static List<Segment> of(List<Vec3> path) {
    List<Segment> segments = new ArrayList<>();
    for (int i = 1; i < path.size(); i++) {
      segments.add(new Segment(path.get(i - 1), path.get(i)));
    }
    return segments;
  }

  double distance(Vec3 p) {
    Vec3 d = to.minus(from);
    double square = d.dot(d);
    double t = square == 0 ? 0 : Math.max(0, Math.min(1, p.minus(from).dot(d) / square));
    return p.distance(from.towards(to, t));
  }

  /** Distance of two stretches that do not cross: one of them is nearest with an end. */
  double distance(Segment o) {
    return Math.min(Math.min(distance(o.from), distance(o.to)), Math.min(o.distance(from), o.distance(to)));
  }

  static double distance(List<Segment> a, List<Segment> b) {
    double least = Double.POSITIVE_INFINITY;
    for (Segment s : a) {
      for (Segment t : b) {
        least = Math.min(least, s.distance(t));
      }
    }
    return least;
  }
}
