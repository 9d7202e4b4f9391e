package org.seamledger.watch;

import java.util.Optional;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.run.Result;

/** Runs analyses of revisions. */
@FunctionalInterface
public interface Analyst {

  /**
   * Runs an analysis that storage has noted, unless it has ended, and returns when it has; storage says how it ended, and keeps the
   * report for people with the result.
   *
   * @throws InterruptedException where the process is to end; the analysis runs again at its next start
   */
  void analyze(StoredAnalysis analysis) throws InterruptedException;

  /** The result of an analysis that is done, in every form; empty where it can't be had any more. */
  default Optional<Result> result(StoredAnalysis analysis) {
    return Optional.empty();
  }
}
