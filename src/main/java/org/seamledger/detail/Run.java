package org.seamledger.detail;

/** How something runs along a junction, and so how its length and its number are counted. */
public enum Run {
  /** From end to end of the line, one length. */
  CONTINUOUS("continuous"),
  /** In every piece between two seams. */
  PER_PIECE("per-piece"),
  /** At every seam that ends at the line: a plug. */
  PER_SEAM("per-seam"),
  /** At every lap of a metal part, across its girth. */
  PER_LAP("per-lap"),
  /** Around the boot of a pipe, on the circle of its fasteners. */
  RING("ring"),
  /** Around a pipe, at the clamp of its boot. */
  COLLAR("collar"),
  /** Once a junction. */
  ONCE("once"),
  /** One at each place of a line of fasteners at the system's spacing of trims: cleats. */
  AT_SPACING("at-spacing"),
  /** One for each begun interval along the line: outlets, brackets. */
  AT_INTERVALS("at-intervals"),
  /** One between two such intervals: expansion joints. */
  BETWEEN_INTERVALS("between-intervals");

  private final String word;

  Run(String word) {
    this.word = word;
  }

  /** The word used in {@code shapes/details-content.ttl}. */
  public String word() {
    return word;
  }
}
