package org.seamledger.watch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.progress.Progress;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Failure;
import org.seamledger.run.Outcome;
import org.seamledger.run.Result;
import org.seamledger.run.StoredRuns;

/** Runs analyses on the thread that asks for them. */
public final class LocalAnalyst implements Analyst {

  private final Store store;
  private final StoredRuns runs;

  /** @param scratch folder for what is being written */
  public LocalAnalyst(Store store, Path scratch, Analyzer<Result> analyzer) {
    this.store = store;
    this.runs = new StoredRuns(store, analyzer, scratch);
  }

  /**
   * {@inheritDoc} Broken shapes, a broken roof system and faults of the program pass through to the caller: they are no fault of the model.
   * One that storage calls running was cut off in this process, which is alone with its storage: it runs again.
   */
  @Override
  public void analyze(StoredAnalysis analysis) throws InterruptedException {
    if (!store.analyses().begin(analysis.id()) && store.analyses().get(analysis.id()).state().isFinal()) {
      return;
    }
    Optional<Failure> failure = run(analysis, Optional.empty());
    if (failure.isEmpty()) {
      // What users decided about the revision before may have come over; the result follows it.
      Choices.Standing standing = store.choices().of(analysis.id());
      failure = standing.followed() || standing.inForce().isEmpty() ? failure : run(analysis, Optional.of(standing));
    }
    if (failure.isPresent()) {
      end(analysis, failure.get());
    }
  }

  /** {@inheritDoc} The models are run again: only where the operator asks for more than what storage keeps. */
  @Override
  public Optional<Result> result(StoredAnalysis analysis) {
    Progress progress = Progress.NONE.unless(() -> Thread.currentThread().isInterrupted());
    Outcome<Result> outcome = runs.run(analysis, store.choices().of(analysis.id()).inForce(), progress);
    return outcome.failure().isPresent() ? Optional.empty() : Optional.of(outcome.orThrow());
  }

  private Optional<Failure> run(StoredAnalysis analysis, Optional<Choices.Standing> decided) {
    Progress progress = Progress.NONE.unless(() -> Thread.currentThread().isInterrupted());
    Outcome<Result> outcome = runs.run(analysis, decided, progress, StoredRuns.Keeping.AT_ONCE);
    return outcome.failure();
  }

  private void end(StoredAnalysis analysis, Failure failure) throws InterruptedException {
    if (failure instanceof Failure.Cancelled) {
      throw new InterruptedException();
    }
    Throwable fault = Failure.isOurs(failure.code()) ? failure.cause().orElse(null) : null;
    if (fault instanceof LedgerException storage) {
      throw storage;
    }
    try {
      store.analyses().end(analysis.id(), State.FAILED, failure.code(), failure.text());
    } catch (RuntimeException | Error e) {
      // Nothing that fails here may hide the fault that came first.
      if (fault == null) {
        throw e;
      }
      fault.addSuppressed(e);
    }
    pass(fault);
  }

  private static void pass(Throwable fault) {
    if (fault instanceof Error e) {
      throw e;
    }
    if (fault instanceof RuntimeException e) {
      throw e;
    }
    if (fault instanceof IOException e) {
      throw new UncheckedIOException(e);
    }
    if (fault != null) {
      throw new IllegalStateException(fault);
    }
  }
}
