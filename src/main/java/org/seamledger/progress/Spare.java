package org.seamledger.progress;

import java.util.Optional;
import java.util.concurrent.Semaphore;

/**
 * Processors that helping threads may use: one fewer than there are, for the whole process. However many analyses run at once, their
 * helpers don't crowd the machine; who finds none to spare does all work on its own thread.
 */
final class Spare {

  private static final Semaphore PROCESSORS = new Semaphore(Math.max(0, Runtime.getRuntime().availableProcessors() - 1));

  private Spare() {
  }

  /** A running thread, which gives its processor back at its end and doesn't keep the process alive; empty where none is to spare. */
  static Optional<Thread> started(Runnable work) {
    if (!PROCESSORS.tryAcquire()) {
      return Optional.empty();
    }
    Thread thread = new Thread(() -> {
      try {
        work.run();
      } finally {
        PROCESSORS.release();
      }
    }, "helper of " + Thread.currentThread().getName());
    thread.setDaemon(true);
    try {
      thread.start();
    } catch (OutOfMemoryError e) {
      // The system gives no more threads; what the thread was to do can be done without it.
      PROCESSORS.release();
      return Optional.empty();
    }
    return Optional.of(thread);
  }

  /** Waits for a thread's end, even if interrupted meanwhile; the caller then stays interrupted. */
  static void await(Thread thread) {
    boolean interrupted = false;
    while (true) {
      try {
        thread.join();
        break;
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
