package org.seamledger.step;

import java.io.IOException;

/** Passes over the words and the insides of statements, clause 5 and 6 of ISO 10303-21, wherever the feed's reads may cut them. */
final class Scanner {

  /** Bytes of a string to read first, and the most, where it needs care. */
  private static final int CAREFUL = 1024;
  private static final int LONGEST_CAREFUL = 1 << 24;
  private static final int LONGEST_WORD = 300;

  private final FileBytes bytes;
  private final Feed feed;
  /** Offset of the statement being read, for the strict second look at an error. */
  long statement;

  Scanner(FileBytes bytes, Feed feed) {
    this.bytes = bytes;
    this.feed = feed;
  }

  // ---- inside a statement

  /** From behind an opening parenthesis to behind the statement's semicolon; positions in the buffer. */
  int body(int from) throws IOException {
    final byte[] b = feed.buffer;
    int p = from;
    for (;;) {
      long stop;
      while ((stop = ByteLanes.stop(ByteLanes.at(b, p))) == 0) {
        p += Long.BYTES;
      }
      p += ByteLanes.index(stop);
      if (p >= feed.limit) {
        p = readOn("; at the end of the statement");
        continue;
      }
      switch (b[p]) {
        case ';' -> {
          if (b[p - 1] != ')') {
            checkEnd(p);
          }
          return p + 1;
        }
        case '\'' -> p = string(p + 1);
        case '/' -> p = slash(p);
        case '=' -> throw strictly(new Misread(feed.base + p, "; at the end of the statement", "="));
        default -> p++;
      }
    }
  }

  /** Refills at the limit and gives the position there. */
  private int readOn(String expected) throws IOException {
    feed.position = feed.limit;
    if (!feed.refill()) {
      throw strictly(new Misread(feed.offset(), expected, Misread.END));
    }
    return feed.position;
  }

  /** From behind an opening apostrophe to behind the closing one. A doubled apostrophe is passed as two strings without a gap. */
  int string(int from) throws IOException {
    final byte[] b = feed.buffer;
    final long start = feed.base + from;
    int p = from;
    for (;;) {
      long stop;
      while ((stop = ByteLanes.apostrophe(ByteLanes.at(b, p))) == 0) {
        p += Long.BYTES;
      }
      p += ByteLanes.index(stop);
      if (p >= feed.limit) {
        p = readOn("' at the end of the text");
      } else if (b[p - 1] == '\\' && TextDecoder.mayBeShifted(b, p)) {
        return carefulString(start);
      } else {
        return p + 1;
      }
    }
  }

  /** The same for a string that has to be read from its start, directive by directive. */
  private int carefulString(long start) throws IOException {
    for (int length = CAREFUL;; length *= 2) {
      byte[] text = new byte[length];
      int n = bytes.read(start, text, 0, length);
      int close = TextDecoder.end(text, 0, n);
      if (close >= 0 && (close + 1 < n || n < length)) {
        feed.skipTo(start + close + 1);
        return feed.position;
      }
      if (n < length) {
        throw strictly(new Misread(start + n, "' at the end of the text", Misread.END));
      }
      if (length > LONGEST_CAREFUL) {
        throw new Misread(start, "a text of at most " + LONGEST_CAREFUL + " bytes", "a longer one");
      }
    }
  }

  private int slash(int at) throws IOException {
    feed.position = at;
    if (feed.peekNext() != '*') {
      throw strictly(new Misread(feed.offset(), "a parameter", "/"));
    }
    comment();
    return feed.position;
  }

  /** Passes the comment that starts at the position. */
  private void comment() throws IOException {
    long start = feed.offset();
    feed.position += 2;
    for (;;) {
      while (feed.position >= feed.limit) {
        if (!feed.refill()) {
          throw new Misread(start, "*/ at the end of this comment", Misread.END);
        }
      }
      if (feed.buffer[feed.position] == '*' && feed.peekNext() == '/') {
        feed.position += 2;
        return;
      }
      feed.position++;
    }
  }

  /** A statement's semicolon that no parenthesis stands right before: perhaps there are blanks or comments between. */
  private void checkEnd(int semicolon) throws IOException {
    final byte[] b = feed.buffer;
    int p = semicolon - 1;
    while (p >= 0 && isBlank(b[p]) && feed.base + p > statement) {
      p--;
    }
    if (p < 0 || b[p] != ')') {
      Misread error = StrictCheck.of(bytes, statement, feed.base + semicolon + 1);
      if (error != null) {
        throw error;
      }
    }
  }

  /** The error that a strict reading of the statement meets, or the one given. */
  private Misread strictly(Misread otherwise) throws IOException {
    Misread error = StrictCheck.of(bytes, statement, bytes.size());
    return error == null ? otherwise : error;
  }

  // ---- between statements

  void keyword(String expected) throws IOException {
    blank();
    long at = feed.offset();
    if (!word().equals(expected)) {
      throw new Misread(at, expected + ";", Found.at(bytes, at));
    }
  }

  void semicolon(String expected) throws IOException {
    one(';', expected);
  }

  void parenthesis(String expected) throws IOException {
    one('(', expected);
  }

  private void one(char wanted, String expected) throws IOException {
    blank();
    if (feed.peek() != wanted) {
      throw new Misread(feed.offset(), expected, Found.at(bytes, feed.offset()));
    }
    feed.position++;
  }

  /** Letters, digits, underscores, hyphens and exclamation marks from the position on, in upper case; empty where there are none. */
  String word() throws IOException {
    StringBuilder word = new StringBuilder();
    for (int c; word.length() < LONGEST_WORD && (KeywordTable.isWord(c = feed.peek()) || c == '-' || c == '!'); feed.position++) {
      word.append((char) c);
    }
    return KeywordTable.upperCase(word.toString());
  }

  /** The number of an instance, behind its number sign. */
  long id() throws IOException {
    long at = feed.offset();
    long id = 0;
    boolean any = false;
    for (int c; KeywordTable.isDigit(c = feed.peek()); feed.position++) {
      any = true;
      if (id > (Long.MAX_VALUE - (c - '0')) / 10) {
        throw new Misread(at, "an instance's number of at most " + Long.MAX_VALUE, Found.at(bytes, at));
      }
      id = 10 * id + c - '0';
    }
    if (!any) {
      throw new Misread(at, "an instance's number", Found.at(bytes, at));
    }
    return id;
  }

  /** Passes blanks and comments. */
  void blank() throws IOException {
    long stray = -1;
    for (;;) {
      int c = feed.peek();
      if (isBlank(c)) {
        feed.position++;
      } else if (c == '/' && feed.peekNext() == '*') {
        comment();
      } else if (c == '*' && feed.peekNext() == '/' && stray < 0) {
        // The end of a comment that never began. If one begins behind it and never ends, that is the better place to show.
        stray = feed.offset();
        feed.position += 2;
      } else if (stray >= 0) {
        throw new Misread(stray, "an instance (#) or ENDSEC;", "*/ without a comment before it");
      } else {
        return;
      }
    }
  }

  static boolean isBlank(int c) {
    return c == ' ' || c >= '\t' && c <= '\r';
  }
}
