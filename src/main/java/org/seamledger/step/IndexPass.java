package org.seamledger.step;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import org.seamledger.progress.Progress;

/**
 * The one pass over a file's bytes: sections, and in them where each instance starts. See clause 12 of ISO 10303-21 for the grammar.
 *
 * <p>An instance's inside is passed over eight bytes at a time, strings and comments minded, up to its semicolon. An equals sign there
 * means that an instance lacks its semicolon and swallowed the next one; such an instance, and one that doesn't end in a parenthesis, is
 * read strictly for the exact place of the error.
 */
final class IndexPass {

  private static final int LONGEST_FAST_KEYWORD = 64;
  /** Digits of an id that can't overflow. */
  private static final int FAST_DIGITS = 18;

  private final FileBytes bytes;
  private final Feed feed;
  private final Scanner scanner;
  private final KeywordTable keywords = new KeywordTable();
  private final RecordIndex records = new RecordIndex();
  private final Map<String, long[]> headerSpans = new LinkedHashMap<>();
  private boolean dataSeen;
  private long dataEnd;
  /** Where the parenthesis stands that ends the keyword read last. */
  private int keywordEnd;

  /** @param block bytes to read at once */
  IndexPass(FileBytes bytes, FileHash hash, int block, Progress progress) {
    this.bytes = bytes;
    this.feed = new Feed(bytes, hash, block, progress);
    this.scanner = new Scanner(bytes, feed);
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

  /** Offset of the word ENDSEC that ends the last data section. */
  long dataEnd() {
    return dataEnd;
  }

  /** After {@link #run}: hashes what is behind the exchange structure, too. */
  void hashRest() throws IOException {
    feed.hashRest();
  }

  // ---- sections

  private void start() throws IOException {
    feed.ensure();
    if (feed.peek() == 0xEF && feed.limit >= 3 && feed.buffer[1] == (byte) 0xBB && feed.buffer[2] == (byte) 0xBF) {
      feed.position = 3;
    }
    scanner.blank();
    long at = feed.offset();
    if (!scanner.word().equals("ISO-10303-21")) {
      throw new Misread(at, "a STEP file, which starts with ISO-10303-21;", foundAtStart(at));
    }
    scanner.semicolon("; after ISO-10303-21");
  }

  private String foundAtStart(long at) throws IOException {
    if (at >= bytes.size()) {
      return "no text at all";
    }
    String found = Found.at(bytes, at);
    return found.startsWith("<") ? "XML (ifcXML is not supported)" : found;
  }

  private void headerSection() throws IOException {
    scanner.keyword("HEADER");
    scanner.semicolon("; after HEADER");
    for (;;) {
      scanner.blank();
      scanner.statement = feed.offset();
      String name = scanner.word();
      if (name.equals("ENDSEC")) {
        scanner.semicolon("; after ENDSEC");
        return;
      }
      scanner.parenthesis(name.isEmpty() ? "an entity of the header, or ENDSEC;" : "( after " + name);
      feed.position = scanner.body(feed.position);
      if (HeaderReader.ENTITIES.contains(name)) {
        headerSpans.putIfAbsent(name, new long[] {scanner.statement, feed.offset()});
      }
    }
  }

  /** False after the end of the exchange structure. */
  private boolean section() throws IOException {
    scanner.blank();
    scanner.statement = feed.offset();
    String name = scanner.word();
    switch (name) {
      case "DATA" -> dataSection();
      case "ANCHOR", "REFERENCE" -> otherSection(name);
      case "END-ISO-10303-21" -> {
        if (!dataSeen) {
          throw new Misread(scanner.statement, "DATA;", name);
        }
        scanner.semicolon("; after END-ISO-10303-21");
        return false;
      }
      default ->
          throw new Misread(scanner.statement, dataSeen ? "DATA; or END-ISO-10303-21;" : "DATA;", Found.at(bytes, scanner.statement));
    }
    return true;
  }

  private void dataSection() throws IOException {
    dataSeen = true;
    scanner.blank();
    if (feed.peek() == '(') {
      feed.position = scanner.body(feed.position + 1);
    } else {
      scanner.semicolon("; after DATA");
    }
    instances();
    scanner.semicolon("; after ENDSEC");
  }

  private void otherSection(String name) throws IOException {
    scanner.semicolon("; after " + name);
    for (;;) {
      scanner.blank();
      scanner.statement = feed.offset();
      if (scanner.word().equals("ENDSEC")) {
        scanner.semicolon("; after ENDSEC");
        return;
      }
      while (feed.peek() != ';') {
        if (feed.peek() == '\'') {
          feed.position = scanner.string(feed.position + 1);
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
      int keyword = fastKeyword(b, p);
      if (keyword == KeywordTable.UNKNOWN) {
        return;
      }
      scanner.statement = feed.base + start;
      long offset = scanner.statement;
      feed.position = scanner.body(keywordEnd + 1);
      records.add(id, offset, keyword);
    }
  }

  /** Number of the keyword that starts here and ends before a parenthesis, {@link #keywordEnd}; unknown where it has to be read slowly. */
  private int fastKeyword(byte[] b, int from) {
    int p = from;
    long hash = 0;
    long word = ByteLanes.at(b, p);
    long stop;
    while ((stop = ByteLanes.parenthesis(word)) == 0) {
      hash = KeywordTable.mix(hash, word);
      p += Long.BYTES;
      if (p - from >= LONGEST_FAST_KEYWORD) {
        return KeywordTable.UNKNOWN;
      }
      word = ByteLanes.at(b, p);
    }
    int index = ByteLanes.index(stop);
    hash = KeywordTable.mix(hash, word & (1L << 8 * index) - 1);
    p += index;
    if (p >= feed.limit) {
      return KeywordTable.UNKNOWN;
    }
    keywordEnd = p;
    int keyword = keywords.find(hash, b, from, p);
    return keyword != KeywordTable.UNKNOWN ? keyword : keywords.add(b, from, p);
  }

  /** Reads one instance of any form; false after ENDSEC. */
  private boolean slowInstance() throws IOException {
    scanner.blank();
    scanner.statement = feed.offset();
    long offset = scanner.statement;
    if (feed.peek() != '#') {
      if (scanner.word().equals("ENDSEC")) {
        dataEnd = offset;
        return false;
      }
      throw new Misread(offset, "an instance (#) or ENDSEC;", Found.at(bytes, offset));
    }
    feed.position++;
    long id = scanner.id();
    scanner.blank();
    if (feed.peek() != '=') {
      throw new Misread(feed.offset(), "= after #" + id, Found.at(bytes, feed.offset()));
    }
    feed.position++;
    scanner.blank();
    int keyword = feed.peek() == '(' ? keywordNumber(StepFile.COMPLEX) : keywordNumber();
    scanner.parenthesis("( after the entity's name");
    feed.position = scanner.body(feed.position);
    records.add(id, offset, keyword);
    return true;
  }

  private int keywordNumber() throws IOException {
    long at = feed.offset();
    String name = scanner.word();
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
    byte[] spelling = name.getBytes(StandardCharsets.ISO_8859_1);
    int number = keywords.number(name);
    return number != KeywordTable.UNKNOWN ? number : keywords.add(spelling, 0, spelling.length);
  }
}
