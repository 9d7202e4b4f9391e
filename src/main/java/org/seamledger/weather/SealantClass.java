package org.seamledger.weather;

import org.seamledger.detail.Seal;

/** What sealants have in common that weather matters to. */
public enum SealantClass {
  /** Between sheets, pressed by fasteners. */
  TAPE("tape"),
  /** From the gun, concealed or exposed. */
  BEAD("bead"),
  /** Non-curing, in seams and laps. */
  IN_SEAM("in-seam");

  private final String word;

  SealantClass(String word) {
    this.word = word;
  }

  /** The name in results. */
  public String word() {
    return word;
  }

  /** The class of a form. */
  public static SealantClass of(Seal.Form form) {
    return switch (form) {
      case TAPE -> TAPE;
      case BEAD -> BEAD;
      case IN_SEAM -> IN_SEAM;
    };
  }
}
