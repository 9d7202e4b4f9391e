package org.seamledger.http.job;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;

/** Analyses in the background, whoever runs them: this process, or workers. What storage says is what counts. */
public interface Jobs {

  /** Takes up what an earlier process left. */
  void resume();

  /** Has an analysis that storage has noted run when its turn comes. */
  void submit(StoredAnalysis analysis);

  /**
   * Has the result of an analysis computed again with the decisions in force, as soon as may be; however many people decide meanwhile, the
   * last result follows them all.
   */
  void follow(String id);

  /** Why the results of some analyses do not follow their decisions, by id, where they could not. */
  Map<String, String> troubles(Set<String> ids);

  /** Whether one more may wait. */
  boolean hasRoom();

  /** How many wait. */
  int waiting();

  /** How many are at work. */
  int running();

  /** How many processes work, this one included where it does. */
  int workers();

  default JobStatus status(StoredAnalysis a) {
    return statuses(List.of(a)).get(a.id());
  }

  /** How far these are, by id. */
  Map<String, JobStatus> statuses(List<StoredAnalysis> all);

  /** Hears every step of an analysis from now on; empty where it has ended. The answer stops it. */
  Optional<Runnable> listen(String id, Consumer<JobStatus> listener);

  /** Stops an analysis; false where it has ended. */
  boolean cancel(String id);

  /** Stops what this process does; it goes on at the next start, or elsewhere. */
  void close() throws InterruptedException;

  /** The state as it is stored; that of one that was removed is cancelled, and that of one that can't be seen now is waiting. */
  static State stateOf(Store store, String id) {
    try {
      return store.analyses().get(id).state();
    } catch (LedgerException e) {
      return e.reason() == LedgerException.Reason.NOT_FOUND ? State.CANCELLED : State.QUEUED;
    }
  }
}
