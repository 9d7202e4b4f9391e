package org.seamledger.samples;

/**
 * The slope of a roof plane.
 *
 * @param tan rise for a run of one
 */
public record Pitch(double tan) {

  public static Pitch pitch(double degrees) {
    return new Pitch(StrictMath.tan(StrictMath.toRadians(degrees)));
  }

  /** Rise in 12 of run. */
  public static Pitch per12(double rise) {
    return new Pitch(rise / 12);
  }

  /** True length up the slope for a plan run of one. */
  public double rafter() {
    return Math.sqrt(1 + tan * tan);
  }

  /** True length along a line that runs {@code across} in plan at a right angle to the fall and {@code along} in plan along the fall. */
  public double length(double across, double along) {
    double rise = tan * along;
    return Math.sqrt(across * across + along * along + rise * rise);
  }
}
