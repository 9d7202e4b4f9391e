package org.seamledger.ifc.curve;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Facets;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/** A curve with the standard's own parameter. Lengths in metres, angles in radians. */
public sealed interface Curve permits Curve.Line, Curve.Conic, Curve.Path, Spline {

  Vec3 at(double t);

  /** Parameter at the begin; for an unbounded line minus infinity. */
  double start();

  double end();

  /** True where the parameter goes round and round. */
  default boolean periodic() {
    return false;
  }

  /** Parameter of the curve's point nearest to {@code p}. */
  double parameterAt(Vec3 p);

  /** Points from one parameter to the other (which may be the smaller one), both included, as finely as {@link Facets} asks. */
  List<Vec3> points(double from, double to);

  /** {@code origin + t·vector}, unbounded. */
  record Line(Vec3 origin, Vec3 vector) implements Curve {
    @Override
    public Vec3 at(double t) {
      return origin.plus(vector.times(t));
    }

    @Override
    public double start() {
      return Double.NEGATIVE_INFINITY;
    }

    @Override
    public double end() {
      return Double.POSITIVE_INFINITY;
    }

    @Override
    public double parameterAt(Vec3 p) {
      return p.minus(origin).dot(vector) / vector.dot(vector);
    }

    @Override
    public List<Vec3> points(double from, double to) {
      return List.of(at(from), at(to));
    }
  }

  /** Circle or ellipse: {@code frame(a·cos t, b·sin t, 0)}. */
  record Conic(Transform frame, double a, double b) implements Curve {
    @Override
    public Vec3 at(double t) {
      return frame.apply(new Vec3(a * Math.cos(t), b * Math.sin(t), 0));
    }

    @Override
    public double start() {
      return 0;
    }

    @Override
    public double end() {
      return 2 * Math.PI;
    }

    @Override
    public boolean periodic() {
      return true;
    }

    @Override
    public double parameterAt(Vec3 p) {
      Vec3 q = frame.inverse().apply(p);
      return Math.atan2(q.y() / b, q.x() / a);
    }

    @Override
    public List<Vec3> points(double from, double to) {
      int n = Facets.count(Math.max(a, b), to - from);
      List<Vec3> points = new ArrayList<>(n + 1);
      for (int i = 0; i <= n; i++) {
        points.add(at(from + (to - from) * i / n));
      }
      return points;
    }
  }

  /** Straight pieces between corners; the parameter at corner {@code i} is {@code parameters[i]}, ascending. */
  record Path(List<Vec3> corners, double[] parameters) implements Curve {

    /** Corners at 0, 1, 2 …, as for a polyline. */
    static Path of(List<Vec3> corners) {
      double[] parameters = new double[corners.size()];
      for (int i = 0; i < parameters.length; i++) {
        parameters[i] = i;
      }
      return new Path(corners, parameters);
    }

    @Override
    public Vec3 at(double t) {
      int i = piece(t);
      double a = parameters[i];
      double b = parameters[i + 1];
      return corners.get(i).towards(corners.get(i + 1), b > a ? Math.min(1, Math.max(0, (t - a) / (b - a))) : 0);
    }

    private int piece(double t) {
      int i = 0;
      while (i < parameters.length - 2 && t >= parameters[i + 1]) {
        i++;
      }
      return i;
    }

    @Override
    public double start() {
      return parameters[0];
    }

    @Override
    public double end() {
      return parameters[parameters.length - 1];
    }

    @Override
    public double parameterAt(Vec3 p) {
      double best = Double.POSITIVE_INFINITY;
      double parameter = start();
      for (int i = 0; i + 1 < corners.size(); i++) {
        Vec3 a = corners.get(i);
        Vec3 d = corners.get(i + 1).minus(a);
        double square = d.dot(d);
        double s = square > 0 ? Math.min(1, Math.max(0, p.minus(a).dot(d) / square)) : 0;
        double distance = a.plus(d.times(s)).distance(p);
        if (distance < best) {
          best = distance;
          parameter = parameters[i] + s * (parameters[i + 1] - parameters[i]);
        }
      }
      return parameter;
    }

    @Override
    public List<Vec3> points(double from, double to) {
      if (from > to) {
        List<Vec3> back = new ArrayList<>(points(to, from));
        java.util.Collections.reverse(back);
        return back;
      }
      List<Vec3> points = new ArrayList<>();
      points.add(at(from));
      for (int i = 0; i < parameters.length; i++) {
        if (parameters[i] > from && parameters[i] < to) {
          points.add(corners.get(i));
        }
      }
      points.add(at(to));
      return points;
    }
  }
}
