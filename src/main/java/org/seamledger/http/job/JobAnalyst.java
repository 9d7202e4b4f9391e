package org.seamledger.http.job;

import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.run.Result;
import org.seamledger.watch.Analyst;

/** Runs the analyses of watched revisions among all the others, in their turn and under the same limits. */
public final class JobAnalyst implements Analyst {

  private static final int PATIENCE_MILLIS = 1000;

  private final Store store;
  private final Jobs jobs;
  private final DrawingBoard board;

  public JobAnalyst(Store store, Jobs jobs, DrawingBoard board) {
    this.board = board;
    this.store = store;
    this.jobs = jobs;
  }

  /** {@inheritDoc} It has ended when no job works for it any more: decisions that came over from the revision before are followed last. */
  @Override
  public void analyze(StoredAnalysis analysis) throws InterruptedException {
    boolean ended = false;
    while (!ended) {
      CountDownLatch end = new CountDownLatch(1);
      Optional<Runnable> stop = listen(analysis, end);
      if (stop.isPresent()) {
        ended = end.await(PATIENCE_MILLIS, TimeUnit.MILLISECONDS);
        stop.get().run();
      } else if (store.analyses().get(analysis.id()).state().isFinal()) {
        ended = true;
      } else if (jobs.hasRoom()) {
        jobs.submit(analysis);
      } else {
        // What people wait for comes first: a watch takes no place that an upload would be refused for.
        Thread.sleep(PATIENCE_MILLIS);
      }
    }
  }

  @Override
  public Optional<Result> result(StoredAnalysis analysis) {
    try {
      return Optional.of(board.of(analysis, store.analyses().ledgerHash(analysis.id())));
    } catch (HttpProblem e) {
      return Optional.empty();
    }
  }

  private Optional<Runnable> listen(StoredAnalysis analysis, CountDownLatch ended) {
    return jobs.listen(analysis.id(), p -> {
      if (p.state().isFinal()) {
        ended.countDown();
      }
    });
  }
}
