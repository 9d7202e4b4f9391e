package org.seamledger.ids.check;

import java.util.Arrays;

/** Which ids an id leads to, in the order in which they came: some twenty bytes a link, whatever the model's size. */
final class LinkTable {

  private static final long[] NONE = {};

  private long[] keys = new long[64];
  /** First and last link of each key, as index + 1; 0 where the place is free. */
  private int[] heads = new int[64];
  private int[] tails = new int[64];
  private int keyCount;
  private long[] targets = new long[64];
  private int[] next = new int[64];
  private int linkCount;

  void add(long from, long to) {
    if (linkCount == targets.length) {
      targets = Arrays.copyOf(targets, 2 * linkCount);
      next = Arrays.copyOf(next, 2 * linkCount);
    }
    targets[linkCount++] = to;
    int place = place(keys, heads, from);
    if (heads[place] == 0) {
      keys[place] = from;
      heads[place] = linkCount;
      keyCount++;
    } else {
      next[tails[place] - 1] = linkCount;
    }
    tails[place] = linkCount;
    if (keyCount * 2 > keys.length) {
      grow();
    }
  }

  private void grow() {
    long[] newKeys = new long[2 * keys.length];
    int[] newHeads = new int[2 * keys.length];
    int[] newTails = new int[2 * keys.length];
    for (int i = 0; i < keys.length; i++) {
      if (heads[i] != 0) {
        int place = place(newKeys, newHeads, keys[i]);
        newKeys[place] = keys[i];
        newHeads[place] = heads[i];
        newTails[place] = tails[i];
      }
    }
    keys = newKeys;
    heads = newHeads;
    tails = newTails;
  }

  private static int place(long[] keys, int[] heads, long key) {
    int mask = keys.length - 1;
    int place = (int) (key * 0x9E3779B97F4A7C15L >>> 32) & mask;
    while (heads[place] != 0 && keys[place] != key) {
      place = place + 1 & mask;
    }
    return place;
  }

  /** Empty where the id leads nowhere. */
  long[] of(long from) {
    int link = heads[place(keys, heads, from)];
    if (link == 0) {
      return NONE;
    }
    int count = 0;
    for (int l = link; l != 0; l = next[l - 1]) {
      count++;
    }
    long[] found = new long[count];
    for (int i = 0; i < count; link = next[link - 1]) {
      found[i++] = targets[link - 1];
    }
    return found;
  }
}
