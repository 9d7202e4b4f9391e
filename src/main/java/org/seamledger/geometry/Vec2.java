package org.seamledger.geometry;

/** A point or direction in a plane's own coordinates, metres. */
public record Vec2(double u, double v) {

  public Vec2 {
    if (!Double.isFinite(u) || !Double.isFinite(v)) {
      throw new DegenerateGeometryException("coordinates are too large to compute with");
    }
  }

  /** The sum. */
  public Vec2 plus(Vec2 o) {
    return new Vec2(u + o.u, v + o.v);
  }

  /** The difference: the way from the other here. */
  public Vec2 minus(Vec2 o) {
    return new Vec2(u - o.u, v - o.v);
  }

  /** Every component times a factor. */
  public Vec2 times(double k) {
    return new Vec2(u * k, v * k);
  }

  /** Scalar product; square metres for two lengths. */
  public double dot(Vec2 o) {
    return u * o.u + v * o.v;
  }

  /** The third component of the cross product: positive where {@code o} lies to the left of this. */
  public double cross(Vec2 o) {
    return u * o.v - v * o.u;
  }

  /** Length, metres. */
  public double length() {
    return Math.sqrt(u * u + v * v);
  }

  /** Distance of two points, metres. */
  public double distance(Vec2 o) {
    double du = u - o.u;
    double dv = v - o.v;
    return Math.sqrt(du * du + dv * dv);
  }

  /** This direction turned left by a right angle. */
  public Vec2 left() {
    return new Vec2(-v, u);
  }

  /** The point {@code t} of the way from here to {@code o}. */
  public Vec2 towards(Vec2 o, double t) {
    return new Vec2(u + (o.u - u) * t, v + (o.v - v) * t);
  }
}
