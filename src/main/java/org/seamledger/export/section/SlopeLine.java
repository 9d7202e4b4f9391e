package org.seamledger.export.section;

import java.util.List;
import org.seamledger.geometry.Vec2;

/**
 * The frame of one face in a section: a line that leaves the junction sideways. Millimetres; the section's own coordinates have the
 * junction at zero, x to the right and y up.
 *
 * @param start where it leaves
 * @param degrees by which it rises when you walk away from the junction; negative where it falls
 * @param direction 1 to the right, -1 to the left
 */
record SlopeLine(Vec2 start, double degrees, int direction) {

  /** Along the line away from the junction. */
  Vec2 along() {
    double a = Math.toRadians(degrees);
    return new Vec2(direction * Math.cos(a), Math.sin(a));
  }

  /** Square to it, outwards. */
  Vec2 up() {
    double a = Math.toRadians(degrees);
    return new Vec2(-direction * Math.sin(a), Math.cos(a));
  }

  /** The place {@code s} along the line and {@code h} above it. */
  Vec2 at(double s, double h) {
    return start.plus(along().times(s)).plus(up().times(h));
  }

  double s(Vec2 p) {
    return p.minus(start).dot(along());
  }

  List<Vec2> box(double s0, double s1, double h0, double h1) {
    return List.of(at(s0, h0), at(s1, h0), at(s1, h1), at(s0, h1));
  }

  SlopeLine lifted(double by) {
    return new SlopeLine(start.plus(up().times(by)), degrees, direction);
  }

  /** Where the parallel {@code h} above this line meets the parallel {@code otherH} above another; between the starts if they never do. */
  Vec2 meet(double h, SlopeLine other, double otherH) {
    Vec2 p = at(0, h);
    Vec2 q = other.at(0, otherH);
    double cross = along().cross(other.along());
    if (Math.abs(cross) < 1e-3) {
      return p.towards(q, 0.5);
    }
    return p.plus(along().times(q.minus(p).cross(other.along()) / cross));
  }
}
