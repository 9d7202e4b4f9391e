package org.seamledger.http.job;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.run.Failure;
import org.seamledger.watch.Download;
import org.seamledger.watch.Health;
import org.seamledger.run.MemoryAlarm;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs analyses in the background, a few at once, in the order in which they came. What storage says is what counts: an analysis that was
 * waiting or running when the process ended runs again at the next start.
 */
public final class LocalJobs implements Jobs {

  /** The workers, as parts of the service's health. */
  static final String ANALYSES = "analyses";
  static final String RECALCULATION = "recalculation";

  private static final Logger LOG = LoggerFactory.getLogger(Jobs.class);

  private final Store store;
  private final Options options;
  private final Metrics metrics;
  private final Map<String, Job> jobs = new ConcurrentHashMap<>();
  private final FirstRun first;
  private final Recalculation following;
  private final ThreadPoolExecutor workers;
  private final Health health;

  public LocalJobs(Store store, Options options, Metrics metrics, Path scratch, DrawingBoard board, Download download,
      ScheduledExecutorService clock,
      Health health) {
    this.store = store;
    this.options = options;
    this.metrics = metrics;
    this.health = health;
    JobRuns runs = new JobRuns(store, options, scratch, clock, board, health);
    this.following = new Recalculation(store, runs);
    this.first = new FirstRun(store, runs, new Fetching(store, options.servers(), download));
    MemoryAlarm memory = new MemoryAlarm();
    clock.scheduleWithFixedDelay(health.guarded("clock", () -> {
      if (memory.rings()) {
        endYoungest();
      }
    }), 1, 1, TimeUnit.SECONDS);
    int n = options.limits().running();
    this.workers = new ThreadPoolExecutor(n, n, 0, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), r -> {
      Thread t = new Thread(r, "analysis");
      t.setDaemon(true);
      return t;
    });
  }

  private void endYoungest() {
    jobs.values().stream().filter(j -> j.begun() > 0).max(Comparator.comparingLong(Job::begun)).ifPresent(j -> {
      LOG.atWarn().addKeyValue("analysis", j.id).log("memory is short: analysis ended");
      j.interrupt(new Failure.OutOfMemory(Runtime.getRuntime().maxMemory() / (1 << 20), new OutOfMemoryError("nearly")));
    });
  }

  @Override
  public void resume() {
    store.analyses().unfinished().forEach(this::submit);
    store.choices().behind().forEach(this::follow);
  }

  /** {@inheritDoc} One run at a time works for an analysis, and one more is made after it where a decision came too late for it. */
  @Override
  public void follow(String id) {
    synchronized (jobs) {
      Job busy = jobs.get(id);
      if (busy != null) {
        busy.again = true;
        return;
      }
      Job job = new Job(id);
      jobs.put(id, job);
      workers.execute(() -> guarded(job, RECALCULATION, () -> follow(job)));
    }
  }

  @Override
  public Map<String, String> troubles(Set<String> ids) {
    return following.troubles(ids);
  }

  /** The last resort: what gets through all else must neither end the worker nor leave anybody waiting for the job. */
  private void guarded(Job job, String part, Runnable work) {
    try {
      work.run();
    } catch (Throwable e) {
      health.failed(part, e);
      Failure fault = new Failure.Fault(e);
      following.failed(job.id, fault);
      jobs.remove(job.id);
      first.cutOff(job, fault, () -> following.stateOf(job.id));
    }
  }

  private void follow(Job job) {
    long begun = System.nanoTime();
    State state = following.followAll(job, this::isOver);
    LOG.atInfo().addKeyValue("analysis", job.id).addKeyValue("state", state.word()).addKeyValue("seconds", Job.seconds(begun))
        .log("decisions followed");
    job.tell(JobStatus.of(state));
  }

  @Override
  public boolean hasRoom() {
    return workers.getQueue().size() < options.limits().waiting();
  }

  @Override
  public int waiting() {
    return workers.getQueue().size();
  }

  @Override
  public int running() {
    return workers.getActiveCount();
  }

  @Override
  public int workers() {
    return 1;
  }

  @Override
  public void submit(StoredAnalysis analysis) {
    Job job = new Job(analysis.id());
    jobs.put(job.id, job);
    workers.execute(() -> guarded(job, ANALYSES, () -> run(job, analysis)));
  }

  @Override
  public Map<String, JobStatus> statuses(List<StoredAnalysis> all) {
    return all.stream().collect(Collectors.toMap(StoredAnalysis::id, this::statusOf));
  }

  private JobStatus statusOf(StoredAnalysis a) {
    Job job = jobs.get(a.id());
    return job != null && !a.state().isFinal() ? job.status : JobStatus.of(a.state());
  }

  @Override
  public Optional<Runnable> listen(String id, Consumer<JobStatus> listener) {
    Job job = jobs.get(id);
    if (job == null) {
      return Optional.empty();
    }
    job.listeners.add(listener);
    listener.accept(job.status);
    return Optional.of(() -> job.listeners.remove(listener));
  }

  @Override
  public boolean cancel(String id) {
    Job job = jobs.get(id);
    Failure why = new Failure.Cancelled();
    boolean ended = !store.analyses().end(id, State.CANCELLED, why.code(), why.message());
    if (job != null && !ended) {
      job.interrupt(why);
      job.tell(JobStatus.of(State.CANCELLED));
    }
    return !ended;
  }

  /** True where nobody decided since the last run began, and then the job is over. */
  private boolean isOver(Job job) {
    synchronized (jobs) {
      if (job.again && job.stop().isEmpty()) {
        job.again = false;
        return false;
      }
      jobs.remove(job.id);
      return true;
    }
  }

  private void run(Job job, StoredAnalysis analysis) {
    long begun = System.nanoTime();
    try {
      first.run(job, analysis);
    } finally {
      job.isBeyondInterrupts();
      finish(job, begun);
    }
  }

  private void finish(Job job, long begun) {
    // Decisions may have come over from the revision before.
    State state = following.stateOf(job.id) == State.DONE ? following.followAll(job, this::isOver) : ended(job);
    double seconds = Job.seconds(begun);
    metrics.analysis(state.word(), seconds);
    LOG.atInfo().addKeyValue("analysis", job.id).addKeyValue("state", state.word()).addKeyValue("seconds", seconds).log("analysis ended");
    job.tell(new JobStatus(state, state == State.DONE ? "Done" : "", state == State.DONE ? 1 : job.status.fraction()));
  }

  private State ended(Job job) {
    jobs.remove(job.id);
    return following.stateOf(job.id);
  }

  private void pause() {
    try {
      store.analyses().pause();
    } catch (LedgerException e) {
      // They count as cut off, then, which costs them one of their starts.
      LOG.atWarn().setCause(e).log("end in good order not stored");
    }
  }

  @Override
  public void close() throws InterruptedException {
    workers.getQueue().clear();
    // Why comes before the interrupt of the pool: work that is cut off must not count as a fault of the program.
    jobs.values().forEach(j -> j.interrupt(new Failure.Cancelled()));
    workers.shutdownNow();
    if (workers.awaitTermination(10, TimeUnit.SECONDS)) {
      pause();
    }
  }
}
