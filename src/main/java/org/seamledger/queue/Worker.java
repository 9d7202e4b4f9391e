package org.seamledger.queue;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerName;
import com.github.kagkarlsson.scheduler.logging.LogLevel;
import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Queue;
import org.seamledger.ledger.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A process that takes analyses from the queue and runs them, a few at once. It says now and then that it is alive; where one is silent,
 * others begin again what it had.
 */
public final class Worker implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Worker.class);
  private static final int MISSED = 4;
  private static final Duration POLL = Duration.ofMillis(250);
  private static final Duration UPKEEP = Duration.ofSeconds(5);
  private static final int UPKEEP_PRIORITY = 20;
  private static final int LOOK_MILLIS = 500;
  private static final int SEEN_SECONDS = 5;
  private static final int RETRY_SECONDS = 2;
  private static final Duration LAST_WAIT = Duration.ofSeconds(10);

  private final Store store;
  private final RunLimits limits;
  private final Scheduler scheduler;
  private final ScheduledExecutorService clock = Executors.newScheduledThreadPool(2, r -> {
    Thread t = new Thread(r, "clock");
    t.setDaemon(true);
    return t;
  });
  private volatile boolean closing;

  private Worker(WorkerSetting setting) {
    store = setting.store();
    limits = new RunLimits(setting);
    Tickets tickets = new Tickets(store);
    LimitedRuns runs = new LimitedRuns(setting, limits);
    FailureHandler<Void> later = (done, operations) -> {
      LOG.atWarn().setCause(done.getCause().orElse(null)).log("ticket given back");
      operations.reschedule(done, done.getTimeDone().plusSeconds(RETRY_SECONDS));
    };
    List<Task<?>> tasks = List.of(
        Tasks.custom(Queue.ANALYSIS, Void.class).onFailure(later).onDeadExecutionRevive()
            .execute(new AnalysisTicket(setting, runs, tickets, () -> closing)),
        Tasks.custom(Queue.FOLLOW, Void.class).defaultPriority(Tickets.FOLLOW_PRIORITY).onFailure(later).onDeadExecutionRevive()
            .execute(new FollowTicket(setting, runs, tickets)));
    Upkeep upkeep = new Upkeep(setting, tickets);
    RecurringTask<Void> recurring = Tasks.recurring("upkeep", FixedDelay.of(UPKEEP)).defaultPriority(UPKEEP_PRIORITY)
        .execute((instance, context) -> upkeep.run());
    scheduler = Scheduler.create(store.connections(), tasks).startTasks(recurring).clock(store.time()::now).tableName(Queue.TICKETS)
        .enablePriority()
        .schedulerName(new SchedulerName.Fixed(store.here().id())).threads(setting.limits().threads()).pollUsingLockAndFetch(0.5, 1.0)
        .pollingInterval(POLL).heartbeatInterval(setting.limits().heartbeat()).missedHeartbeatsLimit(MISSED).shutdownMaxWait(LAST_WAIT)
        .failureLogging(LogLevel.DEBUG, false).build();
    clock.scheduleWithFixedDelay(setting.health().guarded("clock", limits::look), LOOK_MILLIS, LOOK_MILLIS, TimeUnit.MILLISECONDS);
    clock.scheduleWithFixedDelay(setting.health().guarded("presence", this::say), SEEN_SECONDS, SEEN_SECONDS, TimeUnit.SECONDS);
  }

  /** Begins to work. */
  public static Worker start(WorkerSetting setting) {
    Worker worker = new Worker(setting);
    worker.scheduler.start();
    return worker;
  }

  private void say() {
    try {
      store.processes().seen(store.here());
    } catch (LedgerException e) {
      LOG.debug("not told that this worker is alive", e);
    }
  }

  /** Ends in good order: what ran waits again, for another worker. */
  @Override
  public void close() {
    closing = true;
    limits.interruptAll();
    scheduler.stop();
    clock.shutdownNow();
  }
}
