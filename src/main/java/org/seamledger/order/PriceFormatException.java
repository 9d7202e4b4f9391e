package org.seamledger.order;

import java.util.List;
import java.util.stream.Collectors;

/** A price list that can't be used. The message has a line for each mistake. */
public final class PriceFormatException extends RuntimeException {

  private static final long serialVersionUID = 1L;
  private static final int MOST = 20;

  /** A mistake: where, what was expected, what was found; line and column from 1. */
  public record Problem(int line, int column, String expected, String found) {
  }

  PriceFormatException(String file, List<Problem> problems) {
    super(problems.stream().limit(MOST)
        .map(p -> file + ": line " + p.line() + ", column " + p.column() + ": expected " + p.expected() + ", found " + p.found())
        .collect(Collectors.joining("\n")) + (problems.size() > MOST ? "\n" + file + ": " + (problems.size() - MOST) + " more" : ""));
  }
}
