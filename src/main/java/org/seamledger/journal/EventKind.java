package org.seamledger.journal;

import java.util.Arrays;
import java.util.Optional;

/** What an event says. */
public enum EventKind {
  /** A hold point was looked at and is as it should be, or a step of the work is done. */
  TICK("tick"),
  /** It is open again. */
  UNTICK("untick"),
  /** A hold point is not as it should be; the text says what is wrong and what was done. */
  FAILURE("failure"),
  /** Something was done in another way than the detail says; the text gives the reason. */
  DEVIATION("deviation"),
  /** A picture. */
  PHOTO("photo"),
  /** The weather, in the words of who was there. */
  WEATHER("weather"),
  /** Product and lot number of a sealant. */
  LOT("lot"),
  /** Anything else. */
  NOTE("note"),
  /** Somebody answers for a line or a node as it is now. */
  SIGN_OFF("sign-off"),
  /** A sign-off is taken back. */
  WITHDRAWAL("withdrawal");

  private final String word;

  EventKind(String word) {
    this.word = word;
  }

  /** How it is called in requests and records. */
  public String word() {
    return word;
  }

  public static Optional<EventKind> of(String word) {
    return Arrays.stream(values()).filter(k -> k.word.equals(word)).findFirst();
  }

  /** Whether it says how a hold point or a step stands. */
  boolean isAnswer() {
    return this == TICK || this == UNTICK || this == FAILURE || this == DEVIATION;
  }

  /** Whether it takes more than the right to tick. */
  public boolean needsSigner() {
    return this == SIGN_OFF || this == WITHDRAWAL;
  }

  /** Whether it says nothing without words. */
  boolean needsText() {
    return this == FAILURE || this == DEVIATION || this == WEATHER || this == LOT || this == NOTE;
  }
}
