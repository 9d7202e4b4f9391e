package org.seamledger.progress;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiFunction;

/**
 * Pieces of one work that don't need each other, done by the calling thread and by helpers beside it, as far as there are processors to
 * spare. Nothing shows who did which: results come in the pieces' order, and where pieces fail, the first one's failure is thrown, as if
 * they had been done one after another.
 *
 * @param <T> piece
 * @param <R> its result
 */
public final class SharedWork<T, R> {

  /** More helpers would wait for memory rather than compute. */
  private static final int MOST_HELPERS = 3;
  /** How often the caller, waiting for the last pieces, asks whether to go on. */
  private static final int LOOK_MS = 50;

  private final List<T> pieces;
  private final BiFunction<? super T, Progress, ? extends R> work;
  private final Object[] results;
  private final AtomicInteger next = new AtomicInteger();
  private final AtomicInteger done = new AtomicInteger();
  /** The first piece that failed, and how. Pieces are begun in their order, so all before it are being done at least. */
  private volatile int failed = Integer.MAX_VALUE;
  private Throwable failure;
  private volatile Throwable cancelled;

  private SharedWork(List<T> pieces, BiFunction<? super T, Progress, ? extends R> work) {
    this.pieces = pieces;
    this.work = work;
    this.results = new Object[pieces.size()];
  }

  /**
   * Does all pieces.
   *
   * @param progress is told by the calling thread only, and cancels all threads' work
   * @param work does one piece, on any thread, at the same time as others; the progress it is given is that of its piece. Helpers are
   *     interrupted when the work is cancelled
   * @return a result for each piece
   */
  public static <T, R> List<R> of(List<T> pieces, Progress progress, BiFunction<? super T, Progress, ? extends R> work) {
    int helpers = Spare.take(Math.min(MOST_HELPERS, pieces.size() - 1));
    try {
      return new SharedWork<T, R>(pieces, work).done(progress, helpers);
    } finally {
      Spare.giveBack(helpers);
    }
  }

  /** The same with a given number of helpers. */
  static <T, R> List<R> of(List<T> pieces, Progress progress, BiFunction<? super T, Progress, ? extends R> work, int helpers) {
    return new SharedWork<T, R>(pieces, work).done(progress, helpers);
  }

  @SuppressWarnings("unchecked")
  private List<R> done(Progress progress, int count) {
    Progress told = (stage, share) -> tell(progress, stage, share);
    List<Thread> helpers = new ArrayList<>();
    try {
      for (int i = 0; i < count; i++) {
        helpers.add(Spare.started(() -> doPieces(this::stopWhereCancelled)));
      }
      doPieces(told);
      waitFor(helpers, told);
    } finally {
      end(helpers);
    }
    rethrow(cancelled);
    rethrow(failure);
    return (List<R>) Arrays.asList(results);
  }

  private void doPieces(Progress progress) {
    int i;
    while (cancelled == null && failed == Integer.MAX_VALUE && (i = next.getAndIncrement()) < results.length) {
      try {
        progress.at(0);
        results[i] = work.apply(pieces.get(i), progress);
        done.incrementAndGet();
      } catch (CancellationException e) {
        cancel(e);
      } catch (RuntimeException | Error e) {
        fail(i, e);
      }
    }
  }

  /** A piece's progress as that of all. */
  private void tell(Progress progress, String stage, double share) {
    try {
      progress.at(stage, Math.min(1, (done.get() + share) / Math.max(1, results.length)));
    } catch (RuntimeException | Error e) {
      // Whatever it throws is meant for whoever began the work, not for a piece.
      cancel(e);
      throw e;
    }
  }

  private void stopWhereCancelled(String stage, double share) {
    if (cancelled != null) {
      throw new CancellationException();
    }
  }

  private synchronized void cancel(Throwable reason) {
    if (cancelled == null) {
      cancelled = reason;
    }
  }

  private synchronized void fail(int piece, Throwable reason) {
    if (piece < failed) {
      failed = piece;
      failure = reason;
    }
  }

  private void waitFor(List<Thread> helpers, Progress told) {
    for (Thread helper : helpers) {
      while (cancelled == null && helper.isAlive()) {
        try {
          helper.join(LOOK_MS);
          told.at(0);
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
          cancel(new CancellationException("interrupted"));
        }
      }
    }
  }

  /** No helper outlives the call: what it works on may be closed afterwards. */
  private void end(List<Thread> helpers) {
    if (cancelled != null) {
      helpers.forEach(Thread::interrupt);
    }
    helpers.forEach(Spare::await);
  }

  private static void rethrow(Throwable thrown) {
    if (thrown instanceof RuntimeException e) {
      throw e;
    }
    if (thrown instanceof Error e) {
      throw e;
    }
  }
}
