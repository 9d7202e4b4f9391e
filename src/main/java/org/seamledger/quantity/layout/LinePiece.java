package org.seamledger.quantity.layout;

import org.seamledger.geometry.Vec3;
import org.seamledger.quantity.formula.ObliqueCut;

/**
 * A piece of a line between two seams of a face.
 *
 * @param widthM extent along the eave
 * @param lengthM true length along the line
 * @param psiDegrees angle in the face between the line and the seams, 90 across the fall; the mean over the piece
 * @param middle of the piece on the line, in the building's local coordinates
 */
public record LinePiece(double widthM, double lengthM, double psiDegrees, Vec3 middle) {

  /** Cut of its ends from square, degrees. */
  public double bevelDegrees() {
    return new ObliqueCut(psiDegrees).bevelDegrees();
  }
}
