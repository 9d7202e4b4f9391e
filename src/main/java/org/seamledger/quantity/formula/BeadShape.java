package org.seamledger.quantity.formula;

/** Cross-section of a bead of sealant. */
public enum BeadShape {
  /** Laid bead of diameter d: {@code πd²/4}. */
  ROUND("round", Math.PI / 4),
  /** In a corner, both legs a, hypotenuse flush: {@code a²/2}. */
  FILLET("fillet", 0.5),
  /** In a corner, tooled to a quarter circle of radius a: {@code a²(1 − π/4)}. */
  TOOLED_FILLET("tooled-fillet", 1 - Math.PI / 4),
  /** On a flat surface, half a circle of width b: {@code πb²/8}. */
  HALF_ROUND("half-round", Math.PI / 8);

  private final String word;
  private final double factor;

  BeadShape(String word, double factor) {
    this.word = word;
    this.factor = factor;
  }

  /** The name in files and results. */
  public String word() {
    return word;
  }

  /** Area in square metres for the nominal size in metres. */
  public double areaM2(double sizeM) {
    return factor * sizeM * sizeM;
  }
}
