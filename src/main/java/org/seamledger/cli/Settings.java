package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
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

  @Option(names = "--place", paramLabel = "FILE=DX,DY,DZ[,DEG[,FACTOR]]", description = "Move one of several models to the first: metres, "
      + "after a turn anticlockwise about its origin. May be given for several models.")
  private List<String> places = List.of();

  Inputs on(Inputs inputs, Environment environment) {
    Inputs chosen = decisions == null ? inputs : inputs.withDecisionsIn(decisions);
    return placed(chosen.withSystem(Optional.ofNullable(system)).withShapes(Optional.ofNullable(shapes).or(environment::shapes)));
  }

  private Inputs placed(Inputs inputs) {
    try {
      return inputs.withPlaces(places);
    } catch (IllegalArgumentException e) {
      throw new UsageException("--place: " + e.getMessage());
    }
  }
}
