package org.seamledger.quantity.physics;

/**
 * Water in channels, leaders and over weirs. SI units: flows m³/s, lengths m.
 */
public final class OpenChannel {

  private static final double FOOT = 0.3048;
  private static final double GALLON_PER_MINUTE = 6.30902e-5;
  private static final double INCH = 0.0254;
  /** Nominal sizes of vertical leaders, inches, as the National Standard Plumbing Code 2006, table 13.6.1, lists them. */
  private static final double[] LEADERS = {2, 3, 4, 5, 6, 8, 10, 12, 15};

  /** Diameters of half-round gutters, inches, and what each carries at 1/16 in a foot, square feet at 4 in/h: see {@link #gutterFlow}. */
  private static final double[][] GUTTERS = {{3, 170}, {4, 360}, {5, 625}, {6, 960}, {7, 1380}, {8, 1990}, {10, 3600}};
  /** Square feet at an inch an hour that make a gallon a minute. */
  private static final double SQUARE_FEET = 96.25;
  private static final double RAIN_OF_TABLE = 4;
  private static final double ORIFICE = 0.6;
  private static final double GRAVITY = 9.80665;

  private OpenChannel() {
  }

  /** Size of a gutter's row in the table. */
  private static double gutterFlow(double[] row) {
    return row[1] * RAIN_OF_TABLE / SQUARE_FEET * GALLON_PER_MINUTE;
  }

  /**
   * Diameter of the smallest half-round gutter that carries a flow at a fall of 1/16 in a foot; NaN where none does. Sizes 3 to 6 in from
   * a published table for 4 in/h (170, 360, 625, 960 ft²), which older plumbing codes have too; 7, 8 and 10 in from memory of those.
   */
  public static double gutterDiameter(double flow) {
    for (double[] row : GUTTERS) {
      if (gutterFlow(row) >= flow) {
        return row[0] * INCH;
      }
    }
    return Double.NaN;
  }

  /** Flow through a drowned opening, its head measured to the middle: {@code Q = 0.6 · A · √(2gh)} (coefficient from memory). */
  public static double orificeFlow(double area, double head) {
    return ORIFICE * area * Math.sqrt(2 * GRAVITY * head);
  }

  /**
   * Depth of water over a round hole in a flat bottom through which a flow leaves: over its edge as over a weir without contracted ends
   * ({@code Q = 3.33 · L · H^1.5}, feet, L the circumference), or as an orifice, whichever stands deeper.
   */
  public static double outletHead(double flow, double diameter) {
    double weir = Math.pow(flow / (FOOT * FOOT * FOOT) / (3.33 * Math.PI * diameter / FOOT), 2.0 / 3) * FOOT;
    double ofOneMetre = flow / orificeFlow(Math.PI / 4 * diameter * diameter, 1);
    return Math.max(weir, ofOneMetre * ofOneMetre);
  }

  /** Manning's equation for a rectangle: {@code Q = (1/n) · A · R^(2/3) · √S}, A = b·y, R = A/(b + 2y); S is the fall, m/m. */
  public static double rectangularFlow(double width, double depth, double n, double fall) {
    double area = width * depth;
    return area == 0 ? 0 : area * Math.pow(area / (width + 2 * depth), 2.0 / 3) * Math.sqrt(fall) / n;
  }

  /** Depth at which a rectangular channel carries a flow, by bisection of {@link #rectangularFlow}; the flow grows with the depth. */
  public static double rectangularDepth(double flow, double width, double n, double fall) {
    double low = 0;
    double high = 1e-3;
    while (rectangularFlow(width, high, n, fall) < flow) {
      high *= 2;
    }
    for (int i = 0; i < 60; i++) {
      double mid = (low + high) / 2;
      if (rectangularFlow(width, mid, n, fall) < flow) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return high;
  }

  /**
   * Capacity of a vertical leader that runs 7/24 full: {@code Q = 27.8 · r^(5/3) · d^(8/3)}, gallons a minute and inches, r = 7/24; it
   * gives the National Standard Plumbing Code's table 13.6.1.
   */
  public static double leaderFlow(double diameterM) {
    return 27.8 * Math.pow(7.0 / 24, 5.0 / 3) * Math.pow(diameterM / INCH, 8.0 / 3) * GALLON_PER_MINUTE;
  }

  /** Diameter of the smallest leader of that table that carries a flow; the greatest where none does. */
  public static double leaderDiameter(double flow) {
    for (double inches : LEADERS) {
      if (leaderFlow(inches * INCH) >= flow) {
        return inches * INCH;
      }
    }
    return LEADERS[LEADERS.length - 1] * INCH;
  }

  /**
   * Length of a sharp-crested weir with contracted ends that a flow crosses at a head: from {@code Q = 3.33 · (L − 0.2·H) · H^1.5}, feet
   * and cubic feet a second (Francis).
   */
  public static double weirLength(double flow, double head) {
    double h = head / FOOT;
    return (flow / (FOOT * FOOT * FOOT) / (3.33 * Math.pow(h, 1.5)) + 0.2 * h) * FOOT;
  }
}
