package org.seamledger.roof;

import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Vec2;

/**
 * The line where another plane cuts a facet's, in the facet's coordinates: {@code normal·p = c}, the other plane above where larger.
 *
 * @param normal unit normal
 * @param c distance from the origin, metres
 * @param limitM how far from it an edge may lie that belongs on it
 * @param from share of the edge from which on it belongs on the line
 * @param to and up to which
 */
record FoldLine(Vec2 normal, double c, double limitM, double from, double to) {

  /** The line in {@code plane} where {@code other} cuts it; the planes are not parallel. */
  static FoldLine of(Plane plane, Plane other, double limitM) {
    Vec2 gradient = new Vec2(other.normal().dot(plane.u()), other.normal().dot(plane.v()));
    double l = gradient.length();
    return new FoldLine(gradient.times(1 / l), -other.height(plane.origin()) / l, limitM, 0, 1);
  }

  FoldLine between(double first, double last) {
    return new FoldLine(normal, c, limitM, first, last);
  }

  /** Signed distance, metres. */
  double distance(Vec2 p) {
    return normal.dot(p) - c;
  }

  Vec2 point() {
    return normal.times(c);
  }

  Vec2 direction() {
    return normal.left();
  }

  /** Whether an edge lies within reach of the line, parallel to it, and with its facet on the side where the other plane is above it. */
  boolean isAlong(Vec2 a, Vec2 b, SurfaceLimits.Folds limits) {
    double da = distance(a);
    double db = distance(b);
    Vec2 d = b.minus(a);
    double length = d.length();
    return length > limits.overlapM() && Math.abs(da) <= limitM && Math.abs(db) <= limitM
        && Math.abs(da - db) <= limits.turn() * length + limits.slackM()
        // The facet lies left of its edges; its outside is to the right.
        && d.left().dot(normal) < 0;
  }

  /** Whether both ends already lie on it. */
  boolean holds(Vec2 a, Vec2 b, SurfaceLimits.Folds limits) {
    return Math.abs(distance(a)) < limits.exactM() && Math.abs(distance(b)) < limits.exactM();
  }
}
