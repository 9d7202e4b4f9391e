package org.seamledger.portfolio;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicReference;
import org.seamledger.progress.Progress;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Failure;
import org.seamledger.run.FailureException;
import org.seamledger.run.Outcome;
import org.seamledger.source.ModelFile;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/**
 * One model's analysis, within its time. Keeps nothing between calls.
 *
 * @param basis what a result depends on besides the model, as entries note it
 * @param longest that one analysis may take
 */
public record ModelRun(Analyzer<Takeoff> analyzer, Optional<Path> system, Optional<Path> shapes, String basis, Duration longest) {

  /** An analysis that does not heed its end is left alone after as long again, and at least this long. */
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  /**
   * The entry of a model, whatever happens to it.
   *
   * @throws FailureException where rules or roof system can't be used
   */
  public ModelEntry run(PortfolioModel model, String file) throws InterruptedException {
    AtomicReference<Outcome<ModelEntry>> ended = new AtomicReference<>();
    long end = System.nanoTime() + longest.toNanos();
    // A thread of its own, so that one which never ends can be left behind.
    Thread thread = new Thread(() -> ended.set(Outcome.of(() -> entry(model, file, end))), "model " + model.name());
    thread.setDaemon(true);
    thread.start();
    thread.join(longest.plus(longest.compareTo(PATIENCE) > 0 ? longest : PATIENCE).toMillis());
    Outcome<ModelEntry> outcome = ended.get();
    if (outcome instanceof Outcome.Done<ModelEntry> done) {
      return done.value();
    }
    Failure failure = outcome == null ? new Failure.TooLong(longest) : outcome.failure().orElseThrow();
    if (failure instanceof Failure.UnusableSettings) {
      outcome.orThrow();
    }
    if (failure instanceof Failure.Cancelled) {
      failure = new Failure.TooLong(longest);
    }
    return ModelEntry.without(model.name(), file, basis, ModelState.of(failure), failure.code(), reason(model, failure));
  }

  /** The entry of a model at which the process ended again and again. */
  public ModelEntry gaveUp(PortfolioModel model, String file) {
    return ModelEntry.without(model.name(), file, basis, ModelState.GAVE_UP, "analysis/died",
        "the program ended each time it analysed this model; --again tries once more");
  }

  private ModelEntry entry(PortfolioModel model, String file, long end) throws IOException {
    Inputs inputs = Inputs.of(List.of(new ModelFile(model.path(), model.name()))).withSystem(system).withShapes(shapes);
    Takeoff takeoff = analyzer.analyze(inputs, Progress.NONE.unless(() -> System.nanoTime() - end > 0));
    if (System.nanoTime() - end > 0) {
      throw new CancellationException();
    }
    return ModelEntry.of(model.name(), file, basis, takeoff);
  }

  private String reason(PortfolioModel model, Failure failure) {
    if (failure instanceof Failure.TooLong) {
      return "stopped after " + longest.toSeconds() + " s; --model-seconds sets another limit";
    }
    if (failure instanceof Failure.OutOfMemory memory) {
      return "needs more memory than " + memory.mebibytes() + " MiB; give more, such as SEAMLEDGER_JAVA_OPTS=-Xmx2g";
    }
    return failure instanceof Failure.UnreadableModel ? failure.message()
        : "the program failed at this model: " + failure.cause().map(Throwable::toString).orElse(failure.message());
  }
}
