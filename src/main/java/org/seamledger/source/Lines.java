package org.seamledger.source;

/** Words from outside, made fit for a message of one line. */
final class Lines {

  private static final int LONGEST = 200;

  private Lines() {
  }

  /** On one line, without control characters, and not longer than people read. */
  static String plain(String words) {
    String line = String.valueOf(words).replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
    return line.length() <= LONGEST ? line : line.substring(0, LONGEST) + "…";
  }

  /** The same in quotation marks. */
  static String quote(String words) {
    return '"' + plain(words) + '"';
  }
}
