package org.seamledger.http;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/** Slows down who guesses at the token: after some wrong ones, further ones from the same address are not even looked at for a while. */
final class GuessBrake {

  /** Wrong tokens that an address may show before it has to wait. */
  static final int FREE = 10;
  static final Duration PAUSE = Duration.ofMinutes(1);
  private static final int MOST = 10_000;

  private record Guesses(int wrong, long last) {
  }

  private final LongSupplier nanos;
  private final Map<String, Guesses> byAddress = new LinkedHashMap<>(16, 0.75f, true) {
    private static final long serialVersionUID = 1;

    @Override
    protected boolean removeEldestEntry(Map.Entry<String, Guesses> eldest) {
      return size() > MOST;
    }
  };

  /** @param nanos a clock that never jumps */
  GuessBrake(LongSupplier nanos) {
    this.nanos = nanos;
  }

  /** Whether an address has to wait before it may show a token again. */
  synchronized boolean holds(String address) {
    Guesses g = byAddress.get(network(address));
    return g != null && g.wrong >= FREE && nanos.getAsLong() - g.last < PAUSE.toNanos();
  }

  synchronized void wrong(String address) {
    Guesses g = byAddress.get(network(address));
    long now = nanos.getAsLong();
    boolean again = g != null && now - g.last < PAUSE.toNanos();
    byAddress.put(network(address), new Guesses(again ? g.wrong + 1 : 1, now));
  }

  /** Who has one address of IPv6 has all of its network (RFC 6177: 64 bits). */
  private static String network(String address) {
    String[] parts = address.split(":", -1);
    return parts.length < 5 ? address : String.join(":", parts[0], parts[1], parts[2], parts[3]);
  }
}
