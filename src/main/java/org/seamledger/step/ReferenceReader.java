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
    int start = behindEquals(bytes, from, to);
    boolean complex = start < to && bytes[start] == '(';
    for (int at = start; at < to; at++) {
      switch (bytes[at]) {
        case '(' -> depth++;
        case ')' -> parameter += --depth == 1 && complex ? 1 : 0;
        case ',' -> parameter += depth == 1 ? 1 : 0;
        case '\'' -> at = text(bytes, at, to);
        case '/' -> at = comment(bytes, at, to);
        case '#' -> {
          int end = endOfDigits(bytes, at + 1, to);
          into.add(parameter, id(bytes, at + 1, end, offset - from));
          at = end - 1;
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

  private static int endOfDigits(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && KeywordTable.isDigit(bytes[at])) {
      at++;
    }
    return at;
  }

  private static long id(byte[] bytes, int from, int to, long base) {
    long id = 0;
    for (int at = from; at < to; at++) {
      int digit = bytes[at] - '0';
      if (id > (Long.MAX_VALUE - digit) / 10) {
        throw new Misread(base + from, "an instance's number of at most " + Long.MAX_VALUE, Found.at(bytes, from, to));
      }
      id = 10 * id + digit;
    }
    if (from == to) {
      throw new Misread(base + from, "an instance's number", to < bytes.length ? Found.at(bytes, to, to + 1) : Misread.END);
    }
    return id;
  }

  /** At the first byte of the instance's entity. */
  private static int behindEquals(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && bytes[at] != '=') {
      at = bytes[at] == '/' ? comment(bytes, at, to) + 1 : at + 1;
    }
    at++;
    while (at < to && (Scanner.isBlank(bytes[at]) || bytes[at] == '/')) {
      at = bytes[at] == '/' ? comment(bytes, at, to) + 1 : at + 1;
    }
    return at;
  }

  /** At the closing apostrophe. */
  private static int text(byte[] bytes, int from, int to) {
    int close = TextDecoder.end(bytes, from + 1, to);
    return close < 0 ? to : close;
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
