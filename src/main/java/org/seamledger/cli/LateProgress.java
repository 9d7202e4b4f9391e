package org.seamledger.cli;

import java.io.PrintStream;
import org.seamledger.progress.Progress;

/** Says on standard error what is going on, but only once it takes longer than a second; a quick run stays quiet. */
final class LateProgress implements Progress, AutoCloseable {

  private static final long PATIENCE_MS = 1000;

  private final PrintStream err;
  private volatile String current = "";
  private boolean talking;
  private boolean closed;

  LateProgress(PrintStream err) {
    this.err = err;
    Thread clock = new Thread(this::speakUp, "progress");
    clock.setDaemon(true);
    clock.start();
  }

  private synchronized void speakUp() {
    long start = System.nanoTime();
    try {
      long left = PATIENCE_MS;
      while (left > 0 && !closed) {
        wait(left);
        left = PATIENCE_MS - (System.nanoTime() - start) / 1_000_000;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return;
    }
    if (!closed) {
      talking = true;
      if (!current.isEmpty()) {
        say();
      }
    }
  }

  @Override
  public void at(String stage, double share) {
    // Told for every face and line: only a change is worth the lock.
    if (!stage.isEmpty() && !stage.equals(current)) {
      begins(stage);
    }
  }

  private synchronized void begins(String stage) {
    current = stage;
    if (talking) {
      say();
    }
  }

  private void say() {
    err.println("seamledger: " + current + " …");
  }

  @Override
  public synchronized void close() {
    closed = true;
    notifyAll();
  }
}
