package org.seamledger.step;

import java.io.IOException;

/** What stands at a place, shortened for a message of one line. */
final class Found {

  private static final int MOST = 24;

  private Found() {
  }

  static String at(FileBytes bytes, long offset) throws IOException {
    byte[] some = new byte[MOST + 1];
    int n = bytes.read(offset, some, 0, some.length);
    return at(some, 0, n);
  }

  static String at(byte[] bytes, int from, int to) {
    if (from >= to) {
      return Misread.END;
    }
    if (!isPrintable(bytes[from])) {
      return bytes[from] == '\n' || bytes[from] == '\r' ? "the end of the line" : String.format("byte 0x%02X", bytes[from] & 0xFF);
    }
    StringBuilder text = new StringBuilder();
    for (int i = from; i < to && isPrintable(bytes[i]); i++) {
      if (text.length() == MOST) {
        return text.append("...").toString();
      }
      text.append((char) bytes[i]);
    }
    return text.toString();
  }

  private static boolean isPrintable(byte b) {
    return b >= ' ' && b < 0x7F;
  }
}
