package org.seamledger.samples;

import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/** A plane that is not vertical: {@code z = z0 + gx·x + gy·y}. */
public record Slope(double z0, double gx, double gy) {

  public static Slope level(double z) {
    return new Slope(z, 0, 0);
  }

  /** The plane through (x, y, z) that rises by {@code pitch} in the plan direction (dx, dy), which has length one. */
  public static Slope rising(double x, double y, double z, double dx, double dy, Pitch pitch) {
    double gx = pitch.tan() * dx;
    double gy = pitch.tan() * dy;
    return new Slope(z - gx * x - gy * y, gx, gy);
  }

  public double z(double x, double y) {
    return z0 + gx * x + gy * y;
  }

  public Vec3 at(Vec2 p) {
    return new Vec3(p.u(), p.v(), z(p.u(), p.v()));
  }

  public Pitch pitch() {
    return new Pitch(Math.hypot(gx, gy));
  }

  /** Plan direction up the slope; +Y for a level plane. */
  public Vec2 up() {
    double t = pitch().tan();
    return t == 0 ? new Vec2(0, 1) : new Vec2(gx / t, gy / t);
  }

  /** Unit normal, upward. */
  public Vec3 normal() {
    return new Vec3(-gx, -gy, 1).unit();
  }

  /** This plane after a turn about the vertical and a shift. */
  public Slope moved(Transform t) {
    Vec3 g = t.applyDirection(new Vec3(gx, gy, 0));
    Vec3 p = t.apply(new Vec3(0, 0, z0));
    return new Slope(p.z() - g.x() * p.x() - g.y() * p.y(), g.x(), g.y());
  }

  public Slope lowered(double by) {
    return new Slope(z0 - by, gx, gy);
  }
}
