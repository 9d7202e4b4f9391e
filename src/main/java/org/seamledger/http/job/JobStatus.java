package org.seamledger.http.job;

import org.seamledger.ledger.State;

/**
 * How far one analysis is.
 *
 * @param stage what is being done, a few words for people
 * @param fraction 0 to 1 of the whole
 */
public record JobStatus(State state, String stage, double fraction) {

  /** Of one that waits for its turn, or is over. */
  static JobStatus of(State state) {
    return new JobStatus(state, state == State.DONE ? "Done" : "", state == State.DONE ? 1 : 0);
  }
}
