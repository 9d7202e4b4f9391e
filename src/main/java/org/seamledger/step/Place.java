package org.seamledger.step;

import java.io.IOException;

/** Line and column of an offset, both from 1; the column in bytes. Found by reading the file again, which only an error is worth. */
record Place(long line, long column) {

  static Place of(FileBytes bytes, long offset) throws IOException {
    byte[] block = new byte[64 * 1024];
    long line = 1;
    long lineStart = 0;
    boolean carriage = false;
    for (long at = 0; at < offset;) {
      int n = bytes.read(at, block, 0, (int) Math.min(block.length, offset - at));
      if (n <= 0) {
        break;
      }
      for (int i = 0; i < n; i++) {
        byte b = block[i];
        if (b == '\n' && carriage) {
          lineStart = at + i + 1;
        } else if (b == '\n' || b == '\r') {
          line++;
          lineStart = at + i + 1;
        }
        carriage = b == '\r';
      }
      at += n;
    }
    return new Place(line, offset - lineStart + 1);
  }
}
