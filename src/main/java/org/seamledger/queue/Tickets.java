package org.seamledger.queue;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import org.seamledger.ledger.Queue;
import org.seamledger.ledger.SharedTime;
import org.seamledger.ledger.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tickets for what workers shall do, one for each analysis that waits and for each result that does not follow its decisions. They hold
 * nothing but its id.
 */
public final class Tickets {

  private static final Logger LOG = LoggerFactory.getLogger(Tickets.class);
  /** People wait before the page for a result with their decision, and nobody for an analysis that was begun just now. */
  static final int FOLLOW_PRIORITY = 10;

  private final SchedulerClient client;
  private final SharedTime time;

  public Tickets(Store store) {
    time = store.time();
    client = SchedulerClient.Builder.create(store.connections()).tableName(Queue.TICKETS).enablePriority().build();
  }

  /** For an analysis that waits. Where the database does not answer, the workers notice that it has none. */
  public void analysis(String id) {
    issue(new TaskInstance<Void>(Queue.ANALYSIS, id, () -> null, 0));
  }

  /** For a result that does not follow its decisions. */
  public void follow(String id) {
    issue(new TaskInstance<Void>(Queue.FOLLOW, id, () -> null, FOLLOW_PRIORITY));
  }

  private void issue(TaskInstance<Void> ticket) {
    try {
      client.scheduleIfNotExists(ticket, time.now());
    } catch (RuntimeException e) {
      LOG.atWarn().addKeyValue("analysis", ticket.getId()).setCause(e).log("no ticket now, the workers will make one");
    }
  }
}
