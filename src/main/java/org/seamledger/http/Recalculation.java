package org.seamledger.http;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ScheduledFuture;
import java.util.function.Predicate;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.takeoff.UnusableFileException;
import org.seamledger.watch.Health;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Computes results again so that they follow the decisions of people. */
final class Recalculation {

  private static final Logger LOG = LoggerFactory.getLogger(Recalculation.class);

  private final Store store;
  private final Runs runs;
  private final DrawingBoard board;
  private final Path scratch;
  private final Health health;
  /** Why the result of an analysis could not follow its decisions; gone with the next attempt. */
  private final Map<String, String> troubles = new ConcurrentHashMap<>();

  Recalculation(Store store, Runs runs, DrawingBoard board, Path scratch, Health health) {
    this.store = store;
    this.runs = runs;
    this.board = board;
    this.scratch = scratch;
    this.health = health;
  }

  /** Why a result does not follow its decisions, where it could not. */
  Optional<String> trouble(String id) {
    return Optional.ofNullable(troubles.get(id));
  }

  /**
   * Works until the result follows the decisions, or can't.
   *
   * @param isOver asked after each run: whether nobody decided meanwhile
   */
  State followAll(Job job, Predicate<Job> isOver) {
    State state = State.DONE;
    do {
      try {
        followOnce(job);
      } catch (LedgerException | IOException | CancellationException e) {
        // Removed meanwhile, with its decisions; or the server ends.
        state = runs.stateOf(job.id);
      }
    } while (!isOver.test(job));
    return state;
  }

  private void followOnce(Job job) throws IOException {
    Choices.Standing standing = Runs.whenReachable(() -> store.choices().of(job.id));
    StoredAnalysis analysis = Runs.whenReachable(() -> store.analyses().get(job.id));
    Path result = scratch.resolve(job.id + ".decided.json");
    ScheduledFuture<?> alarm = runs.alarm(job);
    try {
      job.isOnThisThread();
      troubles.remove(job.id);
      if (standing.followed() || job.stop != null) {
        return;
      }
      Optional<Analyzer.Drawings> drawings = standing.inForce().isEmpty() ? Optional.empty()
          : Optional.of(runs.analyze(job, analysis, standing.inForce(), result));
      job.isBeyondInterrupts();
      Runs.whenReachable(() -> {
        store.choices().complete(job.id, standing, drawings.map(d -> result), drawings.flatMap(d -> runs.report(job.id, d)));
        return true;
      });
      drawings.ifPresent(d -> board.keep(job.id, d));
      health.works(Jobs.RECALCULATION);
    } catch (UnreadableModelException | UnusableFileException e) {
      troubles.put(job.id, Names.withoutFolders(e.getMessage()));
    } catch (Exception | Error e) {
      followFailed(job, e);
    } finally {
      job.isBeyondInterrupts();
      alarm.cancel(false);
      Runs.discard(job, result);
    }
  }

  /** Notes that the work for a result was cut off by a fault that got through all else. */
  void cutOff(String id) {
    troubles.put(id, Runs.FAULT);
  }

  private void followFailed(Job job, Throwable e) {
    if (job.stop == State.FAILED) {
      troubles.put(job.id, runs.tooLong());
    } else if (job.stop == null) {
      LOG.atError().addKeyValue("analysis", job.id).setCause(e).log("decisions not followed");
      boolean isMemory = e instanceof OutOfMemoryError;
      if (!isMemory) {
        health.failedAsLogged(Jobs.RECALCULATION);
      }
      troubles.put(job.id, isMemory ? Runs.MEMORY : Runs.FAULT);
    }
  }
}
