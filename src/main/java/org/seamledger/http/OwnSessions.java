package org.seamledger.http;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/** Those of one process: they end with it. */
final class OwnSessions implements Sessions {

  private static final int MOST = 10_000;

  private final LongSupplier nanos;
  private final Map<String, Long> lastUse = new LinkedHashMap<>(16, 0.75f, true) {
    private static final long serialVersionUID = 1;

    @Override
    protected boolean removeEldestEntry(Map.Entry<String, Long> eldest) {
      return size() > MOST;
    }
  };

  /** @param nanos a clock that never jumps */
  OwnSessions(LongSupplier nanos) {
    this.nanos = nanos;
  }

  @Override
  public synchronized String open() {
    String value = Sessions.fresh();
    lastUse.put(value, nanos.getAsLong());
    return value;
  }

  @Override
  public synchronized boolean isOpen(String value) {
    Long used = lastUse.get(value);
    if (used == null || nanos.getAsLong() - used > LIFE.toNanos()) {
      lastUse.remove(value);
      return false;
    }
    lastUse.put(value, nanos.getAsLong());
    return true;
  }

  @Override
  public synchronized void revoke(String value) {
    lastUse.remove(value);
  }
}
