package org.seamledger.cli;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What the process was started with beside its command line.
 *
 * @param shapes folder of the shapes that come with the program, for an office to edit in place; those in the program file where empty
 * @param traces whether a fault of the program shows its stack trace
 */
record Environment(Optional<Path> shapes, boolean traces) {

  /** Nothing special. */
  static final Environment PLAIN = new Environment(Optional.empty(), false);

  /** System property {@code seamledger.shapes}, which the launcher sets, and environment variable {@code SEAMLEDGER_TRACE}. */
  static Environment ofProcess() {
    return new Environment(Optional.ofNullable(System.getProperty("seamledger.shapes")).map(Path::of),
        "1".equals(System.getenv("SEAMLEDGER_TRACE")));
  }
}
