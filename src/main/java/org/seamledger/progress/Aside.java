package org.seamledger.progress;

import java.util.Optional;
import java.util.function.Supplier;

/**
 * Something made on a thread of its own, while the caller does what doesn't need it yet.
 *
 * @param <T> what is made
 */
public final class Aside<T> implements AutoCloseable {

  private final Supplier<T> work;
  private Thread thread;
  private T made;
  private volatile Throwable failure;

  private Aside(Supplier<T> work) {
    this.work = work;
  }

  /**
   * Where there is no processor to spare it is made before the caller goes on.
   *
   * @param work fails by unchecked exceptions only, which {@link #get} and {@link #check} throw
   */
  public static <T> Aside<T> of(Supplier<T> work) {
    return ifSpare(work).orElseGet(() -> {
      Aside<T> here = new Aside<>(work);
      here.make();
      return here;
    });
  }

  /** Begins only where there is a processor to spare now. */
  public static <T> Optional<Aside<T>> ifSpare(Supplier<T> work) {
    Aside<T> aside = new Aside<>(work);
    Optional<Thread> started = Spare.started(aside::make);
    aside.thread = started.orElse(null);
    return started.map(thread -> aside);
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
    Thrown.again(failure);
  }

  /** Waits for the thread's end; the failure, if there is one, stays where it is. */
  @Override
  public void close() {
    if (thread != null) {
      Spare.await(thread);
    }
  }
}
