package org.seamledger.ledger;

import java.util.Locale;
import java.util.Optional;

/**
 * How far the work on one revision of a watched project is.
 *
 * @param created when it was checked in, as the server says: instant, ISO 8601 UTC
 * @param attempts how often work on it failed for a reason that does not pass by itself
 * @param analysis the analysis that was begun for it, or empty
 * @param problem what went wrong last, one line for people, or empty
 */
public record WatchedRevision(Origin origin, String created, Stage stage, int attempts, Optional<String> analysis,
    Optional<String> problem) {

  /** What was done with a revision. */
  public enum Stage {
    /** It was there before the watch began, and was not the newest: nothing is done with it. */
    PASSED,
    /** It shall be analysed. */
    FOUND,
    /** Its analysis has ended, with a result or without; the answer is not with the revision yet. */
    ANALYSED,
    /** The answer is with the revision. */
    ANSWERED,
    /** It was tried often enough, or its analysis was stopped by hand. */
    GIVEN_UP;

    /** The word used in answers and in storage. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static Stage of(String word) {
      return valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }
  }
}
