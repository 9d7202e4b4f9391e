package org.seamledger.quantity.layout;

/** Where the seams of a face begin. Left and right are those of a person who looks up the slope. */
public enum Start {
  /** A seam at the left end of the face. */
  LEFT,
  /** A seam at the right end of the face. */
  RIGHT,
  /** A seam, or the middle of a pan, at the middle of the face: whichever leaves the wider pieces at the ends. */
  CENTRED,
  /** A seam where the top edge of the face starts, seen from the left: the left end of its ridge. */
  RIDGE
}
