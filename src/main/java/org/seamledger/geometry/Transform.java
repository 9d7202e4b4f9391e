package org.seamledger.geometry;

/**
 * An affine map of space: {@code p -> M p + t}, M given row by row. Mirrors and non-uniform scales are allowed; a singular M is the
 * caller's business (see {@link #determinant()}).
 */
public record Transform(
    double m00, double m01, double m02, double tx,
    double m10, double m11, double m12, double ty,
    double m20, double m21, double m22, double tz) {

  public static final Transform IDENTITY = new Transform(1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0);

  /** A move by a vector, metres. */
  public static Transform translation(Vec3 t) {
    return new Transform(1, 0, 0, t.x(), 0, 1, 0, t.y(), 0, 0, 1, t.z());
  }

  /** The map that takes the unit axes to {@code x, y, z} and the origin to {@code origin}. */
  public static Transform axes(Vec3 origin, Vec3 x, Vec3 y, Vec3 z) {
    return new Transform(
        x.x(), y.x(), z.x(), origin.x(),
        x.y(), y.y(), z.y(), origin.y(),
        x.z(), y.z(), z.z(), origin.z());
  }

  /** Maps a point, metres. */
  public Vec3 apply(Vec3 p) {
    return new Vec3(
        m00 * p.x() + m01 * p.y() + m02 * p.z() + tx,
        m10 * p.x() + m11 * p.y() + m12 * p.z() + ty,
        m20 * p.x() + m21 * p.y() + m22 * p.z() + tz);
  }

  /** Maps a direction: the linear part only. */
  public Vec3 applyDirection(Vec3 d) {
    return new Vec3(
        m00 * d.x() + m01 * d.y() + m02 * d.z(),
        m10 * d.x() + m11 * d.y() + m12 * d.z(),
        m20 * d.x() + m21 * d.y() + m22 * d.z());
  }

  /** The map that does {@code inner} first, then this. */
  public Transform after(Transform inner) {
    Vec3 x = applyDirection(new Vec3(inner.m00, inner.m10, inner.m20));
    Vec3 y = applyDirection(new Vec3(inner.m01, inner.m11, inner.m21));
    Vec3 z = applyDirection(new Vec3(inner.m02, inner.m12, inner.m22));
    return axes(apply(new Vec3(inner.tx, inner.ty, inner.tz)), x, y, z);
  }

  /** Factor of volumes, negative where the map mirrors; zero where it is singular. */
  public double determinant() {
    return m00 * (m11 * m22 - m12 * m21) - m01 * (m10 * m22 - m12 * m20) + m02 * (m10 * m21 - m11 * m20);
  }

  /**
   * The map back.
   *
   * @throws IllegalArgumentException if this map is singular
   */
  public Transform inverse() {
    double det = determinant();
    if (!(Math.abs(det) > 1e-300)) {
      throw new IllegalArgumentException("a singular transformation has no inverse");
    }
    double k = 1 / det;
    Transform linear = new Transform(
        (m11 * m22 - m12 * m21) * k, (m02 * m21 - m01 * m22) * k, (m01 * m12 - m02 * m11) * k, 0,
        (m12 * m20 - m10 * m22) * k, (m00 * m22 - m02 * m20) * k, (m02 * m10 - m00 * m12) * k, 0,
        (m10 * m21 - m11 * m20) * k, (m01 * m20 - m00 * m21) * k, (m00 * m11 - m01 * m10) * k, 0);
    Vec3 t = linear.applyDirection(new Vec3(-tx, -ty, -tz));
    return new Transform(
        linear.m00, linear.m01, linear.m02, t.x(),
        linear.m10, linear.m11, linear.m12, t.y(),
        linear.m20, linear.m21, linear.m22, t.z());
  }
}
