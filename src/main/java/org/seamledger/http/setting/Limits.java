package org.seamledger.http.setting;

import java.time.Duration;

/**
 * What one server takes on.
 *
 * @param fileBytes largest model
 * @param requestBytes largest upload, all parts together
 * @param files most models in one upload
 * @param bodyBytes largest JSON body
 * @param running analyses at once
 * @param waiting analyses that may queue
 * @param duration longest run of one analysis
 * @param watchers event streams open at once
 * @param answer longest wait for a server of models while a client waits
 */
public record Limits(long fileBytes, long requestBytes, int files, int bodyBytes, int running, int waiting, Duration duration,
    int watchers, Duration answer) {

  /** Models up to 4 GiB; as many analyses at once as half the processors. */
  public static Limits standard() {
    int running = Math.max(1, Runtime.getRuntime().availableProcessors() / 2);
    return new Limits(4L << 30, 8L << 30, 32, 1 << 16, running, 50, Duration.ofMinutes(30), 64,
        Duration.ofSeconds(20));
  }

  /** The same with room for more that wait. */
  public Limits waiting(int most) {
    return new Limits(fileBytes, requestBytes, files, bodyBytes, running, most, duration, watchers, answer);
  }

  /** The same with another longest run. */
  public Limits lasting(Duration most) {
    return new Limits(fileBytes, requestBytes, files, bodyBytes, running, waiting, most, watchers, answer);
  }
}
