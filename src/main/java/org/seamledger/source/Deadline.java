package org.seamledger.source;

import java.time.Duration;

/** When something has to be done. */
final class Deadline {

  private final Duration time;
  private final long endNanos;

  Deadline(Duration time) {
    this.time = time;
    this.endNanos = System.nanoTime() + time.toNanos();
  }

  /** @throws ModelServerException where it is over */
  void check(ServerAccess access) {
    if (System.nanoTime() - endNanos > 0) {
      throw new ModelServerException(ModelServerException.Reason.TIMED_OUT, access + " was not done in " + words(time));
    }
  }

  /** Such as {@code 90 seconds}. */
  static String words(Duration time) {
    return time.toMillis() % 1000 == 0 ? time.toSeconds() + " seconds" : time.toMillis() + " milliseconds";
  }
}
