package org.seamledger.queue;

import java.util.Comparator;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Queue;
import org.seamledger.ledger.State;
import org.seamledger.run.ClientWords;
import org.seamledger.run.Failure;
import org.seamledger.run.MemoryAlarm;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Looks at the runs of a worker twice a second: writes how far they are, ends those that take too long, that are the worker's no more, or
 * that began last when memory is short. One that does not hear takes the process with it, after all else was put back.
 */
final class RunLimits {

  private static final Logger LOG = LoggerFactory.getLogger(Worker.class);

  private final WorkerSetting setting;
  private final Queue queue;
  private final String holder;
  private final Set<ClaimedRun> runs = ConcurrentHashMap.newKeySet();
  private final MemoryAlarm memory = new MemoryAlarm();

  RunLimits(WorkerSetting setting) {
    this.setting = setting;
    this.queue = setting.store().queue();
    this.holder = setting.store().here().id();
  }

  void add(ClaimedRun run) {
    runs.add(run);
  }

  void remove(ClaimedRun run) {
    runs.remove(run);
  }

  /** Ends all of them, since the worker ends. */
  void interruptAll() {
    runs.forEach(r -> r.interrupt(new Failure.Cancelled()));
  }

  void look() {
    if (memory.rings()) {
      runs.stream().filter(ClaimedRun::isUnderWay).min(Comparator.comparing(ClaimedRun::age)).ifPresent(this::endForMemory);
    }
    for (ClaimedRun run : runs) {
      if (run.isUnderWay() && run.age().compareTo(setting.limits().longest()) > 0) {
        run.interrupt(new Failure.TooLong(setting.limits().longest()));
      }
      if (run.isDeafFor(setting.limits().grace())) {
        haltFor(run);
      }
      tell(run);
    }
  }

  private void endForMemory(ClaimedRun run) {
    LOG.atWarn().addKeyValue("analysis", run.id).log("memory is short: analysis ended");
    run.interrupt(new Failure.OutOfMemory(Runtime.getRuntime().maxMemory() / (1 << 20), new OutOfMemoryError("nearly")));
  }

  private void tell(ClaimedRun run) {
    try {
      if (run.isUnderWay() && !queue.tell(run.id, holder, run.stage(), run.fraction())) {
        run.lose();
      }
    } catch (LedgerException e) {
      // The database is away: the run goes on, and what is known of it is told when it is back.
      LOG.debug("progress not told", e);
    }
  }

  /** What the analysis is to be told is told before; the others are not to suffer by it. */
  private void haltFor(ClaimedRun deaf) {
    LOG.atError().addKeyValue("analysis", deaf.id).log("analysis does not end when told to: the worker ends with it");
    try {
      runs.stream().filter(r -> r != deaf).forEach(r -> queue.putBack(r.id, holder));
      Failure why = deaf.stop().orElseThrow();
      if (!deaf.isLost() && !(why instanceof Failure.Cancelled)) {
        setting.store().analyses().end(deaf.id, State.FAILED, why.code(), ClientWords.of(why));
      }
    } finally {
      setting.halt().run();
    }
  }
}
