package org.seamledger.http.job;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Queue;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.queue.Tickets;
import org.seamledger.run.Failure;
import org.seamledger.watch.Health;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Has workers run analyses: other processes, on this machine or elsewhere, that have the database in common with this one. Nothing is known
 * here that the database does not know, so that any of several servers can be asked.
 */
public final class QueuedJobs implements Jobs {

  private static final Logger LOG = LoggerFactory.getLogger(Jobs.class);
  private static final int LOOK_MILLIS = 500;
  private static final int SEEN_SECONDS = 5;
  private static final String WAITING = "Waiting for its turn";
  private static final String NOBODY = "Waiting: no worker is running";

  private final Store store;
  private final Queue queue;
  private final Options options;
  private final Tickets tickets;
  private final Map<String, List<Listener>> listeners = new ConcurrentHashMap<>();
  private volatile int workers;

  /** Who hears of an analysis, and what was said last. */
  private static final class Listener {
    private final Consumer<JobStatus> to;
    private JobStatus last;

    Listener(Consumer<JobStatus> to) {
      this.to = to;
    }

    synchronized void tell(JobStatus s) {
      if (!s.equals(last)) {
        last = s;
        to.accept(s);
      }
    }
  }

  public QueuedJobs(Store store, Options options, ScheduledExecutorService clock, Health health) {
    this.store = store;
    this.queue = store.queue();
    this.options = options;
    this.tickets = new Tickets(store);
    look();
    clock.scheduleWithFixedDelay(health.guarded("progress", this::tellAll), LOOK_MILLIS, LOOK_MILLIS, TimeUnit.MILLISECONDS);
    clock.scheduleWithFixedDelay(health.guarded("presence", this::look), SEEN_SECONDS, SEEN_SECONDS, TimeUnit.SECONDS);
  }

  /** Says that this process is alive, and sees who else is. */
  private void look() {
    try {
      store.processes().seen(store.here());
      workers = (int) store.processes().alive().stream().filter(m -> m.work().equals("work")).count();
    } catch (LedgerException e) {
      LOG.debug("database", e);
    }
  }

  /** {@inheritDoc} The workers see to that. */
  @Override
  public void resume() {
    // Nothing is this process's own.
  }

  @Override
  public void submit(StoredAnalysis analysis) {
    tickets.analysis(analysis.id());
  }

  @Override
  public void follow(String id) {
    tickets.follow(id);
  }

  @Override
  public Map<String, String> troubles(Set<String> ids) {
    Map<String, String> found = new HashMap<>();
    queue.standing(ids).forEach((id, s) -> s.trouble().ifPresent(t -> found.put(id, t)));
    return found;
  }

  @Override
  public boolean hasRoom() {
    return waiting() < options.limits().waiting();
  }

  @Override
  public int waiting() {
    return store.analyses().counts().get(State.QUEUED.word()).intValue();
  }

  @Override
  public int running() {
    return store.analyses().counts().get(State.RUNNING.word()).intValue();
  }

  @Override
  public int workers() {
    return workers;
  }

  @Override
  public Map<String, JobStatus> statuses(List<StoredAnalysis> all) {
    Map<String, Queue.Standing> now =
        queue.standing(all.stream().filter(a -> !a.state().isFinal()).map(StoredAnalysis::id).collect(Collectors.toSet()));
    return all.stream().collect(Collectors.toMap(StoredAnalysis::id,
        a -> now.containsKey(a.id()) ? status(now.get(a.id()), true) : JobStatus.of(a.state())));
  }

  private JobStatus status(Queue.Standing s, boolean followed) {
    if (s.state() == State.QUEUED) {
      return new JobStatus(State.QUEUED, workers > 0 ? WAITING : NOBODY, 0);
    }
    return s.state() == State.RUNNING || !followed ? new JobStatus(State.RUNNING, s.stage(), s.fraction()) : JobStatus.of(s.state());
  }

  /** {@inheritDoc} A result that does not follow its decisions yet has not ended. */
  @Override
  public Optional<Runnable> listen(String id, Consumer<JobStatus> listener) {
    Optional<JobStatus> now = now(id, queue.standing(Set.of(id)).get(id));
    if (now.isEmpty() || now.get().state().isFinal()) {
      return Optional.empty();
    }
    if (now.get().state() == State.QUEUED) {
      // Whoever waits for it makes sure that somebody takes it.
      tickets.analysis(id);
    }
    Listener l = new Listener(listener);
    listeners.computeIfAbsent(id, k -> new CopyOnWriteArrayList<>()).add(l);
    l.tell(now.get());
    return Optional.of(() -> forget(id, l));
  }

  private void forget(String id, Listener l) {
    listeners.computeIfPresent(id, (k, all) -> {
      all.remove(l);
      return all.isEmpty() ? null : all;
    });
  }

  private Optional<JobStatus> now(String id, Queue.Standing s) {
    return Optional.ofNullable(s).map(found -> status(found, found.state() != State.DONE || found.trouble().isPresent() || isFollowed(id)));
  }

  private boolean isFollowed(String id) {
    try {
      return store.choices().of(id).followed();
    } catch (LedgerException e) {
      return true;
    }
  }

  private void tellAll() {
    Set<String> heard = Set.copyOf(listeners.keySet());
    if (heard.isEmpty()) {
      return;
    }
    try {
      Map<String, Queue.Standing> all = queue.standing(heard);
      heard.forEach(id -> tell(id, now(id, all.get(id)).orElse(JobStatus.of(State.CANCELLED))));
    } catch (LedgerException e) {
      LOG.debug("progress not known", e);
    }
  }

  private void tell(String id, JobStatus s) {
    for (Listener l : listeners.getOrDefault(id, List.of())) {
      try {
        l.tell(s);
      } catch (RuntimeException e) {
        forget(id, l);
        LOG.atWarn().addKeyValue("analysis", id).setCause(e).log("progress not told");
      }
    }
    if (s.state().isFinal()) {
      listeners.remove(id);
    }
  }

  /** {@inheritDoc} Its worker sees that it is over when it next tells how far it is. */
  @Override
  public boolean cancel(String id) {
    Failure why = new Failure.Cancelled();
    return store.analyses().end(id, State.CANCELLED, why.code(), why.message());
  }

  @Override
  public void close() {
    // What workers do goes on.
  }
}
