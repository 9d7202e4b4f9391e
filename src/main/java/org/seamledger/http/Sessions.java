package org.seamledger.http;

import java.security.SecureRandom;
import java.time.Duration;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/**
 * Browsers that showed the token: each has a cookie with a random value of its own, which says nothing of the token and can be revoked.
 * They end with the process, and after {@link #LIFE} without use.
 */
final class Sessions {

  static final Duration LIFE = Duration.ofDays(30);
  private static final int MOST = 10_000;
  private static final int BYTES = 32;

  private final SecureRandom random = new SecureRandom();
  private final LongSupplier nanos;
  private final Map<String, Long> lastUse = new LinkedHashMap<>(16, 0.75f, true) {
    private static final long serialVersionUID = 1;

    @Override
    protected boolean removeEldestEntry(Map.Entry<String, Long> eldest) {
      return size() > MOST;
    }
  };

  /** @param nanos a clock that never jumps */
  Sessions(LongSupplier nanos) {
    this.nanos = nanos;
  }

  /** Begins one; returns what its cookie holds. */
  synchronized String open() {
    byte[] bytes = new byte[BYTES];
    random.nextBytes(bytes);
    String value = HexFormat.of().formatHex(bytes);
    lastUse.put(value, nanos.getAsLong());
    return value;
  }

  /** Whether a cookie's value is one of a session that goes on. */
  synchronized boolean isOpen(String value) {
    Long used = lastUse.get(value);
    if (used == null || nanos.getAsLong() - used > LIFE.toNanos()) {
      lastUse.remove(value);
      return false;
    }
    lastUse.put(value, nanos.getAsLong());
    return true;
  }

  /** Ends one. */
  synchronized void revoke(String value) {
    lastUse.remove(value);
  }
}
