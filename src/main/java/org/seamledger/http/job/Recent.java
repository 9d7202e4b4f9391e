package org.seamledger.http.job;

import java.lang.ref.SoftReference;
import java.util.LinkedHashMap;
import java.util.Map;

/** The few values asked for most recently, by the hash of the result that each was made from, while there is memory for them. */
public final class Recent<T> {

  private static final int KEPT = 12;

  private final Map<String, SoftReference<T>> kept = new LinkedHashMap<>(KEPT, 0.75f, true) {
    private static final long serialVersionUID = 1;

    @Override
    protected boolean removeEldestEntry(Map.Entry<String, SoftReference<T>> eldest) {
      return size() > KEPT;
    }
  };

  public synchronized void put(String hash, T value) {
    kept.put(hash, new SoftReference<>(value));
  }

  /** The value, or null. */
  public synchronized T get(String hash) {
    SoftReference<T> found = kept.get(hash);
    return found == null ? null : found.get();
  }
}
