package org.seamledger.quantity.formula;

import java.util.ArrayList;
import java.util.List;

/**
 * Pieces of a line between the seams that it crosses. Positions are measured along the eave direction of the face; seams stand at
 * {@code origin + k · coverage}.
 */
public final class Pieces {

  private Pieces() {
  }

  /** A piece from {@code from} to {@code to}, positions along the eave. */
  public record Piece(double from, double to) {
    /** Width along the eave, metres. */
    public double width() {
      return to - from;
    }
  }

  /**
   * The gaps between the line's ends and the seams strictly inside it: one more than there are seams inside. A seam within
   * {@code tolerance} of an end makes no piece of its own.
   *
   * @param coverage seam spacing, positive
   * @return in ascending order, gapless from the smaller end to the larger; empty where the ends are within tolerance
   */
  public static List<Piece> between(double start, double end, double origin, double coverage, double tolerance) {
    if (!(coverage > 0)) {
      throw new IllegalArgumentException("coverage " + coverage + " m");
    }
    double low = Math.min(start, end);
    double high = Math.max(start, end);
    List<Piece> pieces = new ArrayList<>();
    if (high - low <= tolerance) {
      return pieces;
    }
    double from = low;
    long k = (long) Math.floor((low + tolerance - origin) / coverage) + 1;
    for (double seam = origin + k * coverage; seam < high - tolerance; seam = origin + ++k * coverage) {
      if (seam > low + tolerance) {
        pieces.add(new Piece(from, seam));
        from = seam;
      }
    }
    pieces.add(new Piece(from, high));
    return pieces;
  }

  /**
   * What remains of a gap for the closure itself once the seams' own thickness is taken off, on a line at {@code psiDegrees} to the
   * seams: {@code gap − allowance / sin ψ}; never negative.
   */
  public static double netLength(double gapAlongLineM, double seamThicknessM, double psiDegrees) {
    double sine = Math.sin(Math.toRadians(psiDegrees));
    return sine < 1e-9 ? 0 : Math.max(0, gapAlongLineM - seamThicknessM / sine);
  }
}
