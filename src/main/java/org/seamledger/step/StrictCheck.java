package org.seamledger.step;

import java.io.IOException;

/** A second, strict look at a statement that the index pass stumbled over. */
final class StrictCheck {

  /** Statements longer than this are not looked at again. */
  private static final int MOST = 1 << 22;
  /** Errors this near to where a longer one was cut are not believed. */
  private static final int CUT = 1024;

  private StrictCheck() {
  }

  /** The error in the statement that starts at {@code start}, or null where it has none (or is too long to say). */
  static Misread of(FileBytes bytes, long start, long end) throws IOException {
    int length = (int) Math.min(end - start, MOST);
    byte[] text = new byte[length];
    int n = bytes.read(start, text, 0, length);
    try {
      new ParameterReader(text, 0, n, start).statement();
      return null;
    } catch (Misread error) {
      return end - start > MOST && error.offset > start + n - CUT ? null : error;
    }
  }
}
