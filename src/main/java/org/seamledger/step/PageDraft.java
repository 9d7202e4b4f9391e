package org.seamledger.step;

/** Records of a page that is being filled; one draft serves page after page. */
final class PageDraft {

  static final int MOST = 1 << 16;

  final int[] offsets = new int[MOST];
  final long[] ids = new long[MOST];
  final short[] keywords = new short[MOST];
  /** Offset in the file that {@link #offsets}, 32 bits without sign, count from. */
  long firstOffset;
  int count;

  /** False where the record has to go to a new page. */
  boolean add(long id, long offset, int keyword) {
    if (count == 0) {
      firstOffset = offset;
    }
    long difference = offset - firstOffset;
    if (count == MOST || difference > 0xFFFFFFFFL) {
      return false;
    }
    offsets[count] = (int) difference;
    ids[count] = id;
    keywords[count++] = (short) keyword;
    return true;
  }
}
