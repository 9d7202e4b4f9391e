package org.seamledger.source;

/**
 * How much a packed model may grow.
 *
 * @param bytes the most bytes after unpacking
 * @param ratio the most bytes out for one byte in, once {@link #RATIO_FROM} bytes are out
 */
public record UnpackLimits(long bytes, int ratio) {

  /** Below this many bytes out no ratio is held against a model. */
  public static final long RATIO_FROM = 64L << 20;

  /** 16 GiB, and 300 bytes out for one in; STEP text packs to between a fifth and a hundredth. */
  public static final UnpackLimits DEFAULT = new UnpackLimits(16L << 30, 300);

  public UnpackLimits {
    if (bytes < 1 || ratio < 1) {
      throw new IllegalArgumentException("limits of unpacking must be positive");
    }
  }
}
