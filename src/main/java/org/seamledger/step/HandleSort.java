package org.seamledger.step;

import java.util.function.IntToLongFunction;

/**
 * A stable merge sort of handles by their ids that costs little where they are nearly in order: stretches that already follow each other
 * are left alone, and of others only what overlaps is merged. Files number their instances upwards but for some stretches.
 */
final class HandleSort {

  private static final int RUN = 16;

  private final IntToLongFunction id;
  private int[] aside = new int[RUN];

  HandleSort(IntToLongFunction id) {
    this.id = id;
  }

  /** Sorts in place. */
  int[] sorted(int[] handles) {
    for (int from = 0; from < handles.length; from += RUN) {
      insert(handles, from, Math.min(from + RUN, handles.length));
    }
    for (long width = RUN; width < handles.length; width *= 2) {
      for (long from = 0; from + width < handles.length; from += 2 * width) {
        merge(handles, (int) from, (int) (from + width), (int) Math.min(from + 2 * width, handles.length));
      }
    }
    return handles;
  }

  private void insert(int[] handles, int from, int to) {
    for (int i = from + 1; i < to; i++) {
      int handle = handles[i];
      long key = id.applyAsLong(handle);
      int at = i;
      while (at > from && id.applyAsLong(handles[at - 1]) > key) {
        handles[at] = handles[--at];
      }
      handles[at] = handle;
    }
  }

  private void merge(int[] handles, int from, int middle, int to) {
    if (id.applyAsLong(handles[middle - 1]) <= id.applyAsLong(handles[middle])) {
      return;
    }
    int left = firstAbove(handles, from, middle, id.applyAsLong(handles[middle]));
    int end = firstAtLeast(handles, middle, to, id.applyAsLong(handles[middle - 1]));
    int waiting = middle - left;
    if (aside.length < waiting) {
      aside = new int[Math.max(waiting, (int) Math.min(2L * aside.length, Integer.MAX_VALUE - 8))];
    }
    System.arraycopy(handles, left, aside, 0, waiting);
    int taken = 0;
    int right = middle;
    int at = left;
    while (taken < waiting && right < end) {
      boolean fromRight = id.applyAsLong(handles[right]) < id.applyAsLong(aside[taken]);
      handles[at++] = fromRight ? handles[right++] : aside[taken++];
    }
    System.arraycopy(aside, taken, handles, at, waiting - taken);
  }

  private int firstAbove(int[] handles, int from, int to, long key) {
    int low = from;
    int high = to;
    while (low < high) {
      int middle = low + high >>> 1;
      if (id.applyAsLong(handles[middle]) > key) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  private int firstAtLeast(int[] handles, int from, int to, long key) {
    return key == Long.MIN_VALUE ? from : firstAbove(handles, from, to, key - 1);
  }
}
