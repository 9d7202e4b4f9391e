package org.seamledger.step;

/**
 * Records of a page that is being filled, packed and as they are; one draft serves page after page. See {@link IndexPage} for the packing.
 */
final class IndexPageDraft {

  static final int MOST = 1 << 16;
  private static final int BLOCKS = MOST >>> IndexPage.BLOCK_BITS;

  final int[] offsets = new int[MOST];
  final long[] ids = new long[MOST];
  final short[] keywords = new short[MOST];
  final int[] blockOffsets = new int[BLOCKS];
  final int[] blockIds = new int[BLOCKS];
  final short[] packedOffsets = new short[MOST];
  final short[] packedIds = new short[MOST];
  final byte[] packedKeywords = new byte[MOST];
  boolean offsetsFit;
  boolean idsFit;
  boolean keywordsFit;
  /** Offset in the file that {@link #offsets}, 32 bits without sign, count from. */
  long firstOffset;
  int count;
  private long blockOffset;
  private long smallestInBlock;
  private long largestInBlock;

  IndexPageDraft() {
    clear();
  }

  void clear() {
    count = 0;
    offsetsFit = true;
    idsFit = true;
    keywordsFit = true;
  }

  /** False where the record has to go to a new page. */
  boolean add(long id, long offset, int keyword) {
    int slot = count;
    if (slot == 0) {
      firstOffset = offset;
    }
    if (slot == MOST || offset - firstOffset > 0xFFFFFFFFL) {
      return false;
    }
    if ((slot & IndexPage.BLOCK - 1) == 0) {
      endBlock();
      startBlock(slot >>> IndexPage.BLOCK_BITS, id, offset);
    }
    offsets[slot] = (int) (offset - firstOffset);
    packedOffsets[slot] = (short) (offset - blockOffset);
    offsetsFit &= offset - blockOffset <= 0xFFFF;
    ids[slot] = id;
    packedIds[slot] = (short) id;
    smallestInBlock = Math.min(smallestInBlock, id);
    largestInBlock = Math.max(largestInBlock, id);
    keywords[slot] = (short) keyword;
    packedKeywords[slot] = (byte) keyword;
    keywordsFit &= keyword < IndexPage.REPEATED_BYTE;
    count = slot + 1;
    return true;
  }

  private void startBlock(int block, long id, long offset) {
    blockOffset = offset;
    blockOffsets[block] = (int) (offset - firstOffset);
    smallestInBlock = id;
    largestInBlock = id;
  }

  /** Ends the block that the last record is in; the page's last block has to be ended before the page is packed. */
  void endBlock() {
    if (count > 0) {
      // Ids are not negative, so differences of two don't overflow.
      long difference = smallestInBlock - ids[0];
      blockIds[count - 1 >>> IndexPage.BLOCK_BITS] = (int) difference;
      idsFit &= difference == (int) difference && largestInBlock - smallestInBlock <= 0xFFFF;
    }
  }
}
