package org.seamledger.queue;

import com.github.kagkarlsson.scheduler.task.CompletionHandler;
import com.github.kagkarlsson.scheduler.task.ExecutionContext;
import com.github.kagkarlsson.scheduler.task.ExecutionHandler;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Queue;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.run.ClientWords;
import org.seamledger.run.Failure;
import org.seamledger.run.PatientStorage;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a worker does with a ticket for an analysis: first what its last holder left when it died, then the analyses whose turn it is, one
 * after another, while there are any.
 */
final class AnalysisTicket implements ExecutionHandler<Void> {

  private static final Logger LOG = LoggerFactory.getLogger(Worker.class);
  private static final int PAUSE_SECONDS = 5;

  private final WorkerSetting setting;
  private final Store store;
  private final Queue queue;
  private final String holder;
  private final LimitedRuns runs;
  private final Tickets tickets;
  private final BooleanSupplier closing;

  AnalysisTicket(WorkerSetting setting, LimitedRuns runs, Tickets tickets, BooleanSupplier closing) {
    this.setting = setting;
    this.store = setting.store();
    this.queue = store.queue();
    this.holder = store.here().id();
    this.runs = runs;
    this.tickets = tickets;
    this.closing = closing;
  }

  @Override
  public CompletionHandler<Void> execute(TaskInstance<Void> ticket, ExecutionContext context) {
    if (!store.models().isThere()) {
      setting.health().failed("models", new IOException("the folder of models is not there: " + store.models()));
      return again(PAUSE_SECONDS);
    }
    setting.health().works("models");
    Optional<StoredAnalysis> next = left(ticket.getId());
    while (next.isPresent()) {
      run(next.get());
      if (closing.getAsBoolean() || queue.hasFollowing()) {
        return again(0);
      }
      next = turn(ticket.getId());
    }
    return closing.getAsBoolean() ? again(0) : (done, operations) -> operations.remove();
  }

  /** The ticket stays, for whoever has a hand free. */
  private static CompletionHandler<Void> again(int seconds) {
    return (done, operations) -> operations.reschedule(done, done.getTimeDone().plusSeconds(seconds));
  }

  private Optional<StoredAnalysis> left(String ticket) {
    Optional<Queue.Inheritance> left = queue.inherit(holder, ticket);
    left.ifPresent(l -> LOG.atWarn().addKeyValue("analysis", l.analysis().id()).addKeyValue("givenUp", l.givenUp())
        .log("its worker died"));
    return left.isPresent() && !left.get().givenUp() ? left.map(Queue.Inheritance::analysis) : turn(ticket);
  }

  private Optional<StoredAnalysis> turn(String ticket) {
    return closing.getAsBoolean() ? Optional.empty() : queue.take(holder, ticket, setting.limits().perProject());
  }

  private void run(StoredAnalysis analysis) {
    LOG.atInfo().addKeyValue("analysis", analysis.id()).addKeyValue("files", analysis.files().size()).log("analysis begins");
    ClaimedRun run = new ClaimedRun(analysis.id());
    Optional<Failure> failure = runs.run(run, analysis, Optional.empty());
    try {
      end(run, failure);
    } catch (IOException | CancellationException e) {
      LOG.atWarn().addKeyValue("analysis", run.id).setCause(e).log("end not stored");
    }
    LOG.atInfo().addKeyValue("analysis", run.id).addKeyValue("state", failure.map(Failure::code).orElse("done"))
        .addKeyValue("seconds", run.age().toMillis() / 1e3).log("analysis ended");
  }

  private void end(ClaimedRun run, Optional<Failure> failure) throws IOException {
    if (failure.isEmpty()) {
      if (isBehind(run.id)) {
        tickets.follow(run.id);
      }
    } else if (run.isLost()) {
      PatientStorage.run(() -> queue.survived(run.id, holder));
    } else if (failure.get() instanceof Failure.Cancelled) {
      PatientStorage.run(() -> queue.putBack(run.id, holder));
    } else {
      PatientStorage.ask(() -> store.analyses().end(run.id, State.FAILED, failure.get().code(), ClientWords.of(failure.get())));
    }
  }

  /** Decisions may have come over from the revision before. */
  private boolean isBehind(String id) throws IOException {
    try {
      return !PatientStorage.ask(() -> store.choices().of(id)).followed();
    } catch (LedgerException removed) {
      return false;
    }
  }
}
