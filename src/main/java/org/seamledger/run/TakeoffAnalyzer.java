package org.seamledger.run;

import java.nio.file.Path;
import java.util.Optional;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.RuleBook;

/**
 * The program's own analysis.
 *
 * @param shapes folder of shapes to use instead of the program's own
 */
public record TakeoffAnalyzer(Optional<Path> shapes) implements Analyzer<Result> {

  @Override
  public Result analyze(Inputs inputs, Progress progress) {
    return new TakeoffResult(Analysis.run(inputs.withShapes(shapes), progress), shapes);
  }

  @Override
  public Optional<RuleBook> ruleBook() {
    return Optional.of(RuleBook.of(shapes));
  }

  @Override
  public Analyzer<Result> under(Path rules) {
    return new TakeoffAnalyzer(Optional.of(rules));
  }

  @Override
  public String version() {
    return Program.version();
  }

  @Override
  public String rules() {
    return Program.rules(shapes);
  }
}
