package org.seamledger.step;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The one pass over a file's bytes: sections, and in them where each instance starts. See clause 12 of ISO 10303-21 for the grammar.
 *
 * <p>An instance's inside is passed over eight bytes at a time, strings and comments minded, up to its semicolon. An equals sign there
 * means that an instance lacks its semicolon and swallowed the next one; such an instance, and one that doesn't end in a parenthesis, is
 * read strictly for the exact place of the error.
 */
final class IndexPass {

  private static final int LONGEST_FAST_KEYWORD = 64;
  /** Bytes of a string to read first, and the most, where it needs care. */
  private static final int CAREFUL = 1024;
  private static final int LONGEST_CAREFUL = 1 << 24;
  /** Digits of an id that can't overflow. */
  private static final int FAST_DIGITS = 18;

  private final FileBytes bytes;
  private final Feed feed;
  private final KeywordTable keywords = new KeywordTable();
  private final RecordIndex records = new RecordIndex();
  private final Map<String, long[]> headerSpans = new LinkedHashMap<>();
  /** Offset of the statement being read, for the strict second look. */
  private long statement;
  private boolean dataSeen;

  /** @param block bytes to read at once */
  IndexPass(FileBytes bytes, int block) {
    this.bytes = bytes;
    this.feed = new Feed(bytes, block);
  }

  /** @throws Misread where the bytes are no exchange structure */
  void run() throws IOException {
    start();
    headerSection();
    while (section()) {
      // section() does it all
    }
    records.finish(feed.offset(), keywords.size());
  }

  KeywordTable keywords() {
    return keywords;
  }

  RecordIndex records() {
    return records;
  }

  /** Start and end offsets of the header's entities, by keyword. */
  Map<String, long[]> headerSpans() {
    return headerSpans;
  }

  /** After {@link #run}: hashes what is behind the exchange structure too. */
  String sha256() throws IOException {
    return feed.sha256();
  }

  // ---- sections

  private void start() throws IOException {
    feed.ensure();
    if (feed.peek() == 0xEF && feed.limit >= 3 && feed.buffer[1] == (byte) 0xBB && feed.buffer[2] == (byte) 0xBF) {
      feed.position = 3;
    }
    blank();
    long at = feed.offset();
    if (!word().equals("ISO-10303-21")) {
      throw new Misread(at, "a STEP file, which starts with ISO-10303-21;", foundAtStart(at));
    }
    semicolon("; after ISO-10303-21");
  }

  private String foundAtStart(long at) throws IOException {
    if (at >= bytes.size()) {
      return "no text at all";
    }
    String found = Found.at(bytes, at);
    return found.startsWith("<") ? "XML (ifcXML is not supported)" : found;
  }

  private void headerSection() throws IOException {
    keyword("HEADER");
    semicolon("; after HEADER");
    for (;;) {
      blank();
      statement = feed.offset();
      String name = word();
      if (name.equals("ENDSEC")) {
        semicolon("; after ENDSEC");
        return;
      }
      parenthesis(name.isEmpty() ? "an entity of the header, or ENDSEC;" : "( after " + name);
      feed.position = body(feed.position);
      if (HeaderReader.ENTITIES.contains(name)) {
        headerSpans.putIfAbsent(name, new long[] {statement, feed.offset()});
      }
    }
  }

  /** False after the end of the exchange structure. */
  private boolean section() throws IOException {
    blank();
    statement = feed.offset();
    String name = word();
    switch (name) {
      case "DATA" -> dataSection();
      case "ANCHOR", "REFERENCE" -> otherSection(name);
      case "END-ISO-10303-21" -> {
        if (!dataSeen) {
          throw new Misread(statement, "DATA;", name);
        }
        semicolon("; after END-ISO-10303-21");
        return false;
      }
      default -> throw new Misread(statement, dataSeen ? "DATA; or END-ISO-10303-21;" : "DATA;", Found.at(bytes, statement));
    }
    return true;
  }

  private void dataSection() throws IOException {
    dataSeen = true;
    blank();
    if (feed.peek() == '(') {
      feed.position = body(feed.position + 1);
    } else {
      semicolon("; after DATA");
    }
    instances();
    semicolon("; after ENDSEC");
  }

  private void otherSection(String name) throws IOException {
    semicolon("; after " + name);
    for (;;) {
      blank();
      statement = feed.offset();
      if (word().equals("ENDSEC")) {
        semicolon("; after ENDSEC");
        return;
      }
      while (feed.peek() != ';') {
        if (feed.peek() == '\'') {
          feed.position = string(feed.position + 1);
        } else if (feed.peek() < 0) {
          throw new Misread(feed.offset(), "; or ENDSEC;", Misread.END);
        } else {
          feed.position++;
        }
      }
      feed.position++;
    }
  }

  // ---- instances

  /** Reads instances up to and with the word ENDSEC. */
  private void instances() throws IOException {
    do {
      fastInstances();
    } while (slowInstance());
  }

  /** Reads instances of the form {@code #1=NAME(...);}, one blank or line end before them, until something else comes. */
  private void fastInstances() throws IOException {
    final byte[] b = feed.buffer;
    for (;;) {
      feed.ensure();
      int p = feed.position;
      while (b[p] == '\n' || b[p] == '\r') {
        p++;
      }
      int start = p;
      if (b[p++] != '#') {
        return;
      }
      long id = 0;
      int digits = p;
      for (int d; (d = b[p] - '0') >= 0 && d <= 9 && p - digits < FAST_DIGITS; p++) {
        id = 10 * id + d;
      }
      if (p == digits || b[p++] != '=') {
        return;
      }
      if (b[p] == ' ') {
        p++;
      }
      int from = p;
      long hash = 0;
      long word = Words.at(b, p);
      long stop;
      while ((stop = Words.parenthesis(word)) == 0) {
        hash = KeywordTable.mix(hash, word);
        p += Long.BYTES;
        if (p - from >= LONGEST_FAST_KEYWORD) {
          return;
        }
        word = Words.at(b, p);
      }
      int index = Words.index(stop);
      hash = KeywordTable.mix(hash, word & (1L << 8 * index) - 1);
      p += index;
      if (p >= feed.limit) {
        return;
      }
      int keyword = keywords.find(hash, b, from, p);
      if (keyword == KeywordTable.UNKNOWN) {
        keyword = keywords.add(b, from, p);
        if (keyword == KeywordTable.UNKNOWN) {
          return;
        }
      }
      statement = feed.base + start;
      long offset = statement;
      feed.position = body(p + 1);
      records.add(id, offset, keyword);
    }
  }

  /** Reads one instance of any form; false after ENDSEC. */
  private boolean slowInstance() throws IOException {
    blank();
    statement = feed.offset();
    long offset = statement;
    if (feed.peek() != '#') {
      if (word().equals("ENDSEC")) {
        return false;
      }
      throw new Misread(offset, "an instance (#) or ENDSEC;", Found.at(bytes, offset));
    }
    feed.position++;
    long id = id();
    blank();
    if (feed.peek() != '=') {
      throw new Misread(feed.offset(), "= after #" + id, Found.at(bytes, feed.offset()));
    }
    feed.position++;
    blank();
    int keyword = feed.peek() == '(' ? keywordNumber(StepFile.COMPLEX) : keywordNumber();
    parenthesis("( after the entity's name");
    feed.position = body(feed.position);
    records.add(id, offset, keyword);
    return true;
  }

  private long id() throws IOException {
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

  private int keywordNumber() throws IOException {
    long at = feed.offset();
    String name = word();
    int number = name.isEmpty() ? KeywordTable.UNKNOWN : keywordNumber(name);
    if (number == KeywordTable.UNKNOWN) {
      throw new Misread(at, "an entity's name", Found.at(bytes, at));
    }
    return number;
  }

  private int keywordNumber(String name) {
    if (name.equals(StepFile.COMPLEX)) {
      return keywords.complex();
    }
    byte[] spelling = name.getBytes(java.nio.charset.StandardCharsets.ISO_8859_1);
    int number = keywords.number(name);
    return number != KeywordTable.UNKNOWN ? number : keywords.add(spelling, 0, spelling.length);
  }

  // ---- inside a statement

  /** From behind an opening parenthesis to behind the statement's semicolon; positions in the buffer. */
  private int body(int from) throws IOException {
    final byte[] b = feed.buffer;
    int p = from;
    for (;;) {
      long stop;
      while ((stop = Words.stop(Words.at(b, p))) == 0) {
        p += Long.BYTES;
      }
      p += Words.index(stop);
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
  private int string(int from) throws IOException {
    final byte[] b = feed.buffer;
    final long start = feed.base + from;
    int p = from;
    for (;;) {
      long stop;
      while ((stop = Words.apostrophe(Words.at(b, p))) == 0) {
        p += Long.BYTES;
      }
      p += Words.index(stop);
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
    for (int length = CAREFUL; ; length *= 2) {
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

  private void keyword(String expected) throws IOException {
    blank();
    long at = feed.offset();
    if (!word().equals(expected)) {
      throw new Misread(at, expected + ";", Found.at(bytes, at));
    }
  }

  private void semicolon(String expected) throws IOException {
    one(';', expected);
  }

  private void parenthesis(String expected) throws IOException {
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
  private String word() throws IOException {
    StringBuilder word = new StringBuilder();
    for (int c; word.length() < 300 && (KeywordTable.isWord(c = feed.peek()) || c == '-' || c == '!'); feed.position++) {
      word.append((char) c);
    }
    return KeywordTable.upperCase(word.toString());
  }

  /** Passes blanks and comments. */
  private void blank() throws IOException {
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
