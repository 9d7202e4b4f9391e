package org.seamledger.source;

import java.time.Duration;

/**
 * How long a server of models may take and how much it may send.
 *
 * @param connect until it takes a connection
 * @param answer until it goes on sending: the longest silence
 * @param download until a whole model is here, with the time that the server takes to write it
 * @param bytes the most bytes of one model
 */
public record ServerLimits(Duration connect, Duration answer, Duration download, long bytes) {

  private static final Duration LONGEST = Duration.ofDays(7);

  /** 10 seconds, one minute, one hour, 16 GiB. */
  public static final ServerLimits DEFAULT =
      new ServerLimits(Duration.ofSeconds(10), Duration.ofMinutes(1), Duration.ofHours(1), UnpackLimits.DEFAULT.bytes());

  public ServerLimits {
    requireInRange(connect);
    requireInRange(answer);
    requireInRange(download);
    if (bytes < 1) {
      throw new IllegalArgumentException("the most bytes of a model must be positive");
    }
  }

  private static void requireInRange(Duration time) {
    if (time.isNegative() || time.isZero() || time.compareTo(LONGEST) > 0) {
      throw new IllegalArgumentException("a limit of time is more than none and at most a week");
    }
  }
}
