package org.seamledger.progress;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * Pieces of one work that don't need each other, done by the calling thread and by helpers beside it, as far as there are processors to
 * spare. Nothing shows who did which: results come in the pieces' order, and where pieces fail, the first one's failure is thrown, as if
 * they had been done one after another.
 *
 * @param <S> what each thread has for itself, such as a cache
 * @param <T> piece
 * @param <R> its result
 */
public final class SharedWork<S, T, R> {

  /** More helpers would wait for memory rather than compute. */
  private static final int MOST_HELPERS = 3;
  /** How often the caller, waiting for the last pieces, asks whether to go on. */
  private static final int LOOK_MS = 50;

  /** How a piece is done: on any thread, at the same time as others. */
  @FunctionalInterface
  public interface Work<S, T, R> {
    /**
     * @param own the thread's own
     * @param progress of this piece
     * @return not null
     */
    R on(S own, T piece, Progress progress);
  }

  private final List<T> pieces;
  private final Supplier<S> own;
  private final Work<S, T, R> work;
  private final Consumer<? super R> taker;
  /** Results that wait for those of earlier pieces. */
  private final AtomicReferenceArray<R> results;
  private int taken;
  private final AtomicInteger next = new AtomicInteger();
  private final AtomicInteger done = new AtomicInteger();
  /** The first piece that failed, and how. Pieces are begun in their order, so all before it are being done at least. */
  private volatile int failed = Integer.MAX_VALUE;
  private Throwable failure;
  private volatile Throwable cancelled;
  private double told;

  private SharedWork(List<T> pieces, Supplier<S> own, Work<S, T, R> work, Consumer<? super R> taker) {
    this.pieces = pieces;
    this.own = own;
    this.work = work;
    this.taker = taker;
    this.results = new AtomicReferenceArray<>(pieces.size());
  }

  /**
   * Does all pieces.
   *
   * @param progress is told by whichever thread does a piece, never by two at once, and cancels all threads' work
   * @return a result for each piece
   */
  public static <T, R> List<R> of(List<T> pieces, Progress progress, BiFunction<? super T, Progress, ? extends R> work) {
    List<R> results = new ArrayList<>(pieces.size());
    SharedWork.<Void, T, R>each(pieces, progress, () -> null, (none, piece, part) -> work.apply(piece, part), results::add);
    return results;
  }

  /**
   * The same, but that results are handed on as they come, so that they needn't all be held.
   *
   * @param own makes what each thread has for itself
   * @param taker is given the results on the calling thread, in the pieces' order
   */
  public static <S, T, R> void each(List<T> pieces, Progress progress, Supplier<S> own, Work<S, T, R> work, Consumer<? super R> taker) {
    new SharedWork<>(pieces, own, work, taker).run(progress);
  }

  private void run(Progress progress) {
    Progress one = (stage, share) -> tell(progress, stage, share);
    List<Thread> helpers = new ArrayList<>();
    try {
      hire(helpers, one);
      doPieces(one, () -> {
        take();
        hire(helpers, one);
      });
      waitFor(helpers, one);
    } finally {
      end(helpers);
    }
    Thrown.again(cancelled);
    Thrown.again(failure);
    take();
  }

  /** Processors may become spare in the middle of the work. */
  private void hire(List<Thread> helpers, Progress one) {
    boolean more = true;
    while (more && helpers.size() < MOST_HELPERS && next.get() + 1 < pieces.size()) {
      Optional<Thread> helper = Spare.started(() -> doPieces(one, () -> {}));
      helper.ifPresent(helpers::add);
      more = helper.isPresent();
    }
  }

  private void doPieces(Progress progress, Runnable between) {
    S mine = null;
    int i;
    while (cancelled == null && failed == Integer.MAX_VALUE && (i = next.getAndIncrement()) < pieces.size()) {
      try {
        progress.at(0);
        mine = mine == null ? own.get() : mine;
        results.set(i, work.on(mine, pieces.get(i), progress));
        done.incrementAndGet();
        between.run();
      } catch (CancellationException e) {
        cancel(e);
      } catch (RuntimeException | Error e) {
        if (Thread.currentThread().isInterrupted()) {
          // Reading closes the file when its thread is interrupted: what others then fail of is not the reason.
          cancel(e);
        } else {
          fail(i, e);
        }
      }
    }
  }

  /** Hands on what no earlier result is missing for. */
  private void take() {
    for (R result; taken < pieces.size() && (result = results.getAndSet(taken, null)) != null; taken++) {
      taker.accept(result);
    }
  }

  /** A piece's progress as that of all; what was told before is never taken back. */
  private synchronized void tell(Progress progress, String stage, double share) {
    if (cancelled != null) {
      throw new CancellationException();
    }
    try {
      told = Math.max(told, Math.min(1, (done.get() + share) / pieces.size()));
      progress.at(stage, told);
    } catch (RuntimeException | Error e) {
      // Whatever it throws is meant for whoever began the work, not for a piece.
      cancel(e);
      throw e;
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

  private void waitFor(List<Thread> helpers, Progress one) {
    for (Thread helper : helpers) {
      while (cancelled == null && helper.isAlive()) {
        try {
          helper.join(LOOK_MS);
          take();
          one.at(0);
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
          cancel(new CancellationException("interrupted"));
        } catch (CancellationException e) {
          cancel(e);
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
}
