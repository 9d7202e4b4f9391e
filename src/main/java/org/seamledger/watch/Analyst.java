package org.seamledger.watch;

import org.seamledger.ledger.StoredAnalysis;

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
}
