package org.seamledger.ids;

/**
 * Something that makes an IDS file an invalid one.
 *
 * @param file as the user named it
 * @param line from 1, or 0 where no place can be named
 * @param column from 1, or 0
 */
public record IdsProblem(String file, int line, int column, String expected, String found) {

  /** One line: file, line, column, what was expected, what was found. */
  public String text() {
    return file + (line > 0 ? ":" + line + ":" + column : "") + ": expected " + expected + ", found " + found;
  }
}
