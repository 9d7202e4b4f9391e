package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.List;

/** A straight stretch in space, in metres. One of no length is its point. */
public record Segment(Vec3 from, Vec3 to) {

  /** The stretches of a path from corner to corner; none for fewer than two corners. */
  public static List<Segment> of(List<Vec3> path) {
    List<Segment> segments = new ArrayList<>();
    for (int i = 1; i < path.size(); i++) {
      segments.add(new Segment(path.get(i - 1), path.get(i)));
    }
    return segments;
  }

  /** Distance of a point to its nearest point of the stretch, metres. */
  public double distance(Vec3 p) {
    Vec3 d = to.minus(from);
    return p.distance(from.towards(to, share(p.minus(from).dot(d), d.dot(d))));
  }

  /** The same in a plane: distance of {@code p} to the stretch from {@code a} to {@code b}, metres. */
  public static double distance(Vec2 p, Vec2 a, Vec2 b) {
    double du = b.u() - a.u();
    double dv = b.v() - a.v();
    double share = share((p.u() - a.u()) * du + (p.v() - a.v()) * dv, du * du + dv * dv);
    double u = p.u() - (a.u() + du * share);
    double v = p.v() - (a.v() + dv * share);
    return Math.sqrt(u * u + v * v);
  }

  private static double share(double along, double square) {
    return square == 0 ? 0 : Math.max(0, Math.min(1, along / square));
  }

  /** Distance of two stretches that do not cross, metres: one of them is nearest with an end. */
  public double distance(Segment o) {
    return Math.min(Math.min(distance(o.from), distance(o.to)), Math.min(o.distance(from), o.distance(to)));
  }

  /** Least distance of any stretch of the one path to any of the other, metres; infinite where one has none. */
  public static double distance(List<Segment> a, List<Segment> b) {
    double least = Double.POSITIVE_INFINITY;
    for (Segment s : a) {
      for (Segment t : b) {
        least = Math.min(least, s.distance(t));
      }
    }
    return least;
  }
}
