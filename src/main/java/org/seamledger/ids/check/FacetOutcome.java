package org.seamledger.ids.check;

import org.seamledger.ids.Occurrence;

/**
 * What an element says to a facet.
 *
 * @param state whether all of it fits, or there is nothing that could
 * @param some whether something fits: that much is enough to break a prohibition
 * @param reason why it doesn't fit, or what fits: the part of a sentence
 */
record FacetOutcome(State state, boolean some, String reason) {

  enum State {
    MET, ABSENT, FAILED
  }

  static FacetOutcome met(String what) {
    return new FacetOutcome(State.MET, true, what);
  }

  static FacetOutcome absent(String why) {
    return new FacetOutcome(State.ABSENT, false, why);
  }

  static FacetOutcome failed(boolean some, String why) {
    return new FacetOutcome(State.FAILED, some, why);
  }

  boolean isMet() {
    return state == State.MET;
  }

  boolean passes(Occurrence occurrence) {
    return switch (occurrence) {
      case REQUIRED -> state == State.MET;
      case OPTIONAL -> state != State.FAILED;
      case PROHIBITED -> !some;
    };
  }

  String why(Occurrence occurrence) {
    return occurrence == Occurrence.PROHIBITED ? reason + ", which is prohibited" : reason;
  }
}
