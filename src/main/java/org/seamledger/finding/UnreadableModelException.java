package org.seamledger.finding;

/**
 * A model can't be read at all: the one exception that bad input ends in. Its message is one human-readable line: file, line, column, what
 * was expected, what was found.
 */
public final class UnreadableModelException extends RuntimeException {

  private static final long serialVersionUID = 1;

  /**
   * @param file name as the user gave it
   * @param line from 1, or 0 where no place in a text can be named
   * @param column from 1, in bytes, or 0
   * @param expected what should stand there
   * @param found what stands there instead
   */
  public UnreadableModelException(String file, long line, long column, String expected, String found) {
    super(file + (line > 0 ? ":" + line + ":" + column : "") + ": expected " + expected + ", found " + found);
  }
}
