package org.seamledger.quantity.formula;

/**
 * A rubbery tape between two metals: it keeps its volume, so what it loses in thickness it gains in width.
 *
 * @param widthM width as rolled
 * @param thicknessM thickness as rolled
 */
public record Tape(double widthM, double thicknessM) {

  public Tape {
    if (!(widthM > 0) || !(thicknessM > 0)) {
      throw new IllegalArgumentException("tape " + widthM + " m by " + thicknessM + " m");
    }
  }

  /** Thickness under a compression, a share of one. */
  public double compressedThicknessM(double compression) {
    return thicknessM * (1 - compression);
  }

  /** Width under a compression: {@code W = b / (1 − c)}, from {@code t_c · W = t · b}. */
  public double compressedWidthM(double compression) {
    if (!(compression >= 0) || !(compression < 1)) {
      throw new IllegalArgumentException("compression " + compression);
    }
    return widthM / (1 - compression);
  }

  /**
   * The compression at which the tape fills a fastening flange of this width; beyond it the tape squeezes out. Negative: wider than the
   * flange from the start.
   */
  public double compressionThatFills(double flangeM) {
    return 1 - widthM / flangeM;
  }

  /** Height of a closure's top above the pan: the closure itself on compressed tape. */
  public double stackM(double closureHeightM, double compression) {
    return closureHeightM + compressedThicknessM(compression);
  }
}
