package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.source.ModelSource;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;
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

  @Option(names = "--place", paramLabel = "MODEL=DX,DY,DZ[,DEG[,FACTOR]]", description = "Move one of several models to the first: metres, "
      + "after a turn anticlockwise about its origin. May be given for several models.")
  private List<String> places = List.of();

  /** @throws UsageException where a model is placed, and none is that it could be placed to */
  void requireNoPlaces() {
    if (!places.isEmpty()) {
      throw new UsageException("--place moves one of several models of a building; with --each every model stands for itself");
    }
  }

  /**
   * The takeoff of models that the command line named.
   *
   * @throws org.seamledger.run.FailureException where there is none
   */
  Takeoff takeoff(List<String> words, ServersChoice servers, Session session) {
    try (ChosenModels chosen = ChosenModels.of(words, servers)) {
      return session.analyze(on(chosen, session.environment()));
    }
  }

  /** On models that the command line named, which {@code --place} may call as it named them. */
  Inputs on(ChosenModels models, Environment environment) {
    return on(Inputs.of(models.sources()), models.words(), environment);
  }

  Inputs on(Inputs inputs, Environment environment) {
    return on(inputs, inputs.models().stream().map(ModelSource::name).toList(), environment);
  }

  private Inputs on(Inputs inputs, List<String> words, Environment environment) {
    Inputs chosen = decisions == null ? inputs : inputs.withDecisionsIn(decisions);
    return placed(chosen.withSystem(Optional.ofNullable(system)).withShapes(Optional.ofNullable(shapes).or(environment::shapes)), words);
  }

  private Inputs placed(Inputs inputs, List<String> words) {
    try {
      return inputs.withPlaces(places, words);
    } catch (IllegalArgumentException e) {
      throw new UsageException("--place: " + e.getMessage());
    }
  }
}
