package org.seamledger.step;

import java.io.IOException;
import java.util.Arrays;

/**
 * For records in any order: keeps some blocks of the file, each in the one place that its number allows. What one element refers to stands
 * in few neighbourhoods.
 */
final class ScatteredBytes implements RecordBytes {

  private static final int BLOCK_BITS = 13;
  private static final int BLOCK = 1 << BLOCK_BITS;
  private static final int BLOCKS = 128;

  private final FileBytes bytes;
  private final byte[][] blocks = new byte[BLOCKS][];
  private final long[] numbers = new long[BLOCKS];
  private final int[] lengths = new int[BLOCKS];
  private byte[] buffer;
  private int length;

  ScatteredBytes(FileBytes bytes) {
    this.bytes = bytes;
    Arrays.fill(numbers, -1);
  }

  @Override
  public byte[] buffer() {
    return buffer;
  }

  @Override
  public int load(long offset, int wanted) throws IOException {
    long number = offset >>> BLOCK_BITS;
    if (offset + wanted - 1 >>> BLOCK_BITS != number) {
      buffer = new byte[wanted];
      length = bytes.read(offset, buffer, 0, wanted);
      return 0;
    }
    int place = (int) number & BLOCKS - 1;
    if (numbers[place] != number) {
      fill(place, number);
    }
    buffer = blocks[place];
    length = lengths[place];
    return (int) (offset & BLOCK - 1);
  }

  private void fill(int place, long number) throws IOException {
    if (blocks[place] == null) {
      blocks[place] = new byte[BLOCK];
    }
    numbers[place] = -1;
    lengths[place] = bytes.read(number << BLOCK_BITS, blocks[place], 0, BLOCK);
    numbers[place] = number;
  }

  @Override
  public int end(int place, int wanted) {
    return Math.min(place + wanted, length);
  }
}
