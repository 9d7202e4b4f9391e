package org.seamledger.run;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.RuleBook;

/**
 * Turns models into a result. Called from several threads at once; keeps nothing between calls.
 *
 * @param <R> result
 */
@FunctionalInterface
public interface Analyzer<R> {

  /**
   * Analyses models together as one building.
   *
   * @param progress may cancel by an exception, which must get through
   * @throws org.seamledger.finding.UnreadableModelException where a model can't be read
   * @throws org.seamledger.takeoff.UnusableFileException where the shapes, the roof system or the overrides can't be used
   */
  R analyze(Inputs inputs, Progress progress) throws IOException;

  /** Analyses, whatever happens. */
  default Outcome<R> run(Inputs inputs, Progress progress) {
    return Outcome.of(() -> analyze(inputs, progress));
  }

  /** The rules that analyses follow, to read and to change; empty where there are none. */
  default Optional<RuleBook> ruleBook() {
    return Optional.empty();
  }

  /** The same analyses by the rules of a folder. */
  default Analyzer<R> under(Path rules) {
    return this;
  }

  /** The program's version. */
  default String version() {
    return "";
  }

  /** What identifies the rules as they are now; together with the version: another value means that stored results are out of date. */
  default String rules() {
    return "";
  }
}
