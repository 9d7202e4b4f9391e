package org.seamledger.graph;

import java.time.Duration;

/**
 * What one query may take.
 *
 * @param duration from its start to its last row
 * @param rows of the answer
 * @param bytes of memory that it may ask for in all, given back or not
 */
public record QueryLimits(Duration duration, int rows, long bytes) {

  /** For questions of others. */
  public static final QueryLimits SERVED = new QueryLimits(Duration.ofSeconds(10), 10_000, 1L << 30);
  /** For one's own. */
  public static final QueryLimits OWN = new QueryLimits(Duration.ofMinutes(5), 1_000_000, 64L << 30);
}
