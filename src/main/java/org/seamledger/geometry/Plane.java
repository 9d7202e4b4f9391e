package org.seamledger.geometry;

/**
 * A plane with an upward or sideways unit normal and a frame of its own.
 *
 * <p>In the frame, {@code u} is horizontal and {@code v} points up the slope, so a roof face's in-plane coordinates read as "along
 * the eave" and "up the slope", both true lengths in metres. A level plane has {@code u = X} and {@code v = Y}. The frame is
 * right-handed: {@code u × v = normal}, for a normal that points up; seen from outside, areas turn counter-clockwise.
 *
 * @param normal unit normal
 * @param distance signed distance of the plane from the origin: {@code normal·p = distance}
 */
public record Plane(Vec3 normal, double distance, Vec3 origin, Vec3 u, Vec3 v) {

  /** Below this sine of the slope a plane counts as exactly level for the choice of its frame (not for any rule). */
  private static final double LEVEL = 1e-9;

  /** The plane through {@code point} with the given normal, of any length but zero. */
  public static Plane through(Vec3 point, Vec3 normal) {
    Vec3 n = normal.unit();
    double d = n.dot(point);
    Vec3 across = Vec3.Z.cross(n);
    Vec3 u = across.length() < LEVEL ? Vec3.X : across.unit();
    return new Plane(n, d, n.times(d), u, n.cross(u));
  }

  /** Signed distance of {@code p}, positive on the side the normal points to. */
  public double height(Vec3 p) {
    return normal.dot(p) - distance;
  }

  /** Coordinate along the plane's horizontal axis of the point's foot in the plane, metres. */
  public double u(Vec3 p) {
    return u.dot(p.minus(origin));
  }

  /** Coordinate up the slope of the point's foot in the plane, metres. */
  public double v(Vec3 p) {
    return v.dot(p.minus(origin));
  }

  /** The point of space at (u, v), metres. */
  public Vec3 at(double uu, double vv) {
    return new Vec3(
        origin.x() + u.x() * uu + v.x() * vv,
        origin.y() + u.y() * uu + v.y() * vv,
        origin.z() + u.z() * uu + v.z() * vv);
  }

  /** The parallel plane {@code by} metres along the normal; its frame's origin moves along the normal too, so (u, v) stay. */
  public Plane moved(double by) {
    return new Plane(normal, distance + by, origin.plus(normal.times(by)), u, v);
  }

  /** The plane {@code by} metres vertically higher. In-plane coordinates of a point straight above differ: see {@link #at}. */
  public Plane lifted(double by) {
    return moved(by * normal.z());
  }

  /** The same plane seen from the other side, with the frame of that side. */
  public Plane flipped() {
    return through(origin, normal.negated());
  }

  /** Angle to the horizontal in degrees, 0 to 90. */
  public double slopeDegrees() {
    return Math.toDegrees(Math.atan2(normal.planLength(), Math.abs(normal.z())));
  }

  /** Elevation of the plane straight above or below (x, y); only for planes that are not vertical. */
  public double elevation(double x, double y) {
    return (distance - normal.x() * x - normal.y() * y) / normal.z();
  }
}
