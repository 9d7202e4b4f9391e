package org.seamledger.step;

import java.util.Arrays;

/**
 * Up to 65,536 records, packed: mostly five bytes each. Ids and offsets are 16-bit differences from their block's smallest, 64 records to a
 * block; where a difference in the page doesn't fit, that page has them whole. Keyword numbers are bytes where they are small.
 */
final class Page {

  /** Keyword number of records whose id an earlier record has. */
  static final int REPEATED = 0xFFFF;
  private static final int BLOCK_BITS = 6;
  private static final int BLOCK = 1 << BLOCK_BITS;
  private static final int SHORT = 0xFFFF;
  private static final int BYTE = 0xFF;

  final int count;
  final long firstOffset;
  private final long smallestId;
  /** Differences of the blocks' first offsets from the page's, 32 bits without sign. */
  private final int[] blockOffsets;
  private final short[] offsets;
  private final int[] wideOffsets;
  /** Differences of the blocks' smallest ids from the page's; null with {@link #wideIds}. */
  private final int[] blockIds;
  private final short[] ids;
  private final long[] wideIds;
  private final byte[] keywords;
  private final short[] wideKeywords;

  Page(PageDraft draft) {
    count = draft.count;
    firstOffset = draft.firstOffset;
    int blocks = count + BLOCK - 1 >>> BLOCK_BITS;
    blockOffsets = new int[blocks];
    offsets = packOffsets(draft);
    wideOffsets = offsets == null ? Arrays.copyOf(draft.offsets, count) : null;
    smallestId = smallest(draft.ids, 0, count);
    int[] smallestIds = new int[blocks];
    ids = packIds(draft, smallestIds);
    blockIds = ids == null ? null : smallestIds;
    wideIds = ids == null ? Arrays.copyOf(draft.ids, count) : null;
    keywords = packKeywords(draft);
    wideKeywords = keywords == null ? Arrays.copyOf(draft.keywords, count) : null;
  }

  private short[] packOffsets(PageDraft draft) {
    short[] packed = new short[count];
    for (int i = 0; i < count; i++) {
      int block = i >>> BLOCK_BITS;
      if ((i & BLOCK - 1) == 0) {
        blockOffsets[block] = draft.offsets[i];
      }
      int difference = draft.offsets[i] - blockOffsets[block];
      if (difference >>> Short.SIZE != 0) {
        return null;
      }
      packed[i] = (short) difference;
    }
    return packed;
  }

  private short[] packIds(PageDraft draft, int[] smallestIds) {
    short[] packed = new short[count];
    for (int block = 0; block < smallestIds.length; block++) {
      int from = block << BLOCK_BITS;
      int to = Math.min(from + BLOCK, count);
      long smallest = smallest(draft.ids, from, to);
      // Ids are not negative, so differences of two don't overflow.
      if (smallest - smallestId > Integer.MAX_VALUE) {
        return null;
      }
      smallestIds[block] = (int) (smallest - smallestId);
      for (int i = from; i < to; i++) {
        long difference = draft.ids[i] - smallest;
        if (difference > SHORT) {
          return null;
        }
        packed[i] = (short) difference;
      }
    }
    return packed;
  }

  private static long smallest(long[] ids, int from, int to) {
    long smallest = Long.MAX_VALUE;
    for (int i = from; i < to; i++) {
      smallest = Math.min(smallest, ids[i]);
    }
    return smallest;
  }

  private byte[] packKeywords(PageDraft draft) {
    byte[] packed = new byte[count];
    for (int i = 0; i < count; i++) {
      int keyword = draft.keywords[i] & SHORT;
      if (keyword >= BYTE) {
        return null;
      }
      packed[i] = (byte) keyword;
    }
    return packed;
  }

  long offset(int slot) {
    return firstOffset + (offsets == null
        ? wideOffsets[slot] & 0xFFFFFFFFL
        : (blockOffsets[slot >>> BLOCK_BITS] & 0xFFFFFFFFL) + (offsets[slot] & SHORT));
  }

  long id(int slot) {
    return ids == null ? wideIds[slot] : smallestId + blockIds[slot >>> BLOCK_BITS] + (ids[slot] & SHORT);
  }

  int keyword(int slot) {
    if (keywords == null) {
      return wideKeywords[slot] & SHORT;
    }
    int keyword = keywords[slot] & BYTE;
    return keyword == BYTE ? REPEATED : keyword;
  }

  void setRepeated(int slot) {
    if (keywords == null) {
      wideKeywords[slot] = (short) REPEATED;
    } else {
      keywords[slot] = (byte) BYTE;
    }
  }

  long smallestId() {
    return smallestId;
  }

  /** The slot of an id in a page whose ids ascend, or a negative number. */
  int find(long id) {
    if (ids == null) {
      return Arrays.binarySearch(wideIds, id);
    }
    long difference = id - smallestId;
    if (difference < 0 || difference > (long) blockIds[blockIds.length - 1] + SHORT) {
      return -1;
    }
    int block = blockOf(difference);
    int wanted = (int) (difference - blockIds[block]);
    for (int slot = block << BLOCK_BITS, end = Math.min(slot + BLOCK, count); slot < end; slot++) {
      int there = ids[slot] & SHORT;
      if (there >= wanted) {
        return there == wanted ? slot : -1;
      }
    }
    return -1;
  }

  /** The last block whose smallest id isn't above. */
  private int blockOf(long difference) {
    int low = 0;
    int high = blockIds.length - 1;
    while (low < high) {
      int middle = low + high + 1 >>> 1;
      if (blockIds[middle] <= difference) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }

  /** Writes the handles of a keyword's records from {@code at} on; gives the place behind them. */
  int list(int keyword, int firstHandle, int[] into, int at) {
    int n = at;
    if (keywords == null) {
      short wanted = (short) keyword;
      for (int slot = 0; slot < count; slot++) {
        if (wideKeywords[slot] == wanted) {
          into[n++] = firstHandle + slot;
        }
      }
    } else if (keyword < BYTE) {
      byte wanted = (byte) keyword;
      for (int slot = 0; slot < count; slot++) {
        if (keywords[slot] == wanted) {
          into[n++] = firstHandle + slot;
        }
      }
    }
    return n;
  }
}
