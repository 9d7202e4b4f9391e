package org.seamledger.geometry;

/**
 * A point or a direction in space, in metres, Z up.
 *
 * <p>Coordinates are finite: a factory that meets NaN or an infinity throws {@link DegenerateGeometryException}, so that no later
 * stage has to check.
 */
public record Vec3(double x, double y, double z) {

  public static final Vec3 ZERO = new Vec3(0, 0, 0);
  /** Between these the square of a length neither vanishes nor overflows. */
  private static final double SHORTEST_SQUARED = 1e-150;
  private static final double LONGEST_SQUARED = 1e150;

  public static final Vec3 X = new Vec3(1, 0, 0);
  public static final Vec3 Y = new Vec3(0, 1, 0);
  public static final Vec3 Z = new Vec3(0, 0, 1);

  public Vec3 {
    if (!Double.isFinite(x) || !Double.isFinite(y) || !Double.isFinite(z)) {
      throw new DegenerateGeometryException("coordinates are too large to compute with");
    }
  }

  /** The sum. */
  public Vec3 plus(Vec3 o) {
    return new Vec3(x + o.x, y + o.y, z + o.z);
  }

  /** The difference: the way from the other here. */
  public Vec3 minus(Vec3 o) {
    return new Vec3(x - o.x, y - o.y, z - o.z);
  }

  /** Every component times a factor. */
  public Vec3 times(double k) {
    return new Vec3(x * k, y * k, z * k);
  }

  /** The opposite direction. */
  public Vec3 negated() {
    return new Vec3(-x, -y, -z);
  }

  /** Scalar product; square metres for two lengths. */
  public double dot(Vec3 o) {
    return x * o.x + y * o.y + z * o.z;
  }

  /** Vector product: square to both, right-handed, as long as the area of their parallelogram. */
  public Vec3 cross(Vec3 o) {
    return new Vec3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  /** Length, metres. */
  public double length() {
    return Math.sqrt(dot(this));
  }

  /** Distance of two points, metres. */
  public double distance(Vec3 o) {
    return minus(o).length();
  }

  /** Length of the horizontal part, metres. */
  public double planLength() {
    return Math.sqrt(x * x + y * y);
  }

  /**
   * This direction with length one.
   *
   * @throws DegenerateGeometryException if the length is zero or so small that the direction is noise
   */
  public Vec3 unit() {
    double l = length();
    if (l > SHORTEST_SQUARED && l < LONGEST_SQUARED) {
      return new Vec3(x / l, y / l, z / l);
    }
    double most = Math.max(Math.abs(x), Math.max(Math.abs(y), Math.abs(z)));
    if (!(most > Double.MIN_NORMAL)) {
      throw new DegenerateGeometryException("a direction has no length");
    }
    return new Vec3(x / most, y / most, z / most).unit();
  }

  /** The point {@code t} of the way from here to {@code o}. */
  public Vec3 towards(Vec3 o, double t) {
    return new Vec3(x + (o.x - x) * t, y + (o.y - y) * t, z + (o.z - z) * t);
  }
}
