package org.seamledger.run;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryType;
import java.lang.management.MemoryUsage;
import java.util.List;
import java.util.function.Supplier;

/**
 * Tells when memory is all but used up after it was collected. A process in that state does nothing but collect, for every client; so the
 * analysis that began last is ended, before the memory is short for all.
 */
public final class MemoryAlarm {

  /** Share of a pool that is in use after a collection. */
  private static final double FULL = 0.93;
  /** In a row, since a single collection may come in the middle of a large allocation. */
  private static final int LOOKS = 3;

  /** What was in use after the last collection, pool by pool. */
  private final List<Supplier<MemoryUsage>> pools;
  private int full;

  /** Of this process. */
  public MemoryAlarm() {
    this(ManagementFactory.getMemoryPoolMXBeans().stream()
        .filter(p -> p.getType() == MemoryType.HEAP && p.isCollectionUsageThresholdSupported() && p.getUsage().getMax() > 0
            && p.getUsage().getMax() > Runtime.getRuntime().maxMemory() / 2)
        .<Supplier<MemoryUsage>>map(p -> p::getCollectionUsage).toList());
  }

  /** @param pools that may be full, each with its use after a collection; null where there is none */
  MemoryAlarm(List<Supplier<MemoryUsage>> pools) {
    this.pools = List.copyOf(pools);
  }

  /** Whether it was so at the last looks; to be asked regularly, by one thread. */
  public boolean rings() {
    boolean now = pools.stream().map(Supplier::get).anyMatch(MemoryAlarm::isFull);
    full = now ? full + 1 : 0;
    if (full < LOOKS) {
      return false;
    }
    full = 0;
    return true;
  }

  private static boolean isFull(MemoryUsage usage) {
    return usage != null && usage.getMax() > 0 && usage.getUsed() > FULL * usage.getMax();
  }
}
