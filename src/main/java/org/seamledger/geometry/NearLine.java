package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;

/**
 * Where along a straight line a body's surface is near. Exact for triangles: the part of a triangle within a distance of a line is
 * convex, so it lies beside one stretch of the line. What was cut out of a body counts as still there, and half-spaces count as nothing.
 */
public final class NearLine {

  /** Stretches that lie closer together than this (metres) are one: joints between lengths of sheet metal. */
  private static final double JOINT = 0.005;

  private final Vec3 from;
  private final Vec3 along;
  private final Vec3 across;
  private final Vec3 up;
  private final double length;
  private final double reach;
  private final List<Stretch> found = new ArrayList<>();

  /** A part of the line, metres from its beginning. */
  public record Stretch(double begin, double end) {
    /** Metres. */
    public double length() {
      return end - begin;
    }
  }

  private NearLine(Vec3 a, Vec3 b, double reach) {
    this.from = a;
    this.length = a.distance(b);
    this.along = b.minus(a).unit();
    Vec3 side = Math.abs(along.z()) < 0.9 ? Vec3.Z.cross(along) : Vec3.X.cross(along);
    this.across = side.unit();
    this.up = along.cross(across);
    this.reach = reach;
  }

  /**
   * The stretches of the line from {@code a} to {@code b} where a body comes within {@code reach}, measured square to the line; ascending,
   * apart from each other.
   */
  public static List<Stretch> of(Solid body, Vec3 a, Vec3 b, double reach) {
    if (a.distance(b) < 1e-9) {
      return List.of();
    }
    NearLine line = new NearLine(a, b, reach);
    eachTriangle(body, line::triangle);
    return joined(line.found);
  }

  /** Stretches of several bodies together. */
  public static List<Stretch> joined(List<Stretch> stretches) {
    List<Stretch> sorted = new ArrayList<>(stretches);
    sorted.sort(Comparator.comparingDouble(Stretch::begin).thenComparingDouble(Stretch::end));
    List<Stretch> apart = new ArrayList<>();
    for (Stretch s : sorted) {
      Stretch last = apart.isEmpty() ? null : apart.get(apart.size() - 1);
      if (last != null && s.begin() <= last.end() + JOINT) {
        apart.set(apart.size() - 1, new Stretch(last.begin(), Math.max(last.end(), s.end())));
      } else {
        apart.add(s);
      }
    }
    apart.removeIf(s -> s.length() <= 0);
    return apart;
  }

  private static void eachTriangle(Solid solid, Consumer<Vec3[]> consumer) {
    if (solid instanceof Mesh mesh) {
      for (int t = 0; t < mesh.triangleCount(); t++) {
        consumer.accept(new Vec3[] {mesh.corner(t, 0), mesh.corner(t, 1), mesh.corner(t, 2)});
      }
    } else if (solid instanceof Solid.Union union) {
      union.parts().forEach(p -> eachTriangle(p, consumer));
    } else if (solid instanceof Solid.Difference difference) {
      eachTriangle(difference.body(), consumer);
    } else if (solid instanceof Solid.Intersection intersection) {
      eachTriangle(intersection.first(), consumer);
    }
  }

  /** A corner in the line's own coordinates: along it, and square to it. */
  private record Point(double t, double x, double y) {
    double radius() {
      return Math.hypot(x, y);
    }
  }

  private Point point(Vec3 p) {
    Vec3 v = p.minus(from);
    return new Point(v.dot(along), v.dot(across), v.dot(up));
  }

  private void triangle(Vec3[] corners) {
    Point[] p = {point(corners[0]), point(corners[1]), point(corners[2])};
    double[] range = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (int i = 0; i < 3; i++) {
      if (p[i].radius() <= reach) {
        take(range, p[i].t());
      }
      edge(p[i], p[(i + 1) % 3], range);
    }
    inside(p, range);
    double begin = Math.max(0, range[0]);
    double end = Math.min(length, range[1]);
    if (begin <= end) {
      found.add(new Stretch(begin, end));
    }
  }

  private static void take(double[] range, double t) {
    range[0] = Math.min(range[0], t);
    range[1] = Math.max(range[1], t);
  }

  /** Where an edge comes within reach and leaves it: |p + s·(q − p)| = reach across the line. */
  private void edge(Point p, Point q, double[] range) {
    double dx = q.x() - p.x();
    double dy = q.y() - p.y();
    double a = dx * dx + dy * dy;
    double b = p.x() * dx + p.y() * dy;
    double discriminant = b * b - a * (p.x() * p.x() + p.y() * p.y() - reach * reach);
    if (a < 1e-18 || discriminant < 0) {
      return;
    }
    for (double s : new double[] {(-b - Math.sqrt(discriminant)) / a, (-b + Math.sqrt(discriminant)) / a}) {
      if (s >= 0 && s <= 1) {
        take(range, p.t() + s * (q.t() - p.t()));
      }
    }
  }

  /** The triangle's plane leaves the reach in an ellipse, whose ends along the line count where they lie in the triangle. */
  private void inside(Point[] p, double[] range) {
    double ax = p[1].x() - p[0].x();
    double ay = p[1].y() - p[0].y();
    double bx = p[2].x() - p[0].x();
    double by = p[2].y() - p[0].y();
    double det = ax * by - ay * bx;
    if (Math.abs(det) < 1e-12) {
      return;
    }
    double at = p[1].t() - p[0].t();
    double bt = p[2].t() - p[0].t();
    double slopeX = (at * by - bt * ay) / det;
    double slopeY = (ax * bt - bx * at) / det;
    double steep = Math.hypot(slopeX, slopeY);
    for (int sign = -1; sign <= 1; sign += 2) {
      double x = steep < 1e-12 ? 0 : sign * reach * slopeX / steep;
      double y = steep < 1e-12 ? 0 : sign * reach * slopeY / steep;
      double u = ((x - p[0].x()) * by - (y - p[0].y()) * bx) / det;
      double v = (ax * (y - p[0].y()) - ay * (x - p[0].x())) / det;
      if (u >= 0 && v >= 0 && u + v <= 1) {
        take(range, p[0].t() + u * at + v * bt);
      }
    }
  }
}
