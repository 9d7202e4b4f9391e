package org.seamledger.watch;

/** How a round of asking a server went; later ones are worse. */
public enum RoundOutcome {
  /** All that there was to do is done. */
  FINE,
  /** The server didn't answer, or the program failed; it may go better soon. */
  PASSING,
  /** Something that somebody has to mend first, such as a wrong password. */
  TROUBLE;

  RoundOutcome worse(RoundOutcome other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
