package org.seamledger.geometry;

/**
 * How finely a circle becomes a polygon: chords off by at most half a millimetre and at least 96 of them a full turn, so a perimeter
 * is short by less than 0.02 % (an inscribed n-gon is short by the factor sin(π/n)/(π/n)). Circles under a centimetre have 48.
 */
public final class Facets {

  /** Greatest distance, in metres, of a chord from its arc, and of a facet from its surface. */
  public static final double DEVIATION = 0.0005;

  private static final double SMALL = 0.01;
  private static final int COARSEST = 48;
  private static final int USUAL = 96;
  private static final int FINEST = 1440;

  private Facets() {
  }

  /** Chords in a full turn of the given radius in metres; a multiple of 4. */
  public static int aTurn(double radius) {
    if (radius < SMALL) {
      return COARSEST;
    }
    double n = radius <= DEVIATION ? COARSEST : Math.PI / Math.acos(1 - DEVIATION / radius);
    int whole = (int) Math.min(FINEST, Math.max(USUAL, Math.ceil(n)));
    return (whole + 3) / 4 * 4;
  }

  /** Chords in an arc of {@code angle} radians, at least one. */
  public static int count(double radius, double angle) {
    return Math.max(1, (int) Math.ceil(aTurn(radius) * Math.abs(angle) / (2 * Math.PI) - 1e-9));
  }
}
