package org.seamledger.run;

import java.io.IOException;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Inputs;

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

  /** The program's version. */
  default String version() {
    return "";
  }

  /** What identifies the rules as they are now; together with the version: another value means that stored results are out of date. */
  default String rules() {
    return "";
  }
}
