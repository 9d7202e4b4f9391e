package org.seamledger.http;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.seamledger.ledger.State;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** One analysis that waits or runs. */
final class Job {

  private static final Logger LOG = LoggerFactory.getLogger(Job.class);
  private static final double STEP = 0.005;

  final String id;
  final List<Consumer<Jobs.Progress>> listeners = new CopyOnWriteArrayList<>();
  volatile Jobs.Progress progress = new Jobs.Progress(State.QUEUED, "Waiting for its turn", 0);
  volatile State stop;
  private volatile Thread thread;
  /** Somebody decided meanwhile; guarded by the jobs. */
  boolean again;

  Job(String id) {
    this.id = id;
  }

  /** Tells who listens where it is another stage, or has moved by so much that people see it; it never moves back. */
  void goesOn(String stage, double fraction) {
    if (!progress.stage().equals(stage) || fraction >= progress.fraction() + STEP) {
      tell(new Jobs.Progress(State.RUNNING, stage, Math.max(progress.fraction(), Math.min(1, fraction))));
    }
  }

  void tell(Jobs.Progress p) {
    progress = p;
    for (Consumer<Jobs.Progress> l : listeners) {
      try {
        l.accept(p);
      } catch (RuntimeException e) {
        // Who can't listen any more must not cost the others their result.
        listeners.remove(l);
        LOG.atWarn().addKeyValue("analysis", id).setCause(e).log("progress not told");
      }
    }
  }

  /** Has it end soon, as if it had come to this state by itself: cancelled, failed for the time it took, or to be run again later. */
  void interrupt(State why) {
    stop = why;
    Thread t = thread;
    if (t != null) {
      t.interrupt();
    }
  }

  /** Its work is on this thread from here on, and can be interrupted. */
  void isOnThisThread() {
    thread = Thread.currentThread();
  }

  /** From here on an interrupt no longer stops it: one that arrives now must not break what is written last. */
  void isBeyondInterrupts() {
    thread = null;
    Thread.interrupted();
  }
}
