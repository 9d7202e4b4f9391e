package org.seamledger.http.job;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.seamledger.ledger.State;
import org.seamledger.progress.Progress;
import org.seamledger.run.Failure;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One analysis that waits or runs. */
final class Job {

  private static final Logger LOG = LoggerFactory.getLogger(Job.class);
  private static final double STEP = 0.005;

  final String id;
  final List<Consumer<JobStatus>> listeners = new CopyOnWriteArrayList<>();
  volatile JobStatus status = new JobStatus(State.QUEUED, "Waiting for its turn", 0);
  private volatile Failure stop;
  private volatile Thread thread;
  /** 0 before. */
  private volatile long begun;
  /** Somebody decided meanwhile; guarded by the jobs. */
  boolean again;

  Job(String id) {
    this.id = id;
  }

  /** What the analysis tells; it is cancelled where this job shall end. */
  Progress progress() {
    Progress progress = this::goesOn;
    return progress.unless(() -> stop != null);
  }

  /** Tells who listens where it is another stage, or has moved by so much that people see it; it never moves back. */
  private void goesOn(String words, double fraction) {
    String stage = words.isEmpty() ? status.stage() : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    if (!stage.equals(status.stage()) || fraction >= status.fraction() + STEP) {
      tell(new JobStatus(State.RUNNING, stage, Math.max(status.fraction(), Math.min(1, fraction))));
    }
  }

  void tell(JobStatus s) {
    status = s;
    for (Consumer<JobStatus> l : listeners) {
      try {
        l.accept(s);
      } catch (RuntimeException e) {
        // Who can't listen any more must not cost the others their result.
        listeners.remove(l);
        LOG.atWarn().addKeyValue("analysis", id).setCause(e).log("progress not told");
      }
    }
  }

  /** Has it end soon, for this reason. */
  void interrupt(Failure why) {
    stop = why;
    Thread t = thread;
    if (t != null) {
      t.interrupt();
    }
  }

  /** Why it shall end soon; empty where it goes on. */
  Optional<Failure> stop() {
    return Optional.ofNullable(stop);
  }

  /** Since a moment, in whole milliseconds. */
  static double seconds(long begun) {
    return Math.round((System.nanoTime() - begun) / 1e6) / 1e3;
  }

  /** Its work is on this thread from here on, and can be interrupted. */
  void isOnThisThread() {
    thread = Thread.currentThread();
    begun = System.nanoTime();
  }

  /** When its work began, by the clock that never jumps; 0 where it waits or can't be stopped any more. */
  long begun() {
    return thread == null ? 0 : begun;
  }

  /** From here on an interrupt no longer stops it: one that arrives now must not break what is written last. */
  void isBeyondInterrupts() {
    thread = null;
    Thread.interrupted();
  }
}
