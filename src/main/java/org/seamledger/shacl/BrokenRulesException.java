package org.seamledger.shacl;

/** A file of rules can't be used. The message is one line for people: file, line, column, what is wrong. */
public final class BrokenRulesException extends RuntimeException {

  private static final long serialVersionUID = 1;

  private final String file;
  private final long line;
  private final long column;

  /**
   * @param line from 1, or 0 where no line can be named
   * @param column from 1, or 0
   */
  public BrokenRulesException(String file, long line, long column, String problem) {
    super(file + (line > 0 ? ":" + line + (column > 0 ? ":" + column : "") : "") + ": " + problem);
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
