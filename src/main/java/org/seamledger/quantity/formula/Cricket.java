package org.seamledger.quantity.formula;

/**
 * A cricket behind a curb on one slope: a level ridge from the middle of the curb's upper side back into the roof, and a plane to each
 * side.
 *
 * <p>With W the curb's width and t the roof's rise over run: height {@code H = t·W/2} (the heights of the International Residential Code's
 * table R1003.20.1, W/2 at 12:12, W/4 at 6:12, follow), ridge {@code W/2} long, each valley {@code √(W²/2 + H²)}, each plane a triangle of
 * {@code W/4·√(W²/4 + H²)}. Derived from its three corners.
 *
 * @param areaM2 of both planes, without laps
 * @param seamM ridge and both valleys
 */
public record Cricket(double heightM, double areaM2, double seamM) {

  public static Cricket behind(double widthM, double slopeDegrees) {
    double half = widthM / 2;
    double height = half * Math.tan(Math.toRadians(slopeDegrees));
    return new Cricket(height, half * Math.hypot(half, height), half + 2 * Math.sqrt(2 * half * half + height * height));
  }
}
