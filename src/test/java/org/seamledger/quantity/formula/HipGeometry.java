package org.seamledger.quantity.formula;

/**
 * The line in which two faces meet whose eaves meet at a corner of {@code cornerDegrees} in plan: a hip over an outside corner, a valley
 * over an inside one.
 *
 * <p>For slopes t (rise over run) and the line's plan angle δ from each eave: {@code tan(line) = t · sin δ};
 * {@code tan(backing) = sin(line) / tan δ}; the backings of both faces add up to the fold. For a corner of 90°:
 * {@code tan δ1 = t2/t1} and the length for a rise h is {@code h·√(1 + 1/t1² + 1/t2²)}.
 *
 * @param tangent1 slope of the first face, rise over run, positive
 * @param tangent2 slope of the second face
 * @param cornerDegrees plan angle between the eaves, 0 to 180, both exclusive
 */
public record HipGeometry(double tangent1, double tangent2, double cornerDegrees) {

  public HipGeometry {
    if (!(tangent1 > 0) || !(tangent2 > 0) || !(cornerDegrees > 0) || !(cornerDegrees < 180)) {
      throw new IllegalArgumentException("slopes " + tangent1 + " and " + tangent2 + ", corner " + cornerDegrees + "°");
    }
  }

  /** Two faces over a square corner. */
  public static HipGeometry square(double tangent1, double tangent2) {
    return new HipGeometry(tangent1, tangent2, 90);
  }

  /** Plan angle between the line and the first face's eave, degrees. */
  public double planAngleFromEave1() {
    // The line has the same height over both eaves: t1·sin δ1 = t2·sin δ2, δ1 + δ2 = corner.
    double corner = Math.toRadians(cornerDegrees);
    return Math.toDegrees(Math.atan2(tangent2 * Math.sin(corner), tangent1 + tangent2 * Math.cos(corner)));
  }

  public double planAngleFromEave2() {
    return cornerDegrees - planAngleFromEave1();
  }

  /** Angle of the line to the horizontal, degrees. */
  public double lineDegrees() {
    return Math.toDegrees(Math.atan(tangent1 * Math.sin(Math.toRadians(planAngleFromEave1()))));
  }

  public double backing1Degrees() {
    return backing(planAngleFromEave1());
  }

  public double backing2Degrees() {
    return backing(planAngleFromEave2());
  }

  private double backing(double planAngle) {
    return Math.toDegrees(Math.atan(Math.sin(Math.toRadians(lineDegrees())) / Math.tan(Math.toRadians(planAngle))));
  }

  /** Angle by which one face turns into the other: the sum of the backings. */
  public double foldDegrees() {
    return backing1Degrees() + backing2Degrees();
  }

  /** Angle between the faces, measured inside the roof over a hip: {@code 180° − fold}. */
  public double dihedralDegrees() {
    return 180 - foldDegrees();
  }

  /** Plan length of the line for a rise. */
  public double runFor(double rise) {
    return rise / Math.tan(Math.toRadians(lineDegrees()));
  }

  /** True length of the line for a rise. */
  public double lengthFor(double rise) {
    return rise / Math.sin(Math.toRadians(lineDegrees()));
  }

  /** How the line cuts the pans of the first face. */
  public ObliqueCut cut1() {
    return ObliqueCut.of(90 - planAngleFromEave1(), Math.toDegrees(Math.atan(tangent1)));
  }

  public ObliqueCut cut2() {
    return ObliqueCut.of(90 - planAngleFromEave2(), Math.toDegrees(Math.atan(tangent2)));
  }
}
