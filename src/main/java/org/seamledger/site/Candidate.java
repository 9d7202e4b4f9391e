package org.seamledger.site;

import org.seamledger.geometry.Transform;

/**
 * A movement that would make a model fit, with what speaks for it.
 *
 * @param movement in the shared coordinates
 * @param sure how sure it is
 * @param count elements that agree
 * @param why what agrees, for people
 * @param within metres to which the movement is known
 */
record Candidate(Transform movement, Sure sure, int count, String why, double within) {

  /** What models state themselves is as exact as decimals are. */
  static final double STATED = 1e-8;

  Candidate(Transform movement, Sure sure, int count, String why) {
    this(movement, sure, count, why, STATED);
  }

  /** From the least on. */
  enum Sure {
    POSSIBLE("Possibly"), LIKELY("Likely"), VERY_LIKELY("Very likely");

    private final String word;

    Sure(String word) {
      this.word = word;
    }

    /** At the start of a sentence. */
    String word() {
      return word;
    }
  }

  boolean isBetterThan(Candidate other) {
    return other == null || sure.compareTo(other.sure) > 0 || sure == other.sure && count > other.count;
  }
}
