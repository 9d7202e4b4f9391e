package org.seamledger.step;

import java.util.Arrays;

/**
 * Up to 65,536 records, packed: mostly five bytes each. Records go by blocks of 64. Of an offset 16 bits are kept, its difference from the
 * block's first; of an id the lowest 16 bits, which with the block's smallest id give the whole, as long as the block's ids lie close
 * enough. Where one of a page's doesn't fit, that page has them whole. Keyword numbers are bytes where they are small.
 */
final class IndexPage {

  /** Keyword number of records whose id an earlier record has, and the byte for it. */
  static final int REPEATED = 0xFFFF;
  static final int REPEATED_BYTE = 0xFF;
  static final int BLOCK_BITS = 6;
  static final int BLOCK = 1 << BLOCK_BITS;

  final int count;
  final long firstOffset;
  final long firstId;
  /** Differences of the blocks' first offsets from the page's, 32 bits without sign; null with {@link #wideOffsets}. */
  private final int[] blockOffsets;
  private final short[] offsets;
  private final int[] wideOffsets;
  /** Differences of the blocks' smallest ids from the page's first; null with {@link #wideIds}. */
  private final int[] blockIds;
  private final short[] ids;
  private final long[] wideIds;
  private final byte[] keywords;
  private final short[] wideKeywords;

  IndexPage(IndexPageDraft draft) {
    draft.endBlock();
    count = draft.count;
    firstOffset = draft.firstOffset;
    firstId = draft.ids[0];
    int blocks = count + BLOCK - 1 >>> BLOCK_BITS;
    boolean packed = draft.offsetsFit;
    blockOffsets = packed ? Arrays.copyOf(draft.blockOffsets, blocks) : null;
    offsets = packed ? Arrays.copyOf(draft.packedOffsets, count) : null;
    wideOffsets = packed ? null : Arrays.copyOf(draft.offsets, count);
    packed = draft.idsFit;
    blockIds = packed ? Arrays.copyOf(draft.blockIds, blocks) : null;
    ids = packed ? Arrays.copyOf(draft.packedIds, count) : null;
    wideIds = packed ? null : Arrays.copyOf(draft.ids, count);
    packed = draft.keywordsFit;
    keywords = packed ? Arrays.copyOf(draft.packedKeywords, count) : null;
    wideKeywords = packed ? null : Arrays.copyOf(draft.keywords, count);
  }

  long offset(int slot) {
    return firstOffset + (offsets == null
        ? wideOffsets[slot] & 0xFFFFFFFFL
        : (blockOffsets[slot >>> BLOCK_BITS] & 0xFFFFFFFFL) + (offsets[slot] & 0xFFFF));
  }

  long id(int slot) {
    if (ids == null) {
      return wideIds[slot];
    }
    long smallest = firstId + blockIds[slot >>> BLOCK_BITS];
    return smallest + (ids[slot] - (int) smallest & 0xFFFF);
  }

  int keyword(int slot) {
    if (keywords == null) {
      return wideKeywords[slot] & 0xFFFF;
    }
    int keyword = keywords[slot] & 0xFF;
    return keyword == REPEATED_BYTE ? REPEATED : keyword;
  }

  void setRepeated(int slot) {
    if (keywords == null) {
      wideKeywords[slot] = (short) REPEATED;
    } else {
      keywords[slot] = (byte) REPEATED_BYTE;
    }
  }

  /** The slot of an id in a page whose ids ascend, or a negative number. */
  int find(long id) {
    if (ids == null) {
      return Arrays.binarySearch(wideIds, id);
    }
    long difference = id - firstId;
    if (difference < 0 || difference > (long) blockIds[blockIds.length - 1] + 0xFFFF) {
      return -1;
    }
    int block = blockOf(difference);
    long smallest = firstId + blockIds[block];
    long above = id - smallest;
    for (int slot = block << BLOCK_BITS, end = Math.min(slot + BLOCK, count); slot < end; slot++) {
      int there = ids[slot] - (int) smallest & 0xFFFF;
      if (there >= above) {
        return there == above ? slot : -1;
      }
    }
    return -1;
  }

  /** The last block whose first id isn't above. */
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
    } else if (keyword < REPEATED_BYTE) {
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
