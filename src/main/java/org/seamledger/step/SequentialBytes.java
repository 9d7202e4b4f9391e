package org.seamledger.step;

import java.io.IOException;

/** For records in the file's order: reads ahead as it pays, the more the records asked for follow each other, the more at once. */
final class SequentialBytes implements RecordBytes {

  private static final int LEAST = 4 * 1024;
  private static final int MOST = 256 * 1024;

  private final FileBytes bytes;
  private byte[] buffer = new byte[LEAST];
  private long start;
  private int length;
  private int ahead = LEAST;

  SequentialBytes(FileBytes bytes) {
    this.bytes = bytes;
  }

  @Override
  public byte[] buffer() {
    return buffer;
  }

  @Override
  public int load(long offset, int wanted) throws IOException {
    if (offset < start || offset + wanted > start + length) {
      boolean near = offset >= start && offset - start <= length + ahead;
      ahead = near ? Math.min(2 * ahead, MOST) : LEAST;
      int size = Math.max(ahead, wanted);
      if (buffer.length < size || buffer.length > MOST && size <= MOST) {
        buffer = new byte[size];
      }
      length = bytes.read(offset, buffer, 0, size);
      start = offset;
    }
    return (int) (offset - start);
  }

  @Override
  public int end(int place, int wanted) {
    return Math.min(place + wanted, length);
  }
}
