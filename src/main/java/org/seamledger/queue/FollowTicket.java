package org.seamledger.queue;

import com.github.kagkarlsson.scheduler.task.CompletionHandler;
import com.github.kagkarlsson.scheduler.task.ExecutionContext;
import com.github.kagkarlsson.scheduler.task.ExecutionHandler;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import java.io.IOException;
import java.util.Optional;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.run.ClientWords;
import org.seamledger.run.Failure;
import org.seamledger.run.PatientStorage;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What a worker does with a ticket for a result that does not follow its decisions: computes it until it does, or can't. */
final class FollowTicket implements ExecutionHandler<Void> {

  private static final Logger LOG = LoggerFactory.getLogger(Worker.class);

  private final Store store;
  private final LimitedRuns runs;
  private final Tickets tickets;

  FollowTicket(WorkerSetting setting, LimitedRuns runs, Tickets tickets) {
    this.store = setting.store();
    this.runs = runs;
    this.tickets = tickets;
  }

  @Override
  public CompletionHandler<Void> execute(TaskInstance<Void> ticket, ExecutionContext context) {
    String id = ticket.getId();
    Optional<Choices.Standing> given = Optional.empty();
    try {
      store.queue().hold(id, store.here().id());
      Choices.Standing standing = store.choices().of(id);
      while (!standing.followed()) {
        Optional<Failure> failure = follow(id, standing);
        if (failure.isPresent() && failure.get() instanceof Failure.Cancelled) {
          // The worker ends, or another has it; whoever comes next goes on.
          return (done, operations) -> operations.reschedule(done, done.getTimeDone());
        }
        if (failure.isPresent()) {
          store.queue().trouble(id, ClientWords.of(failure.get()));
          given = Optional.of(standing);
          break;
        }
        standing = store.choices().of(id);
      }
    } catch (LedgerException e) {
      if (e.reason() != LedgerException.Reason.NOT_FOUND) {
        throw e;
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    Optional<Choices.Standing> failed = given;
    return (done, operations) -> {
      operations.remove();
      // What was decided while the ticket was there got no other.
      if (isBehind(id, failed)) {
        tickets.follow(id);
      }
    };
  }

  private Optional<Failure> follow(String id, Choices.Standing standing) throws IOException {
    StoredAnalysis analysis = store.analyses().get(id);
    ClaimedRun run = new ClaimedRun(id);
    if (standing.inForce().isEmpty()) {
      run.isBeyondInterrupts();
      PatientStorage.run(() -> store.choices().complete(id, standing, Optional.empty(), Optional.empty()));
      return Optional.empty();
    }
    Optional<Failure> failure = runs.run(run, analysis, Optional.of(standing));
    LOG.atInfo().addKeyValue("analysis", id).addKeyValue("state", failure.map(Failure::code).orElse("done"))
        .addKeyValue("seconds", run.age().toMillis() / 1e3).log("decisions followed");
    return failure;
  }

  private boolean isBehind(String id, Optional<Choices.Standing> failed) {
    try {
      Choices.Standing now = store.choices().of(id);
      return !now.followed() && failed.filter(f -> f.inForce().equals(now.inForce())).isEmpty();
    } catch (LedgerException e) {
      return false;
    }
  }
}
