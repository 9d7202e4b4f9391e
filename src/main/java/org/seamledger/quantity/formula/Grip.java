package org.seamledger.quantity.formula;

import java.util.List;

/**
 * Length of a fastener: what it passes through and how far it holds in what is behind, rounded up to a length that is sold. Metres.
 * Common practice, no source: a self-drilling screw shows three threads and its point behind the last sheet, here 10 mm together.
 */
public final class Grip {

  /** Three threads and the point of a self-drilling screw behind the last sheet: common practice. */
  public static final double BEHIND_SHEET = 0.010;

  /** What a blind rivet needs behind the last sheet to set: from memory, 5 mm. */
  public static final double BEHIND_RIVET = 0.005;

  private static final double INCH = 0.0254;
  private static final List<Double> INCHES = List.of(0.5, 0.625, 0.75, 0.875, 1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0);
  private static final List<Double> MILLIMETRES = List.of(13.0, 16.0, 19.0, 22.0, 25.0, 32.0, 38.0, 45.0, 50.0, 63.0, 75.0, 90.0, 100.0,
      125.0, 150.0);

  private Grip() {
  }

  /**
   * The shortest length on sale that is no shorter than needed; above the longest, whole inches or steps of 25 mm.
   *
   * @param passedM thickness of all that lies between head and ground
   * @param heldM how far it holds in the ground
   */
  public static double lengthM(double passedM, double heldM, boolean metric) {
    double unit = metric ? 0.001 : INCH;
    double needed = (passedM + heldM) / unit - 1e-6;
    double step = metric ? 25 : 1;
    return unit * (metric ? MILLIMETRES : INCHES).stream().filter(l -> l >= needed).findFirst().orElse(Math.ceil(needed / step) * step);
  }
}
