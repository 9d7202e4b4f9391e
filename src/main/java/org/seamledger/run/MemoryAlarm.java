package org.seamledger.run;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.lang.management.MemoryUsage;
import java.util.List;

/**
 * Tells when memory is all but used up after it was collected. A process in that state does nothing but collect, for every client; so the
 * analysis that began last is ended, before the memory is short for all.
 */
public final class MemoryAlarm {

  /** Share of a pool that is in use after a collection. */
  private static final double FULL = 0.93;
  /** In a row, since a single collection may come in the middle of a large allocation. */
  private static final int LOOKS = 3;

  private final List<MemoryPoolMXBean> pools = ManagementFactory.getMemoryPoolMXBeans().stream()
      .filter(p -> p.getType() == MemoryType.HEAP && p.isCollectionUsageThresholdSupported() && p.getUsage().getMax() > 0
          && p.getUsage().getMax() > Runtime.getRuntime().maxMemory() / 2)
      .toList();
  private int full;

  /** Whether it was so at the last looks; to be asked regularly, by one thread. */
  public boolean rings() {
    boolean now = pools.stream().map(MemoryPoolMXBean::getCollectionUsage).anyMatch(MemoryAlarm::isFull);
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
