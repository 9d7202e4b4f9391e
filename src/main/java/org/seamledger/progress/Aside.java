package org.seamledger.progress;

import java.util.function.Supplier;

/**
 * Something made on a thread of its own, while the caller does what doesn't need it yet. Where there is no processor to spare it is made
 * at once, before the caller goes on.
 *
 * @param <T> what is made
 */
public final class Aside<T> implements AutoCloseable {

  private final Supplier<T> work;
  private final Thread thread;
  private T made;
  private volatile Throwable failure;

  private Aside(Supplier<T> work, int processors) {
    this.work = work;
    if (processors > 0) {
      this.thread = Spare.started(() -> {
        try {
          make();
        } finally {
          Spare.giveBack(processors);
        }
      });
    } else {
      this.thread = null;
      make();
    }
  }

  /** @param work fails by unchecked exceptions only, which {@link #get} and {@link #check} throw */
  public static <T> Aside<T> of(Supplier<T> work) {
    return new Aside<>(work, Spare.take(1));
  }

  private void make() {
    try {
      made = work.get();
    } catch (RuntimeException | Error e) {
      failure = e;
    }
  }

  /** Waits until it is made. */
  public T get() {
    close();
    check();
    return made;
  }

  /** Throws its failure if it has failed by now. */
  public void check() {
    if (failure instanceof RuntimeException e) {
      throw e;
    }
    if (failure instanceof Error e) {
      throw e;
    }
  }

  /** Waits for the thread's end; the failure, if there is one, stays where it is. */
  @Override
  public void close() {
    if (thread != null) {
      Spare.await(thread);
    }
  }
}
