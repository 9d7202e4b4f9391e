package org.seamledger.ledger;

/**
 * What came of topics that came back.
 *
 * @param accepted findings that are accepted by them
 * @param reopened findings that are open again by them
 * @param comments remarks that were new
 */
public record TopicOutcome(int accepted, int reopened, int comments) {

  static final TopicOutcome NONE = new TopicOutcome(0, 0, 0);

  TopicOutcome and(TopicOutcome other) {
    return new TopicOutcome(accepted + other.accepted, reopened + other.reopened, comments + other.comments);
  }
}
