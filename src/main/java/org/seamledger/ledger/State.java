package org.seamledger.ledger;

import java.util.Locale;

/** Where an analysis stands. */
public enum State {
  QUEUED, RUNNING, DONE, FAILED, CANCELLED;

  /** The word used in answers and in storage. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Whether nothing more will happen by itself. */
  public boolean isFinal() {
    return this == DONE || this == FAILED || this == CANCELLED;
  }

  static State of(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT));
  }
}
