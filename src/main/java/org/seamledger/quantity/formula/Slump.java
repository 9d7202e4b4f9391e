package org.seamledger.quantity.formula;

/**
 * A bead on a steep surface stays where it is if its yield stress exceeds the shear of its own weight at the wall:
 * {@code τ = ρ · g · b · sin(tilt)} (a plastic that flows only beyond a yield stress; first principles). The yield stress falls as it
 * gets warmer: one more reason to look at vertical beads again before they are capped.
 */
public final class Slump {

  /** Standard gravity, m/s². */
  private static final double G = 9.80665;

  private Slump() {
  }

  /** Yield stress that a bead needs, Pa. {@code tiltDegrees} is the surface's angle to the horizontal, 90 for a wall. */
  public static double neededYieldStressPa(double densityKgM3, double thicknessM, double tiltDegrees) {
    return densityKgM3 * G * thicknessM * Math.sin(Math.toRadians(tiltDegrees));
  }
}
