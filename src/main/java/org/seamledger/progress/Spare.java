package org.seamledger.progress;

import java.util.concurrent.Semaphore;

/**
 * Processors that helping threads may use: one fewer than there are, for the whole process. However many analyses run at once, their
 * helpers don't crowd the machine; who finds none to spare does all work on its own thread.
 */
final class Spare {

  private static final Semaphore PROCESSORS = new Semaphore(Math.max(0, Runtime.getRuntime().availableProcessors() - 1));

  private Spare() {
  }

  /** Takes up to so many, without waiting. @return how many; give them back by {@link #giveBack} */
  static int take(int most) {
    int taken = 0;
    while (taken < most && PROCESSORS.tryAcquire()) {
      taken++;
    }
    return taken;
  }

  static void giveBack(int taken) {
    PROCESSORS.release(taken);
  }

  /** A running thread that neither keeps the process alive nor outlives the caller's {@link #await}. */
  static Thread started(Runnable work) {
    Thread thread = new Thread(work, "helper of " + Thread.currentThread().getName());
    thread.setDaemon(true);
    thread.start();
    return thread;
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
