package org.seamledger.http.job;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.run.Failure;
import org.seamledger.run.Outcome;
import org.seamledger.run.Result;
import org.seamledger.run.StoredRuns;
import org.seamledger.watch.Health;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs of analyses in the background, for the first time and after decisions: within the time limit, stopped on request, told to health.
 */
final class JobRuns {

  private static final Logger LOG = LoggerFactory.getLogger(Jobs.class);

  private final Options options;
  private final ScheduledExecutorService clock;
  private final DrawingBoard board;
  private final Health health;
  private final StoredRuns runs;

  JobRuns(Store store, Options options, Path scratch, ScheduledExecutorService clock, DrawingBoard board, Health health) {
    this.options = options;
    this.clock = clock;
    this.board = board;
    this.health = health;
    this.runs = new StoredRuns(store, options.analyzer(), scratch);
  }

  /** Work that may fail. */
  @FunctionalInterface
  interface Step {
    void run() throws Exception;
  }

  /**
   * Runs an analysis and keeps its result; on the calling thread, which can be interrupted until the result is written.
   *
   * @param before what has to be done before, under the same limits
   * @return why there is no result; empty where there is
   */
  Optional<Failure> run(Job job, StoredAnalysis analysis, Optional<Choices.Standing> decided, Step before) {
    ScheduledFuture<?> alarm = alarm(job);
    try {
      Outcome<Result> outcome = Outcome.of(() -> {
        before.run();
        return runs.run(analysis, decided, job.progress(), StoredRuns.Keeping.patient(job::isBeyondInterrupts)).orThrow();
      });
      job.isBeyondInterrupts();
      if (outcome instanceof Outcome.Done<Result> done) {
        board.keep(job.id, done.value());
      }
      Optional<Failure> failure = outcome.failure().map(f -> f.orStopped(job.stop()));
      tell(job, decided.isPresent() ? LocalJobs.RECALCULATION : LocalJobs.ANALYSES, failure);
      return failure;
    } finally {
      job.isBeyondInterrupts();
      alarm.cancel(false);
    }
  }

  /** Stops a job when it has taken as long as one may. */
  private ScheduledFuture<?> alarm(Job job) {
    Runnable stop = health.guarded("clock", () -> job.interrupt(new Failure.TooLong(options.limits().duration())));
    return clock.schedule(stop, options.limits().duration().toMillis(), TimeUnit.MILLISECONDS);
  }

  private void tell(Job job, String part, Optional<Failure> failure) {
    if (failure.isEmpty() || failure.get() instanceof Failure.UnreadableModel) {
      health.works(part);
    }
    boolean isFault = failure.filter(f -> Failure.isFault(f.code())).isPresent();
    if (isFault || failure.filter(Failure.OutOfMemory.class::isInstance).isPresent()) {
      LOG.atError().addKeyValue("analysis", job.id).setCause(failure.get().cause().orElseThrow())
          .log(part.equals(LocalJobs.ANALYSES) ? "analysis failed" : "decisions not followed");
    }
    if (isFault) {
      health.failedAsLogged(part);
    }
  }
}
