package org.seamledger.quantity.physics;

/** Water that wind or a narrow gap holds up. Pressures in Pa, lengths in metres. */
public final class Head {

  private static final double G = 9.80665;
  /** Water at 20 °C, kg/m³. */
  private static final double WATER = 998.2;
  /** Surface tension of water at 20 °C, N/m (textbook). */
  private static final double TENSION = 0.0728;
  /** One inch of water, conventional: 249.08891 Pa. */
  private static final double PA_PER_M = 249.08891 / 0.0254;
  /** 0.00256 psf at 1 mph, in Pa at 1 m/s: 0.6133. */
  private static final double STAGNATION = 0.00256 * 47.88026 / (0.44704 * 0.44704);

  private Head() {
  }

  /** Pressure where wind is stopped: {@code q = 0.00256 · V²} psf, V in mph (½ρV² at 15 °C; the constant of ASCE 7, from memory). */
  public static double stagnationPa(double windMs) {
    return STAGNATION * windMs * windMs;
  }

  /** Height of water that a pressure holds. */
  public static double headM(double pressurePa) {
    return pressurePa / PA_PER_M;
  }

  /** How far up a slope a head reaches: {@code H / sin θ}; infinite on a level face. */
  public static double runUpM(double headM, double slopeDegrees) {
    return headM / Math.sin(Math.toRadians(slopeDegrees));
  }

  /**
   * Rise of water in a gap between parallel plates: {@code h = 2 γ cos α / (ρ g d)}.
   *
   * @param contactDegrees 0 on clean metal, about 70 on paint
   */
  public static double capillaryRiseM(double gapM, double contactDegrees) {
    return 2 * TENSION * Math.cos(Math.toRadians(contactDegrees)) / (WATER * G * gapM);
  }
}
