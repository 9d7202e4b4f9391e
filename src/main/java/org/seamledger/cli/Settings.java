package org.seamledger.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.seamledger.takeoff.Inputs;
import picocli.CommandLine.Option;

/** What several commands can be told about an analysis. */
final class Settings {

  @Option(names = "--system", paramLabel = "FILE", description = "The roof system: panel, tape, fasteners … (default: built in).")
  private Path system;

  @Option(names = "--shapes", paramLabel = "DIR", description = "Shapes to use instead of the program's own.")
  private Path shapes;

  @Option(names = "--decisions", paramLabel = "FILE",
      description = "Kinds and details that people chose by hand, with reasons: JSON, as the service gives it out.")
  private Path decisions;

  Inputs on(Inputs inputs, Environment environment) {
    Inputs chosen = decisions == null ? inputs : inputs.withDecisionsIn(decisions);
    return chosen.withSystem(Optional.ofNullable(system)).withShapes(Optional.ofNullable(shapes).or(environment::shapes));
  }
}
