package org.seamledger.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What the process was started with beside its command line.
 *
 * @param shapes folder of the shapes that come with the program, for an office to edit in place; those in the program file where empty
 * @param samples folder of sample models for the page to offer
 * @param token what clients of a server that others can reach have to show
 * @param traces whether a fault of the program shows its stack trace
 */
record Environment(Optional<Path> shapes, Optional<Path> samples, Optional<String> token, boolean traces) {

  /** Nothing special. */
  static final Environment PLAIN = new Environment(Optional.empty(), Optional.empty(), Optional.empty(), false);

  /**
   * System properties {@code seamledger.shapes} and {@code seamledger.samples}, which the launcher sets, and environment variables
   * {@code SEAMLEDGER_TOKEN} and {@code SEAMLEDGER_TRACE}.
   */
  static Environment ofProcess() {
    return new Environment(folder("seamledger.shapes"), folder("seamledger.samples"), Optional.ofNullable(System.getenv("SEAMLEDGER_TOKEN")),
        "1".equals(System.getenv("SEAMLEDGER_TRACE")));
  }

  private static Optional<Path> folder(String property) {
    return Optional.ofNullable(System.getProperty(property)).map(Path::of).filter(Files::isDirectory);
  }
}
