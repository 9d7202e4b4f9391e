package org.seamledger.quantity.formula;

/**
 * A line that crosses the seams of a face at an angle: a hip, a valley, a raked edge.
 *
 * <p>With β the plan angle between the line and the fall of the face (0 along the fall, 90 across it), θ the slope and ψ the angle in
 * the plane between line and seams: {@code tan ψ = tan β · cos θ}; a piece across one pan of width w is {@code w / sin ψ} long
 * {@code = w·√(1 + sec²θ / tan²β)}; its end is cut {@code 90° − ψ} from square. β = 90° gives w (a ridge, a wall across the fall); as β
 * nears 0 the line runs along the seams and crosses none (a rake): the length is then infinite.
 *
 * @param psiDegrees in-plane angle between line and seams, 0 to 90
 */
public record ObliqueCut(double psiDegrees) {

  /**
   * @param planAngleToFallDegrees between the line and the fall of the face in plan, 0 to 90
   * @param slopeDegrees of the face
   */
  public static ObliqueCut of(double planAngleToFallDegrees, double slopeDegrees) {
    double beta = Math.toRadians(planAngleToFallDegrees);
    double theta = Math.toRadians(slopeDegrees);
    return new ObliqueCut(Math.toDegrees(Math.atan2(Math.sin(beta) * Math.cos(theta), Math.cos(beta))));
  }

  /** Length along the line across one pan. */
  public double lengthAcross(double coverageM) {
    return coverageM / Math.sin(Math.toRadians(psiDegrees));
  }

  /** Angle of the cut at a piece's end from square. */
  public double bevelDegrees() {
    return 90 - psiDegrees;
  }
}
