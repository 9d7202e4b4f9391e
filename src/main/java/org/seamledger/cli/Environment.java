package org.seamledger.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What the process was started with beside its command line.
 *
 * @param shapes folder of the shapes that come with the program, for an office to edit in place; those in the program file where empty
 * @param samples folder of sample models for the page to offer
 * @param token what clients of a server that others can reach have to show
 * @param database variables {@code SEAMLEDGER_DATABASE}, {@code …_USER}, {@code …_PASSWORD}, {@code …_PASSWORD_FILE}, those that are set
 * @param traces whether a fault of the program shows its stack trace
 */
record Environment(Optional<Path> shapes, Optional<Path> samples, Optional<String> token, Map<String, String> database, boolean traces) {

  /** Nothing special. */
  static final Environment PLAIN = new Environment(Optional.empty(), Optional.empty(), Optional.empty(), Map.of(), false);

  /**
   * System properties {@code seamledger.shapes} and {@code seamledger.samples}, which the launcher sets, and environment variables
   * {@code SEAMLEDGER_TOKEN}, {@code SEAMLEDGER_TRACE} and those of the database.
   */
  static Environment ofProcess() {
    return new Environment(folder("seamledger.shapes"), folder("seamledger.samples"),
        Optional.ofNullable(System.getenv("SEAMLEDGER_TOKEN")),
        databaseVariables(System.getenv()), "1".equals(System.getenv("SEAMLEDGER_TRACE")));
  }

  private static Map<String, String> databaseVariables(Map<String, String> all) {
    return all.entrySet().stream().filter(e -> e.getKey().startsWith(DatabaseChoice.VARIABLE) && !e.getValue().isBlank())
        .collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, Map.Entry::getValue));
  }

  /** Says nothing of values: one of them is a password. */
  @Override
  public String toString() {
    return "Environment" + database.keySet();
  }

  private static Optional<Path> folder(String property) {
    return Optional.ofNullable(System.getProperty(property)).map(Path::of).filter(Files::isDirectory);
  }
}
