package org.seamledger.http.job;

import java.lang.ref.SoftReference;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

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

  /** What those lock who make a value, by its hash. */
  private final Map<String, Object> making = new ConcurrentHashMap<>();

  /** The value, made if it is not here: once, however many ask for it meanwhile; who asks for another does not wait for it. */
  public T get(String hash, Supplier<T> maker) {
    T found = get(hash);
    if (found != null) {
      return found;
    }
    Object mine = making.computeIfAbsent(hash, h -> new Object());
    try {
      synchronized (mine) {
        found = get(hash);
        if (found == null) {
          found = maker.get();
          put(hash, found);
        }
        return found;
      }
    } finally {
      making.remove(hash, mine);
    }
  }

  public synchronized void put(String hash, T value) {
    kept.put(hash, new SoftReference<>(value));
  }

  /** The value, or null. */
  public synchronized T get(String hash) {
    SoftReference<T> found = kept.get(hash);
    return found == null ? null : found.get();
  }
}
