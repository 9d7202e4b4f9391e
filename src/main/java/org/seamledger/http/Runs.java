package org.seamledger.http;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import org.seamledger.detail.Decision;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.watch.Health;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What every run of an analysis is made of, whether it is the first one or follows decisions. */
final class Runs {

  static final String MEMORY = "The models need more memory than this server has; start it with a larger heap, or split the model.";
  static final String FAULT = "The program failed at these models; its log says where. Please report it with the model.";
  private static final Logger LOG = LoggerFactory.getLogger(Runs.class);
  private static final int STORAGE_PAUSE_MILLIS = 1000;

  private final Store store;
  private final Options options;
  private final ScheduledExecutorService clock;
  private final Health health;

  Runs(Store store, Options options, ScheduledExecutorService clock, Health health) {
    this.store = store;
    this.options = options;
    this.clock = clock;
    this.health = health;
  }

  /** Stops a job when it has taken as long as one may; to be cancelled when the job is over. */
  ScheduledFuture<?> alarm(Job job) {
    Runnable stop = health.guarded("clock", () -> job.interrupt(State.FAILED));
    return clock.schedule(stop, options.limits().duration().toMillis(), TimeUnit.MILLISECONDS);
  }

  /**
   * Analyses into a file.
   *
   * @throws CancellationException where the job was stopped
   */
  Analyzer.Drawings analyze(Job job, StoredAnalysis analysis, List<Decision> decisions, Path result) throws IOException {
    AnalysisFiles files = AnalysisFiles.of(analysis);
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(result), 1 << 16)) {
      Analyzer.Drawings drawings = options.analyzer().analyze(files.models(), files.system(), decisions, (stage, fraction) -> {
        if (job.stop != null) {
          throw new CancellationException();
        }
        job.goesOn(stage, fraction);
      }, out);
      if (job.stop != null) {
        throw new CancellationException();
      }
      return drawings;
    }
  }

  /** Owners of models on servers get the report for people too, which is kept for them with the result. */
  Optional<String> report(String id, Analyzer.Drawings drawings) {
    return store.watches().origin(id).isPresent() ? drawings.report() : Optional.empty();
  }

  /** What is said of a job that the alarm stopped. */
  String tooLong() {
    return "Stopped after " + options.limits().duration().toSeconds() + " s, the longest that one analysis may take on this server.";
  }

  /** Work on the storage. */
  interface StorageWork<T> {
    T run() throws IOException;
  }

  /** Does what must not get lost: where the database is away, waits until it is back, or until the server ends. */
  static <T> T whenReachable(StorageWork<T> work) throws IOException {
    while (true) {
      try {
        return work.run();
      } catch (LedgerException e) {
        if (!e.isTemporary()) {
          throw e;
        }
      }
      try {
        Thread.sleep(STORAGE_PAUSE_MILLIS);
      } catch (InterruptedException e) {
        throw new CancellationException("stopped while storage was away");
      }
    }
  }

  /** Removes a file that is no longer needed. */
  static void discard(Job job, Path result) {
    try {
      Files.deleteIfExists(result);
    } catch (IOException e) {
      LOG.atWarn().addKeyValue("analysis", job.id).setCause(e).log("scratch file left behind");
    }
  }

  /** The state as it is stored; that of one that was removed is cancelled, and that of one that can't be seen now is waiting. */
  State stateOf(String id) {
    try {
      return store.analyses().get(id).state();
    } catch (LedgerException e) {
      return e.reason() == LedgerException.Reason.NOT_FOUND ? State.CANCELLED : State.QUEUED;
    }
  }

  /** Since a moment, in whole milliseconds. */
  static double seconds(long begun) {
    return Math.round((System.nanoTime() - begun) / 1e6) / 1e3;
  }
}
