package org.seamledger.step;

import java.io.IOException;

/**
 * Gives the bytes of records, reading ahead as it pays: the more the records asked for follow each other, the more at once.
 */
final class RecordBytes {

  private static final int LEAST = 4 * 1024;
  private static final int MOST = 256 * 1024;

  private final FileBytes bytes;
  private byte[] buffer = new byte[LEAST];
  private long start;
  private int length;
  private int ahead = LEAST;

  RecordBytes(FileBytes bytes) {
    this.bytes = bytes;
  }

  byte[] buffer() {
    return buffer;
  }

  /** Has the bytes between two offsets in the buffer and gives the place of the first. */
  int load(long offset, int wanted) throws IOException {
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

  /** How many of the wanted bytes from {@code place} on there are. */
  int end(int place, int wanted) {
    return Math.min(place + wanted, length);
  }
}
