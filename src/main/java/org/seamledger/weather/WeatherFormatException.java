package org.seamledger.weather;

import java.util.List;
import java.util.stream.Collectors;

/** A weather file that can't be used. The message has a line for each mistake. */
public final class WeatherFormatException extends RuntimeException {

  private static final long serialVersionUID = 1L;
  private static final int MOST = 20;

  /** A mistake: where, what was expected, what was found; line and column from 1. */
  record Fault(int line, int column, String expected, String found) {
  }

  WeatherFormatException(String file, List<Fault> faults) {
    super(faults.stream().limit(MOST)
        .map(p -> file + ": line " + p.line() + ", column " + p.column() + ": expected " + p.expected() + ", found " + p.found())
        .collect(Collectors.joining("\n")) + (faults.size() > MOST ? "\n" + file + ": " + (faults.size() - MOST) + " more" : ""));
  }
}
