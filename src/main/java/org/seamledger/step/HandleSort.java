package org.seamledger.step;

import java.util.Arrays;
import java.util.function.IntToLongFunction;

/**
 * A stable sort of handles by their ids that costs little where they are nearly in order: files number their instances upwards but for
 * some stretches. Runs of 65,536 handles are sorted by counting, as their ids mostly lie close together, and then merged; runs that already
 * follow each other are left alone, and of others only what overlaps is merged.
 */
final class HandleSort {

  private static final int RUN = 1 << 16;
  private static final int SHORT_RUN = 16;
  /** Ids further apart than this in one run are not counted but merged. */
  private static final int WIDEST = 1 << 20;

  private final IntToLongFunction id;
  private int[] aside = new int[SHORT_RUN];
  private int[] places = new int[0];

  HandleSort(IntToLongFunction id) {
    this.id = id;
  }

  /** Sorts in place. */
  int[] sorted(int[] handles) {
    for (long from = 0; from < handles.length; from += RUN) {
      sortRun(handles, (int) from, (int) Math.min(from + RUN, handles.length));
    }
    mergeAll(handles, 0, handles.length, RUN);
    return handles;
  }

  private void sortRun(int[] handles, int from, int to) {
    long smallest = Long.MAX_VALUE;
    long largest = 0;
    long last = -1;
    boolean ascending = true;
    for (int i = from; i < to; i++) {
      long key = id.applyAsLong(handles[i]);
      ascending &= key >= last;
      last = key;
      smallest = Math.min(smallest, key);
      largest = Math.max(largest, key);
    }
    if (ascending) {
      return;
    }
    if (largest - smallest < WIDEST) {
      count(handles, from, to, smallest, (int) (largest - smallest) + 1);
    } else {
      for (int at = from; at < to; at += SHORT_RUN) {
        insert(handles, at, Math.min(at + SHORT_RUN, to));
      }
      mergeAll(handles, from, to, SHORT_RUN);
    }
  }

  private void count(int[] handles, int from, int to, long smallest, int range) {
    if (places.length < range) {
      places = new int[range];
    }
    Arrays.fill(places, 0, range, 0);
    for (int i = from; i < to; i++) {
      places[(int) (id.applyAsLong(handles[i]) - smallest)]++;
    }
    int place = from;
    for (int i = 0; i < range; i++) {
      int here = places[i];
      places[i] = place;
      place += here;
    }
    copyAside(handles, from, to);
    for (int i = 0; i < to - from; i++) {
      handles[places[(int) (id.applyAsLong(aside[i]) - smallest)]++] = aside[i];
    }
  }

  private void copyAside(int[] handles, int from, int to) {
    if (aside.length < to - from) {
      aside = new int[Math.max(to - from, (int) Math.min(2L * aside.length, Integer.MAX_VALUE - 8))];
    }
    System.arraycopy(handles, from, aside, 0, to - from);
  }

  /** Merges sorted runs of a width until all is one. */
  private void mergeAll(int[] handles, int start, int end, int run) {
    for (long width = run; width < end - start; width *= 2) {
      for (long from = start; from + width < end; from += 2 * width) {
        merge(handles, (int) from, (int) (from + width), (int) Math.min(from + 2 * width, end));
      }
    }
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
    copyAside(handles, left, middle);
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
