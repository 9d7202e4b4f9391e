package org.seamledger.ifc.curve;

import org.seamledger.geometry.Facets;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/** A curved surface with two parameters. */
interface Surface {

  Vec3 at(double u, double v);

  /**
   * Parameters of the surface's point nearest to {@code p}.
   *
   * @param near parameters of a point close by on the same line, or null; settles what is ambiguous, as at a pole
   */
  Vec2 parameters(Vec3 p, Vec2 near);

  /**
   * How far (metres) the middle of an edge inside a face may lie off the surface. Outlines are off by {@link Facets#DEVIATION} at most, and
   * diagonals between their points by twice as much; that is enough for a surface that is straight one way. One that is curved both
   * ways would fall into tens of thousands of facets.
   */
  default double flatEnough() {
    return 8 * Facets.DEVIATION;
  }

  /** What {@code u} goes round by, or 0. */
  default double uPeriod() {
    return 0;
  }

  default double vPeriod() {
    return 0;
  }

  /** The point in which lines of constant {@code u} meet beyond {@code v}, as a value of {@code v}; NaN where they don't. */
  default double pole(boolean above) {
    return Double.NaN;
  }

  /** {@code frame(r cos u, r sin u, v)} */
  record Cylinder(Transform frame, Transform back, double r) implements Surface {
    Cylinder(Transform frame, double r) {
      this(frame, frame.inverse(), r);
    }

    @Override
    public double flatEnough() {
      return 2.01 * Facets.DEVIATION;
    }

    @Override
    public Vec3 at(double u, double v) {
      return frame.apply(new Vec3(r * Math.cos(u), r * Math.sin(u), v));
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      Vec3 q = back.apply(p);
      return new Vec2(Math.atan2(q.y(), q.x()), q.z());
    }

    @Override
    public double uPeriod() {
      return 2 * Math.PI;
    }
  }

  /** Longitude {@code u}, latitude {@code v}. */
  record Sphere(Transform frame, Transform back, double r) implements Surface {
    Sphere(Transform frame, double r) {
      this(frame, frame.inverse(), r);
    }

    @Override
    public Vec3 at(double u, double v) {
      return frame.apply(new Vec3(r * Math.cos(v) * Math.cos(u), r * Math.cos(v) * Math.sin(u), r * Math.sin(v)));
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      Vec3 q = back.apply(p);
      double plan = q.planLength();
      boolean atPole = plan < 1e-9 * r;
      return new Vec2(atPole ? near == null ? 0 : near.u() : Math.atan2(q.y(), q.x()), Math.atan2(q.z(), plan));
    }

    @Override
    public double uPeriod() {
      return 2 * Math.PI;
    }

    @Override
    public double pole(boolean above) {
      return above ? Math.PI / 2 : -Math.PI / 2;
    }
  }

  /** {@code frame((R + r cos v) cos u, (R + r cos v) sin u, r sin v)} */
  record Torus(Transform frame, Transform back, double major, double minor) implements Surface {
    Torus(Transform frame, double major, double minor) {
      this(frame, frame.inverse(), major, minor);
    }

    @Override
    public Vec3 at(double u, double v) {
      double r = major + minor * Math.cos(v);
      return frame.apply(new Vec3(r * Math.cos(u), r * Math.sin(u), minor * Math.sin(v)));
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      Vec3 q = back.apply(p);
      return new Vec2(Math.atan2(q.y(), q.x()), Math.atan2(q.z(), q.planLength() - major));
    }

    @Override
    public double uPeriod() {
      return 2 * Math.PI;
    }

    @Override
    public double vPeriod() {
      return 2 * Math.PI;
    }
  }

  /** A flat curve moved along a direction: {@code frame(curve(u) + v·direction)}. */
  record Extruded(Transform frame, Transform back, Curve curve, Vec3 direction) implements Surface {
    @Override
    public double flatEnough() {
      return 2.01 * Facets.DEVIATION;
    }

    @Override
    public Vec3 at(double u, double v) {
      return frame.apply(curve.at(u).plus(direction.times(v)));
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      Vec3 q = back.apply(p);
      double v = q.z() / direction.z();
      return new Vec2(curve.parameterAt(q.minus(direction.times(v))), v);
    }

    @Override
    public double uPeriod() {
      return period(curve);
    }
  }

  /** What a curve's parameter goes round by, or 0 for one with two ends. */
  static double period(Curve c) {
    if (c.periodic()) {
      return 2 * Math.PI;
    }
    return Double.isInfinite(c.start()) || c.at(c.start()).distance(c.at(c.end())) > 1e-6 ? 0 : c.end() - c.start();
  }

  /** A flat curve turned round an axis in its plane by {@code u}; {@code v} is the curve's parameter. */
  record Revolved(Transform frame, Transform back, Curve curve, Vec3 origin, Vec3 axis) implements Surface {
    @Override
    public Vec3 at(double u, double v) {
      Vec3 p = curve.at(v).minus(origin);
      Vec3 along = axis.times(p.dot(axis));
      Vec3 out = p.minus(along);
      return frame.apply(origin.plus(along).plus(out.times(Math.cos(u))).plus(axis.cross(out).times(Math.sin(u))));
    }

    @Override
    public Vec2 parameters(Vec3 p, Vec2 near) {
      Vec3 q = back.apply(p).minus(origin);
      Vec3 along = axis.times(q.dot(axis));
      Vec3 out = q.minus(along);
      Vec3 side = Vec3.Z.cross(axis);
      Vec2 best = null;
      double distance = Double.POSITIVE_INFINITY;
      for (Vec3 way : new Vec3[] {side, side.negated()}) {
        Vec3 flat = origin.plus(along).plus(way.times(out.length()));
        double v = curve.parameterAt(flat);
        if (curve.at(v).distance(flat) < distance) {
          distance = curve.at(v).distance(flat);
          double u = out.length() < 1e-9 ? near == null ? 0 : near.u() : Math.atan2(axis.cross(way).dot(out), way.dot(out));
          best = new Vec2(u, v);
        }
      }
      return best;
    }

    @Override
    public double uPeriod() {
      return 2 * Math.PI;
    }

    @Override
    public double vPeriod() {
      return period(curve);
    }

    @Override
    public double pole(boolean above) {
      if (Double.isInfinite(curve.start())) {
        return Double.NaN;
      }
      double v = above ? curve.end() : curve.start();
      Vec3 p = curve.at(v).minus(origin);
      return p.minus(axis.times(p.dot(axis))).length() < 1e-6 ? v : Double.NaN;
    }
  }
}
