package org.seamledger.watch;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * How long to wait between two rounds. Every pause differs a little by chance, so that many programs that were started together don't ask
 * together for ever. Failures that may pass double the pause up to a limit; trouble that somebody has to mend makes it the limit at
 * once, because a wrong password tried often locks the account on some servers. One good round, and it is the usual pause again.
 */
public final class Backoff {

  private static final double SPREAD = 0.2;
  /** Beyond that many doublings any limit is reached. */
  private static final int MOST_DOUBLINGS = 30;

  private final Duration every;
  private final Duration longest;
  private final RandomGenerator chance;
  private int failures;

  /**
   * @param every the usual pause
   * @param longest the longest, at least the usual one
   */
  public Backoff(Duration every, Duration longest, RandomGenerator chance) {
    if (every.isNegative() || every.isZero() || longest.compareTo(every) < 0) {
      throw new IllegalArgumentException("a pause is longer than nothing, and the longest is no shorter than the usual one");
    }
    this.every = every;
    this.longest = longest;
    this.chance = chance;
  }

  /** The pause after a round: between 80 and 100 percent of what its outcome asks for. */
  public Duration after(Outcome outcome) {
    failures = outcome == Outcome.PASSING ? Math.min(MOST_DOUBLINGS, failures + 1) : 0;
    double full = switch (outcome) {
      case FINE -> every.toMillis();
      case PASSING -> Math.min(longest.toMillis(), every.toMillis() * Math.pow(2, failures));
      case TROUBLE -> longest.toMillis();
    };
    return Duration.ofMillis(Math.max(1, Math.round(full * (1 - SPREAD * chance.nextDouble()))));
  }
}
