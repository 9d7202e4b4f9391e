package org.seamledger.queue;

import java.io.IOException;
import java.util.Optional;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.Origin;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.run.Failure;
import org.seamledger.run.Outcome;
import org.seamledger.run.PatientStorage;
import org.seamledger.run.Result;
import org.seamledger.run.StoredRuns;
import org.seamledger.source.ModelServer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Runs of a worker, within its limits, told to its health. */
final class LimitedRuns {

  private static final Logger LOG = LoggerFactory.getLogger(Worker.class);
  /** As a part of the worker's health. */
  private static final String ANALYSES = "analyses";

  private final WorkerSetting setting;
  private final RunLimits limits;
  private final StoredRuns runs;

  LimitedRuns(WorkerSetting setting, RunLimits limits) {
    this.setting = setting;
    this.limits = limits;
    this.runs = new StoredRuns(setting.store(), setting.analyzer(), setting.scratch());
  }

  /**
   * Runs an analysis on the calling thread and keeps its result.
   *
   * @param decided the decisions that the result shall follow; empty for the first result, by the rules alone
   * @return why there is no result; empty where there is
   */
  Optional<Failure> run(ClaimedRun run, StoredAnalysis analysis, Optional<Choices.Standing> decided) {
    limits.add(run);
    try {
      Outcome<Result> outcome = Outcome.of(() -> {
        fetch(run, analysis);
        return runs.run(analysis, decided, run.progress(), StoredRuns.Keeping.patient(run::isBeyondInterrupts)).orThrow();
      });
      run.isBeyondInterrupts();
      Optional<Failure> failure = outcome.failure().map(f -> f.orStopped(run.stop()));
      tell(run, failure);
      return failure;
    } finally {
      run.isBeyondInterrupts();
      limits.remove(run);
    }
  }

  /** Brings models from their servers, unless they are here. */
  private void fetch(ClaimedRun run, StoredAnalysis analysis) throws IOException {
    for (StoredFile file : analysis.files()) {
      boolean here = PatientStorage.ask(() -> setting.store().has(file));
      if (!here && file.origin().isPresent()) {
        Origin origin = file.origin().get();
        run.at("fetching the model from " + origin.server(), 0);
        try (ModelServer server = setting.servers().connect(origin.server())) {
          setting.store().watches().arrived(analysis.id(), setting.download().fetch(server, file, origin));
        }
      }
    }
  }

  private void tell(ClaimedRun run, Optional<Failure> failure) {
    if (failure.isEmpty() || failure.get() instanceof Failure.UnreadableModel) {
      setting.health().works(ANALYSES);
    }
    failure.filter(f -> Failure.isFault(f.code()) || f instanceof Failure.OutOfMemory).ifPresent(f -> {
      LOG.atError().addKeyValue("analysis", run.id).setCause(f.cause().orElseThrow()).log("analysis failed");
      setting.health().failedAsLogged(ANALYSES);
    });
  }
}
