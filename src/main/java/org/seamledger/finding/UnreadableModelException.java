package org.seamledger.finding;

/**
 * A model can't be read at all: the one exception that bad input ends in. Its message is one line for people: file, line, column, what
 * was expected, what was found.
 */
public final class UnreadableModelException extends RuntimeException {

  private static final long serialVersionUID = 1;

  private final String file;
  private final long line;
  private final long column;

  /**
   * @param file name as the user gave it
   * @param line from 1, or 0 where no place in a text can be named
   * @param column from 1, in bytes, or 0
   * @param expected what should stand there
   * @param found what stands there instead
   */
  public UnreadableModelException(String file, long line, long column, String expected, String found) {
    super(file + (line > 0 ? ":" + line + ":" + column : "") + ": expected " + expected + ", found " + found);
    this.file = file;
    this.line = line;
    this.column = column;
  }

  public String file() {
    return file;
  }

  public long line() {
    return line;
  }

  public long column() {
    return column;
  }
}
