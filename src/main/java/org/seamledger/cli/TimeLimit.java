package org.seamledger.cli;

import java.io.PrintStream;
import java.time.Duration;
import org.seamledger.run.Failure;

/**
 * Ends an analysis that takes too long: its thread is interrupted, which every loop of the analysis hears; where that does not end it soon,
 * the process ends, with one line and the status of a model that can't be read.
 */
final class TimeLimit implements AutoCloseable {

  static final String VARIABLE = "SEAMLEDGER_TIME_LIMIT";
  private static final Duration STANDARD = Duration.ofHours(1);
  private static final Duration GRACE = Duration.ofSeconds(10);

  private final Duration limit;
  private final Thread worker = Thread.currentThread();
  private final PrintStream err;
  private boolean closed;
  private boolean over;

  /** Begins now, for the calling thread. */
  TimeLimit(Duration limit, PrintStream err) {
    this.limit = limit;
    this.err = err;
    Thread clock = new Thread(this::watch, "time limit");
    clock.setDaemon(true);
    clock.start();
  }

  /** @throws UsageException where the variable is no number of seconds */
  static Duration ofProcess() {
    String text = System.getenv(VARIABLE);
    if (text == null || text.isBlank()) {
      return STANDARD;
    }
    if (!text.strip().matches("[0-9]{1,9}") || Integer.parseInt(text.strip()) == 0) {
      throw new UsageException(VARIABLE + " is the number of seconds that an analysis may take, at least 1; found " + text.strip());
    }
    return Duration.ofSeconds(Integer.parseInt(text.strip()));
  }

  private synchronized void watch() {
    try {
      await(limit);
      if (closed) {
        return;
      }
      over = true;
      worker.interrupt();
      await(GRACE);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return;
    }
    if (!closed) {
      Session.complain(err, failure().message());
      Runtime.getRuntime().halt(ExitStatus.UNREADABLE);
    }
  }

  private void await(Duration time) throws InterruptedException {
    long end = System.nanoTime() + time.toNanos();
    for (long left = time.toMillis(); left > 0 && !closed; left = (end - System.nanoTime()) / 1_000_000) {
      wait(left);
    }
  }

  /** Whether the analysis was told to end. */
  synchronized boolean isOver() {
    return over;
  }

  Failure failure() {
    return new Failure.TooLong(limit);
  }

  @Override
  public synchronized void close() {
    closed = true;
    notifyAll();
    if (over) {
      // What is said last must not be taken for interrupted.
      Thread.interrupted();
    }
  }
}
