package org.seamledger.quantity.physics;

/**
 * Two metals in wet contact: the more active one corrodes, the faster the further apart they are and the larger the nobler surface.
 *
 * <p>Order of metals: the galvanic series of MIL-STD-889B, from magnesium and zinc over aluminium, lead, steel and stainless to copper.
 * Limits of the difference in anodic index: 0.15 V in harsh or marine air, 0.25 V outdoors, 0.50 V indoors (from memory, to be checked
 * against the standard before use). Area rule of the same standard: the small part, the fastener, shall be the nobler one.
 */
public final class Galvanic {

  /** Difference allowed near the sea. */
  public static final double MARINE_LIMIT_V = 0.15;
  /** Difference allowed outdoors otherwise. */
  public static final double OUTDOOR_LIMIT_V = 0.25;

  private static final double EQUAL_V = 1e-9;

  private Galvanic() {
  }

  /** What a pair comes to. */
  public enum Verdict {
    /** Close enough in the series. */
    COMPATIBLE("compatible"),
    /** Far apart, but the small part is the noble one: usual practice with a washer or tape that keeps water out between them. */
    SMALL_NOBLE("small-noble"),
    /** Far apart, and the small part, or one of two equals, is the one that corrodes. */
    CORRODES("corrodes");

    private final String word;

    Verdict(String word) {
      this.word = word;
    }

    /** The name in results. */
    public String word() {
      return word;
    }
  }

  /** Difference of the anodic indices, volts. */
  public static double differenceV(Metal a, Metal b) {
    return Math.abs(a.anodicIndexV() - b.anodicIndexV());
  }

  /** Two sheets that touch. */
  public static Verdict sheets(Metal a, Metal b, boolean marine) {
    return within(a, b, marine) ? Verdict.COMPATIBLE : Verdict.CORRODES;
  }

  /** A fastener through a sheet. */
  public static Verdict fastener(Metal fastener, Metal sheet, boolean marine) {
    if (within(fastener, sheet, marine)) {
      return Verdict.COMPATIBLE;
    }
    return fastener.anodicIndexV() < sheet.anodicIndexV() ? Verdict.SMALL_NOBLE : Verdict.CORRODES;
  }

  /** Whether water that ran over copper eats a metal: zinc, aluminium, and what is coated with them (GSA 07610-01-R). */
  public static boolean eatenByCopper(Metal metal) {
    return switch (metal) {
      case ZINC, GALVANIZED_STEEL, ALUMINIUM_ZINC_STEEL, ALUMINIUM -> true;
      default -> false;
    };
  }

  private static boolean within(Metal a, Metal b, boolean marine) {
    return differenceV(a, b) <= (marine ? MARINE_LIMIT_V : OUTDOOR_LIMIT_V) + EQUAL_V;
  }
}
