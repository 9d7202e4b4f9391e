package org.seamledger.export.wording;

/** Text from a model made safe for a terminal: one line, no control characters that could move the cursor or colour what follows. */
public final class OneLine {

  private OneLine() {
  }

  public static String of(String text) {
    StringBuilder line = new StringBuilder(text.length());
    text.codePoints().forEach(c -> line.appendCodePoint(isSafe(c) ? c : ' '));
    return line.toString().strip();
  }

  private static boolean isSafe(int c) {
    int type = Character.getType(c);
    return type != Character.CONTROL && type != Character.FORMAT && type != Character.LINE_SEPARATOR
        && type != Character.PARAGRAPH_SEPARATOR && type != Character.SURROGATE;
  }
}
