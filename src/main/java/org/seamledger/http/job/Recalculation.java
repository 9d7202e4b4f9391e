package org.seamledger.http.job;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.run.ClientWords;
import org.seamledger.run.Failure;
import org.seamledger.run.PatientStorage;

/** Computes results again so that they follow the decisions of users. */
final class Recalculation {

  private final Store store;
  private final JobRuns runs;
  /** Why the result of an analysis could not follow its decisions; gone with the next attempt. */
  private final Map<String, String> troubles = new ConcurrentHashMap<>();

  Recalculation(Store store, JobRuns runs) {
    this.store = store;
    this.runs = runs;
  }

  /** Why results do not follow their decisions, where they could not. */
  Map<String, String> troubles(Set<String> ids) {
    Map<String, String> found = new HashMap<>(troubles);
    found.keySet().retainAll(ids);
    return found;
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
        state = stateOf(job.id);
      }
    } while (!isOver.test(job));
    return state;
  }

  private void followOnce(Job job) throws IOException {
    Choices.Standing standing = PatientStorage.ask(() -> store.choices().of(job.id));
    StoredAnalysis analysis = PatientStorage.ask(() -> store.analyses().get(job.id));
    job.isOnThisThread();
    troubles.remove(job.id);
    if (standing.followed() || job.stop().isPresent()) {
      job.isBeyondInterrupts();
    } else if (standing.inForce().isEmpty()) {
      job.isBeyondInterrupts();
      PatientStorage.run(() -> store.choices().complete(job.id, standing, Optional.empty(), Optional.empty()));
    } else {
      runs.run(job, analysis, Optional.of(standing), () -> {}).filter(f -> !(f instanceof Failure.Cancelled))
          .ifPresent(f -> failed(job.id, f));
    }
  }

  /** Notes that the work for a result failed. */
  void failed(String id, Failure failure) {
    troubles.put(id, ClientWords.of(failure));
  }

  State stateOf(String id) {
    return Jobs.stateOf(store, id);
  }
}
