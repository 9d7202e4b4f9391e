package org.seamledger.queue;

import java.time.Duration;
import java.util.Optional;
import org.seamledger.progress.Progress;
import org.seamledger.run.Failure;

/** An analysis that this worker runs: how far it is, and whether it shall end. */
final class ClaimedRun {

  final String id;
  private final long begun = System.nanoTime();
  private volatile String stage = "Starting";
  private volatile double fraction;
  private volatile Failure stop;
  private volatile long stopped;
  private volatile boolean lost;
  private volatile Thread thread = Thread.currentThread();

  /** Begins on the calling thread. */
  ClaimedRun(String id) {
    this.id = id;
  }

  /** What the analysis tells, from where it is read now and then; it is cancelled where this run shall end. */
  Progress progress() {
    Progress progress = this::at;
    return progress.unless(() -> stop != null);
  }

  void at(String words, double share) {
    stage = words.isEmpty() ? stage : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    fraction = Math.max(fraction, Math.min(1, share));
  }

  String stage() {
    return stage;
  }

  double fraction() {
    return fraction;
  }

  Duration age() {
    return Duration.ofNanos(System.nanoTime() - begun);
  }

  /** Has it end soon, for this reason; the first reason counts. */
  synchronized void interrupt(Failure why) {
    if (stop == null) {
      stopped = System.nanoTime();
      stop = why;
    }
    Thread t = thread;
    if (t != null) {
      t.interrupt();
    }
  }

  /** Has it end, since it is this worker's no more: cancelled, removed, or taken over by another. */
  void lose() {
    lost = true;
    interrupt(new Failure.Cancelled());
  }

  boolean isLost() {
    return lost;
  }

  Optional<Failure> stop() {
    return Optional.ofNullable(stop);
  }

  /** Whether it was told to end so long ago and has not. */
  boolean isDeafFor(Duration grace) {
    return stop != null && thread != null && System.nanoTime() - stopped > grace.toNanos();
  }

  /** Whether it can be stopped still. */
  boolean isUnderWay() {
    return thread != null;
  }

  /** From here on an interrupt no longer stops it: one that arrives now must not break what is written last. */
  synchronized void isBeyondInterrupts() {
    thread = null;
    Thread.interrupted();
  }
}
