package org.seamledger.quantity.physics;

/**
 * Rain that runs off a roof. Flow in m³/s, rainfall in m/s, lengths in metres. Rain alone never floods a seam; drifts, ice, blocked
 * valleys and concentrated discharge do.
 */
public final class Rain {

  /** Manning's n of smooth painted steel: 0.012, in a published table of surfaces (copper, brass, lead 0.011; galvanized 0.016). */
  public static final double SMOOTH_STEEL_N = 0.012;

  private Rain() {
  }

  /** Rational method: {@code Q = C · i · A}; C is 1.0 for a roof, local codes allow 0.8 to 1.0. The area is the plan area. */
  public static double flow(double coefficient, double rainfallMs, double planAreaM2) {
    return coefficient * rainfallMs * planAreaM2;
  }

  /**
   * Depth of even flow over a wide plane by Manning's equation: {@code y = (q · n / √S)^(3/5)}, S the sine of the slope. A level plane
   * has no even flow: the depth is infinite.
   *
   * @param flowPerWidth m²/s
   */
  public static double filmDepthM(double flowPerWidth, double n, double slopeDegrees) {
    return Math.pow(flowPerWidth * n / Math.sqrt(sine(slopeDegrees)), 0.6);
  }

  /** Time until the whole run contributes (kinematic wave): {@code t = (n · L / √S)^0.6 · i^−0.4}, seconds. */
  public static double equilibriumSeconds(double runM, double n, double slopeDegrees, double rainfallMs) {
    return Math.pow(n * runM / Math.sqrt(sine(slopeDegrees)), 0.6) * Math.pow(rainfallMs, -0.4);
  }

  private static double sine(double slopeDegrees) {
    return Math.sin(Math.toRadians(slopeDegrees));
  }

  /** Even flow in a valley: depth in the middle, width of the surface, mean speed. */
  public record ValleyFlow(double depthM, double widthM, double speedMs) {
  }

  /**
   * Even flow in a V whose sides slope {@code z1} and {@code z2} horizontal to one vertical (1 / tan of each face's backing angle), by
   * Manning's equation: {@code Q = (1/n) · A · R^(2/3) · √S} with {@code A = (z1 + z2) y²/2},
   * {@code R = A / (y (√(1 + z1²) + √(1 + z2²)))}, S the sine of the line's slope.
   */
  public static ValleyFlow valley(double flow, double n, double lineDegrees, double z1, double z2) {
    double areaFactor = (z1 + z2) / 2;
    double wetted = Math.hypot(1, z1) + Math.hypot(1, z2);
    double conveyance = areaFactor * Math.pow(areaFactor / wetted, 2.0 / 3) * Math.sqrt(sine(lineDegrees)) / n;
    double depth = Math.pow(flow / conveyance, 3.0 / 8);
    double speed = depth == 0 ? 0 : flow / (areaFactor * depth * depth);
    return new ValleyFlow(depth, (z1 + z2) * depth, speed);
  }
}
