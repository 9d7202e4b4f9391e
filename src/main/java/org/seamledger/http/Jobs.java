package org.seamledger.http;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.Origin;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException;
import org.seamledger.takeoff.UnusableFileException;
import org.seamledger.watch.Download;
import org.seamledger.watch.Health;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs analyses in the background, a few at once, in the order in which they came. What storage says is what counts: an analysis that was
 * waiting or running when the process ended runs again at the next start.
 */
final class Jobs {

  /** The workers, as parts of the service's health. */
  static final String ANALYSES = "analyses";
  static final String RECALCULATION = "recalculation";

  private static final Logger LOG = LoggerFactory.getLogger(Jobs.class);

  /** How far one analysis is. */
  record Progress(State state, String stage, double fraction) {
  }

  private final Store store;
  private final Options options;
  private final Metrics metrics;
  private final Path scratch;
  private final DrawingBoard board;
  private final Map<String, Job> jobs = new ConcurrentHashMap<>();
  private final Runs runs;
  private final Recalculation following;
  private final ThreadPoolExecutor workers;
  private final Download download;
  private final Health health;

  Jobs(Store store, Options options, Metrics metrics, Path scratch, DrawingBoard board, Download download, ScheduledExecutorService clock,
      Health health) {
    this.store = store;
    this.options = options;
    this.metrics = metrics;
    this.scratch = scratch;
    this.board = board;
    this.health = health;
    this.runs = new Runs(store, options, clock, health);
    this.following = new Recalculation(store, runs, board, scratch, health);
    this.download = download;
    int n = options.limits().running();
    this.workers = new ThreadPoolExecutor(n, n, 0, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), r -> {
      Thread t = new Thread(r, "analysis");
      t.setDaemon(true);
      return t;
    });
  }

  /** Takes up what an earlier process left. */
  void resume() {
    store.analyses().unfinished().forEach(this::submit);
    store.choices().behind().forEach(this::follow);
  }

  /**
   * Has the result of an analysis computed again with the decisions in force. However many people decide meanwhile, one run at a time works
   * for an analysis, and one more is made after it where a decision came too late for it.
   */
  void follow(String id) {
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

  /** Why a result does not follow its decisions, where it could not. */
  Optional<String> trouble(String id) {
    return following.trouble(id);
  }

  /** The last resort: what gets through all else must neither end the worker nor leave anybody waiting for the job. */
  private void guarded(Job job, String part, Runnable work) {
    try {
      work.run();
    } catch (Throwable e) {
      health.failed(part, e);
      following.cutOff(job.id);
      jobs.remove(job.id);
      try {
        store.analyses().end(job.id, State.FAILED, "internal", Runs.FAULT);
        State state = runs.stateOf(job.id);
        job.tell(new Progress(state.isFinal() ? state : State.FAILED, "", 0));
      } catch (RuntimeException | Error second) {
        LOG.atError().addKeyValue("analysis", job.id).setCause(second).log("end not stored");
      }
    }
  }

  private void follow(Job job) {
    long begun = System.nanoTime();
    State state = following.followAll(job, this::isOver);
    LOG.atInfo().addKeyValue("analysis", job.id).addKeyValue("state", state.word()).addKeyValue("seconds", Runs.seconds(begun))
        .log("decisions followed");
    job.tell(new Progress(state, state == State.DONE ? "Done" : "", state == State.DONE ? 1 : 0));
  }

  /** Whether one more may wait. */
  boolean hasRoom() {
    return workers.getQueue().size() < options.limits().waiting();
  }

  int waiting() {
    return workers.getQueue().size();
  }

  int running() {
    return workers.getActiveCount();
  }

  void submit(StoredAnalysis analysis) {
    Job job = new Job(analysis.id());
    jobs.put(job.id, job);
    workers.execute(() -> guarded(job, ANALYSES, () -> run(job, analysis)));
  }

  Progress progress(StoredAnalysis a) {
    Job job = jobs.get(a.id());
    if (job != null && !a.state().isFinal()) {
      return job.progress;
    }
    return new Progress(a.state(), a.state() == State.DONE ? "Done" : "", a.state() == State.DONE ? 1 : 0);
  }

  /** Hears every step of an analysis from now on; empty where it has ended. */
  Optional<Runnable> listen(String id, Consumer<Progress> listener) {
    Job job = jobs.get(id);
    if (job == null) {
      return Optional.empty();
    }
    job.listeners.add(listener);
    listener.accept(job.progress);
    return Optional.of(() -> job.listeners.remove(listener));
  }

  /** Stops an analysis; false where it has ended. */
  boolean cancel(String id) {
    Job job = jobs.get(id);
    boolean ended = !store.analyses().end(id, State.CANCELLED, "cancelled", "Cancelled on request.");
    if (job != null && !ended) {
      job.interrupt(State.CANCELLED);
      job.tell(new Progress(State.CANCELLED, "", 0));
    }
    return !ended;
  }

  /** True where nobody decided since the last run began, and then the job is over. */
  private boolean isOver(Job job) {
    synchronized (jobs) {
      if (job.again && job.stop == null) {
        job.again = false;
        return false;
      }
      jobs.remove(job.id);
      return true;
    }
  }

  private void run(Job job, StoredAnalysis analysis) {
    ScheduledFuture<?> alarm = null;
    Path result = scratch.resolve(job.id + ".json");
    long begun = System.nanoTime();
    try {
      job.isOnThisThread();
      if (job.stop != null || !Runs.whenReachable(() -> store.analyses().begin(job.id))) {
        return;
      }
      job.tell(new Progress(State.RUNNING, "Starting", 0));
      LOG.atInfo().addKeyValue("analysis", job.id).addKeyValue("files", analysis.files().size())
          .addKeyValue("bytes", analysis.files().stream().mapToLong(StoredFile::bytes).sum()).log("analysis begins");
      alarm = runs.alarm(job);
      for (StoredFile file : analysis.files()) {
        if (file.origin().isPresent()) {
          fetch(job, file.origin().get(), file);
        }
      }
      Analyzer.Drawings drawings = runs.analyze(job, analysis, List.of(), result);
      job.isBeyondInterrupts();
      Runs.whenReachable(() -> {
        store.analyses().complete(job.id, result, runs.report(job.id, drawings));
        return true;
      });
      board.keep(job.id, drawings);
      health.works(ANALYSES);
    } catch (Exception | Error e) {
      job.isBeyondInterrupts();
      fail(job, e);
    } finally {
      job.isBeyondInterrupts();
      if (alarm != null) {
        alarm.cancel(false);
      }
      finish(job, result, begun);
    }
  }

  /** Brings a model from its server, unless a watch or an earlier run did. */
  private void fetch(Job job, Origin origin, StoredFile file) {
    if (Download.has(file)) {
      return;
    }
    job.tell(new Progress(State.RUNNING, "Fetching the model from " + origin.server(), 0));
    boolean arrived = false;
    try (ModelServer server = options.servers().connect(origin.server())) {
      store.watches().arrived(job.id, download.fetch(server, file, origin));
      arrived = true;
    } finally {
      if (!arrived) {
        download.forget(file);
      }
    }
  }

  private void fail(Job job, Throwable e) {
    if (e instanceof UnreadableModelException) {
      health.works(ANALYSES);
      end(job, "model/unreadable", e.getMessage());
    } else if (e instanceof ModelServerException failure && job.stop == null) {
      end(job, ServerConnections.code(failure), e.getMessage());
    } else if (e instanceof UnusableFileException) {
      end(job, "settings/unusable", Names.withoutFolders(e.getMessage()));
    } else if (job.stop == State.FAILED) {
      end(job, "analysis/too-long", runs.tooLong());
    } else if (job.stop == null) {
      LOG.atError().addKeyValue("analysis", job.id).setCause(e).log("analysis failed");
      boolean isMemory = e instanceof OutOfMemoryError;
      if (!isMemory) {
        health.failedAsLogged(ANALYSES);
      }
      end(job, isMemory ? "analysis/memory" : "internal", isMemory ? Runs.MEMORY : Runs.FAULT);
    }
  }

  private void end(Job job, String code, String problem) {
    try {
      Runs.whenReachable(() -> store.analyses().end(job.id, State.FAILED, code, problem));
    } catch (IOException | CancellationException e) {
      LOG.atWarn().addKeyValue("analysis", job.id).addKeyValue("code", code).setCause(e).log("end not stored");
    }
  }

  private void finish(Job job, Path result, long begun) {
    Runs.discard(job, result);
    // Decisions may have come over from the revision before.
    State state = runs.stateOf(job.id) == State.DONE ? following.followAll(job, this::isOver) : ended(job);
    double seconds = Runs.seconds(begun);
    metrics.analysis(state.word(), seconds);
    LOG.atInfo().addKeyValue("analysis", job.id).addKeyValue("state", state.word()).addKeyValue("seconds", seconds).log("analysis ended");
    job.tell(new Progress(state, state == State.DONE ? "Done" : "", state == State.DONE ? 1 : job.progress.fraction()));
  }

  private State ended(Job job) {
    jobs.remove(job.id);
    return runs.stateOf(job.id);
  }

  /** Stops everything; what ran runs again at the next start. */
  void close() throws InterruptedException {
    workers.getQueue().clear();
    // Why comes before the interrupt of the pool: work that is cut off must not count as a fault of the program.
    jobs.values().forEach(j -> j.interrupt(State.QUEUED));
    workers.shutdownNow();
    workers.awaitTermination(10, TimeUnit.SECONDS);
  }
}
