package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.List;

/**
 * An outline carried along a line of straight pieces, mitred at its corners.
 *
 * <p>At a corner the section lies in the plane that halves the corner; measured across the bend it is longer there by
 * 1/cos(half the turn), so that between corners the section at a right angle to the line is the outline itself.
 */
public final class PathSweep {

  /** Which way the outline's x-axis points where the line runs in direction {@code tangent}; it is made square to it. */
  public interface Orientation {
    Vec3 x(Vec3 point, Vec3 tangent);
  }

  /** A turn by more than about 170 degrees folds the body back on itself. */
  private static final double FOLDED = 0.08;

  private PathSweep() {
  }

  /**
   * Sections of the outline along the line, for {@link Skin#over}.
   *
   * @param line corners, no two consecutive ones alike; of a closed line the first is not repeated
   * @param orientation or null for the least twist
   * @throws IllegalArgumentException if the line turns back on itself, or the orientation runs along the line
   */
  public static List<List<List<Vec3>>> sections(PolygonOutline outline, List<Vec3> line, boolean closed, Orientation orientation,
      Transform place) {
    int n = line.size();
    List<List<List<Vec3>>> sections = new ArrayList<>();
    Vec3 carried = null;
    Vec3 before = null;
    for (int i = 0; i < n; i++) {
      Vec3 on = i < n - 1 || closed ? direction(line, i, (i + 1) % n) : direction(line, i - 1, i);
      Vec3 in = i > 0 || closed ? direction(line, (i - 1 + n) % n, i) : on;
      Vec3 sum = in.plus(on);
      if (sum.length() < 2 * FOLDED) {
        throw new IllegalArgumentException("the line turns back on itself");
      }
      Vec3 middle = sum.unit();
      Vec3 x = orientation != null ? square(orientation.x(line.get(i), middle), middle)
          : carried == null ? anyAcross(middle) : square(turned(carried, before, middle), middle);
      carried = x;
      before = middle;
      sections.add(section(outline, line.get(i), x, middle, in, on, place));
    }
    return sections;
  }

  private static List<List<Vec3>> section(PolygonOutline outline, Vec3 at, Vec3 x, Vec3 middle, Vec3 in, Vec3 on, Transform place) {
    Vec3 y = middle.cross(x);
    Vec3 axis = in.cross(on);
    Vec3 across = axis.length() < 1e-12 ? Vec3.ZERO : axis.unit().cross(middle);
    double stretch = 1 / middle.dot(on) - 1;
    List<List<Vec3>> rings = new ArrayList<>();
    for (List<Vec2> ring : outline.rings()) {
      List<Vec3> points = new ArrayList<>(ring.size());
      for (Vec2 p : ring) {
        Vec3 q = x.times(p.u()).plus(y.times(p.v()));
        points.add(place.apply(at.plus(q).plus(across.times(q.dot(across) * stretch))));
      }
      rings.add(points);
    }
    return rings;
  }

  private static Vec3 direction(List<Vec3> line, int i, int k) {
    return line.get(k).minus(line.get(i)).unit();
  }

  private static Vec3 square(Vec3 x, Vec3 tangent) {
    Vec3 across = x.minus(tangent.times(x.dot(tangent)));
    if (across.length() < 1e-6 * x.length()) {
      throw new IllegalArgumentException("the reference direction runs along the line");
    }
    return across.unit();
  }

  private static Vec3 anyAcross(Vec3 tangent) {
    return square(Math.abs(tangent.z()) < 0.9 ? Vec3.Z : Vec3.X, tangent);
  }

  /** {@code x} turned the way that takes one tangent to the next (Rodrigues' formula): the least twist. */
  private static Vec3 turned(Vec3 x, Vec3 from, Vec3 to) {
    Vec3 axis = from.cross(to);
    double cos = from.dot(to);
    return x.times(cos).plus(axis.cross(x)).plus(axis.times(axis.dot(x) / (1 + cos)));
  }
}
