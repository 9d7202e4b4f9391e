package org.seamledger.quantity;

import java.util.List;
import java.util.stream.Collectors;

/** A roof system's file can't be used: every field that is wrong, with its path, what was expected and what was found. */
public final class SystemFormatException extends RuntimeException {

  private static final long serialVersionUID = 1;

  /**
   * @param path where in the file, such as {@code panel.coverage}; empty for the file as a whole
   */
  public record Problem(String path, String expected, String found) {
    @Override
    public String toString() {
      return (path.isEmpty() ? "" : path + ": ") + "expected " + expected + ", found " + found;
    }
  }

  /**
   * @param file the name for the message, which has a line for each problem
   * @param problems at least one
   */
  public SystemFormatException(String file, List<Problem> problems) {
    super(problems.stream().map(p -> file + ": " + p).collect(Collectors.joining("\n")));
  }
}
