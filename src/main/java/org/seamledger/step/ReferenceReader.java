package org.seamledger.step;

/** Picks the references out of an instance without decoding the rest. */
final class ReferenceReader {

  private ReferenceReader() {
  }

  /** @param offset in the file of the byte at {@code from} */
  static void read(byte[] bytes, int from, int to, long offset, References into) {
    into.clear();
    int parameter = 0;
    int depth = 0;
    for (int at = behindEquals(bytes, from, to); at < to; at++) {
      switch (bytes[at]) {
        case '(' -> depth++;
        case ')' -> depth--;
        case ',' -> parameter += depth == 1 ? 1 : 0;
        case '\'' -> at = text(bytes, at, to);
        case '/' -> at = comment(bytes, at, to);
        case '#' -> {
          long id = 0;
          int digits = at + 1;
          while (at + 1 < to && KeywordTable.isDigit(bytes[at + 1]) && at - digits < 18) {
            id = 10 * id + bytes[++at] - '0';
          }
          if (at >= digits) {
            into.add(parameter, id);
          }
        }
        case ';' -> {
          return;
        }
        default -> {
          // other parameters
        }
      }
    }
    throw new Misread(offset + to - from, "; at the end of the statement", Misread.END);
  }

  private static int behindEquals(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && bytes[at] != '=') {
      at = bytes[at] == '/' ? comment(bytes, at, to) + 1 : at + 1;
    }
    return at + 1;
  }

  /** At the closing apostrophe. */
  private static int text(byte[] bytes, int from, int to) {
    int at = from + 1;
    while (at < to && (bytes[at] != '\'' || TextDecoder.isShifted(bytes, at))) {
      at++;
    }
    return at;
  }

  /** At the last byte of the comment. */
  private static int comment(byte[] bytes, int from, int to) {
    if (from + 1 >= to || bytes[from + 1] != '*') {
      return from;
    }
    int at = from + 2;
    while (at + 1 < to && (bytes[at] != '*' || bytes[at + 1] != '/')) {
      at++;
    }
    return at + 1;
  }
}
