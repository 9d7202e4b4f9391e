package org.seamledger.detail;

import java.util.List;
import java.util.stream.Collectors;

/** A file of decisions can't be used. The message has a line for each fault: file, line, column, what was expected, what was found. */
public final class DecisionFormatException extends RuntimeException {

  private static final long serialVersionUID = 1;

  /**
   * One fault.
   *
   * @param line from 1, or 0 for the file as a whole
   * @param column from 1
   */
  record Problem(int line, int column, String expected, String found) {
    String at(String file) {
      return file + (line > 0 ? ":" + line + ":" + column : "") + ": expected " + expected + ", found " + found;
    }
  }

  DecisionFormatException(String file, List<Problem> problems) {
    super(problems.stream().map(p -> p.at(file)).collect(Collectors.joining("\n")));
  }
}
