package org.seamledger.order.stock;

/** What no cutting plan can beat. */
final class StockBound {

  private StockBound() {
  }

  /**
   * The bound L2: for each size k up to half a length, pieces over {@code C − k} are alone, those over half are one a length, and what
   * others of at least k don't fit beside the latter needs lengths of its own.
   *
   * @param sorted descending
   */
  static int of(long[] sorted, long capacity) {
    int n = sorted.length;
    long[] sums = new long[n + 1];
    for (int i = 0; i < n; i++) {
      sums[i + 1] = sums[i] + sorted[i];
    }
    int half = count(sorted, capacity / 2 + 1);
    long best = ceil(sums[n], capacity);
    best = Math.max(best, with(0, sorted, sums, half, capacity));
    for (int i = half; i < n; i++) {
      best = Math.max(best, with(sorted[i], sorted, sums, half, capacity));
    }
    return (int) best;
  }

  private static long with(long k, long[] sorted, long[] sums, int half, long capacity) {
    int alone = Math.min(half, count(sorted, capacity - k + 1));
    int upTo = count(sorted, Math.max(1, k));
    long pairs = half - alone;
    long free = pairs * capacity - (sums[half] - sums[alone]);
    long rest = sums[Math.max(half, upTo)] - sums[half] - free;
    return half + Math.max(0, ceil(rest, capacity));
  }

  private static long ceil(long a, long b) {
    return a <= 0 ? 0 : (a + b - 1) / b;
  }

  /** How many are at least so large. */
  private static int count(long[] sorted, long size) {
    int low = 0;
    int high = sorted.length;
    while (low < high) {
      int middle = (low + high) / 2;
      if (sorted[middle] >= size) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
