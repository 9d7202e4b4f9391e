package org.seamledger.http;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.seamledger.detail.Decision;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.Analysis;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Origin;
import org.seamledger.takeoff.UnusableFileException;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredFile;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException;
import org.seamledger.watch.Download;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs analyses in the background, a few at once, in the order in which they came. What storage says is what counts: an analysis that was
 * waiting or running when the process ended runs again at the next start.
 */
final class Jobs implements AutoCloseable {

  private static final String MEMORY = "The models need more memory than this server has; start it with a larger heap, or split the model.";
  private static final String FAULT = "The program failed at these models; its log says where. Please report it with the model.";
  private static final Logger LOG = LoggerFactory.getLogger(Jobs.class);
  private static final int STORAGE_PAUSE_MILLIS = 1000;
  private static final double STEP = 0.005;

  /** How far one analysis is. */
  record Progress(State state, String stage, double fraction) {
  }

  /** One analysis that waits or runs. */
  private static final class Job {
    final String id;
    final List<Consumer<Progress>> listeners = new CopyOnWriteArrayList<>();
    volatile Progress progress = new Progress(State.QUEUED, "Waiting for its turn", 0);
    volatile State stop;
    volatile Thread thread;
    /** Somebody decided meanwhile; guarded by the jobs. */
    boolean again;

    Job(String id) {
      this.id = id;
    }

    /** Tells who listens where it is another stage, or has moved by so much that people see it; it never moves back. */
    void goesOn(String stage, double fraction) {
      if (!progress.stage().equals(stage) || fraction >= progress.fraction() + STEP) {
        tell(new Progress(State.RUNNING, stage, Math.max(progress.fraction(), Math.min(1, fraction))));
      }
    }

    void tell(Progress p) {
      progress = p;
      listeners.forEach(l -> l.accept(p));
    }
  }

  private final Store store;
  private final Options options;
  private final Metrics metrics;
  private final Path scratch;
  private final DrawingBoard board;
  private final Map<String, Job> jobs = new ConcurrentHashMap<>();
  /** Why the result of an analysis could not follow its decisions; gone with the next attempt. */
  private final Map<String, String> troubles = new ConcurrentHashMap<>();
  private final ThreadPoolExecutor workers;
  private final ScheduledExecutorService clock;
  private final Download download;

  Jobs(Store store, Options options, Metrics metrics, Path scratch, DrawingBoard board, Download download, ScheduledExecutorService clock) {
    this.store = store;
    this.options = options;
    this.metrics = metrics;
    this.scratch = scratch;
    this.board = board;
    this.clock = clock;
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
      workers.execute(() -> follow(job));
    }
  }

  /** Why a result does not follow its decisions, where it could not. */
  Optional<String> trouble(String id) {
    return Optional.ofNullable(troubles.get(id));
  }

  private void follow(Job job) {
    long begun = System.nanoTime();
    State state = followAll(job);
    LOG.atInfo().addKeyValue("analysis", job.id).addKeyValue("state", state.word()).addKeyValue("seconds", seconds(begun)).log("decisions followed");
    job.tell(new Progress(state, state == State.DONE ? "Done" : "", state == State.DONE ? 1 : 0));
  }

  /** Works until the result follows the decisions, or can't; then the job is over. */
  private State followAll(Job job) {
    State state = State.DONE;
    do {
      try {
        followOnce(job);
      } catch (LedgerException | IOException | CancellationException e) {
        // Removed meanwhile, with its decisions; or the server ends.
        state = stateOf(job.id);
      }
    } while (!isOver(job));
    return state;
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

  private void followOnce(Job job) throws IOException {
    Choices.Standing standing = whenReachable(() -> store.choices().of(job.id));
    Analysis analysis = whenReachable(() -> store.analyses().get(job.id));
    Path result = scratch.resolve(job.id + ".decided.json");
    ScheduledFuture<?> alarm = clock.schedule(() -> interrupt(job, State.FAILED), options.limits().duration().toMillis(), TimeUnit.MILLISECONDS);
    try {
      job.thread = Thread.currentThread();
      troubles.remove(job.id);
      if (standing.followed() || job.stop != null) {
        return;
      }
      Optional<Analyzer.Drawings> drawings = standing.inForce().isEmpty() ? Optional.empty()
          : Optional.of(analyze(job, analysis, standing.inForce(), result));
      Thread.interrupted();
      job.thread = null;
      whenReachable(() -> {
        store.choices().complete(job.id, standing, drawings.map(d -> result), drawings.flatMap(d -> report(job.id, d)));
        return true;
      });
      drawings.ifPresent(d -> board.keep(job.id, d));
    } catch (UnreadableModelException | UnusableFileException e) {
      troubles.put(job.id, Names.withoutFolders(e.getMessage()));
    } catch (Exception | StackOverflowError | OutOfMemoryError e) {
      followFailed(job, e);
    } finally {
      job.thread = null;
      Thread.interrupted();
      alarm.cancel(false);
      discard(job, result);
    }
  }

  private void followFailed(Job job, Throwable e) {
    if (job.stop == State.FAILED) {
      troubles.put(job.id, tooLong());
    } else if (job.stop == null) {
      LOG.atError().addKeyValue("analysis", job.id).setCause(e).log("decisions not followed");
      troubles.put(job.id, e instanceof OutOfMemoryError ? MEMORY : FAULT);
    }
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

  void submit(Analysis analysis) {
    Job job = new Job(analysis.id());
    jobs.put(job.id, job);
    workers.execute(() -> run(job, analysis));
  }

  Progress progress(Analysis a) {
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
      interrupt(job, State.CANCELLED);
      job.tell(new Progress(State.CANCELLED, "", 0));
    }
    return !ended;
  }

  private static void interrupt(Job job, State why) {
    job.stop = why;
    Thread t = job.thread;
    if (t != null) {
      t.interrupt();
    }
  }

  private void run(Job job, Analysis analysis) {
    ScheduledFuture<?> alarm = null;
    Path result = scratch.resolve(job.id + ".json");
    long begun = System.nanoTime();
    try {
      job.thread = Thread.currentThread();
      if (job.stop != null || !whenReachable(() -> store.analyses().begin(job.id))) {
        return;
      }
      job.tell(new Progress(State.RUNNING, "Starting", 0));
      LOG.atInfo().addKeyValue("analysis", job.id).addKeyValue("files", analysis.files().size())
          .addKeyValue("bytes", analysis.files().stream().mapToLong(StoredFile::bytes).sum()).log("analysis begins");
      alarm = clock.schedule(() -> interrupt(job, State.FAILED), options.limits().duration().toMillis(), TimeUnit.MILLISECONDS);
      Optional<Origin> origin = store.watches().origin(job.id);
      if (origin.isPresent()) {
        fetch(job, origin.get(), analysis.files().get(0));
      }
      Analyzer.Drawings drawings = analyze(job, analysis, List.of(), result);
      // The result counts from here on; an interrupt that arrives now must not break the write.
      Thread.interrupted();
      job.thread = null;
      whenReachable(() -> {
        store.analyses().complete(job.id, result, report(job.id, drawings));
        return true;
      });
      board.keep(job.id, drawings);
    } catch (Exception | StackOverflowError | OutOfMemoryError e) {
      job.thread = null;
      Thread.interrupted();
      fail(job, e);
    } finally {
      job.thread = null;
      Thread.interrupted();
      if (alarm != null) {
        alarm.cancel(false);
      }
      finish(job, result, begun);
    }
  }

  private Analyzer.Drawings analyze(Job job, Analysis analysis, List<Decision> decisions, Path result) throws IOException {
    AnalysisFiles files = AnalysisFiles.of(analysis);
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(result), 1 << 16)) {
      Analyzer.Drawings drawings = options.analyzer().analyze(files.models(), files.system(), decisions, (stage, fraction) -> {
        if (job.stop != null) {
          throw new CancellationException();
        }
        job.goesOn(stage, fraction);
      }, out);
      if (job.stop != null) {
        throw new CancellationException();
      }
      return drawings;
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
      store.watches().arrived(job.id, download.fetch(server, job.id, origin));
      arrived = true;
    } finally {
      if (!arrived) {
        download.forget(job.id);
      }
    }
  }

  /** Owners of models on servers get the report for people too, which is kept for them with the result. */
  private Optional<String> report(String id, Analyzer.Drawings drawings) {
    return store.watches().origin(id).isPresent() ? drawings.report() : Optional.empty();
  }

  private void fail(Job job, Throwable e) {
    if (e instanceof UnreadableModelException) {
      end(job, "model/unreadable", e.getMessage());
    } else if (e instanceof ModelServerException failure && job.stop == null) {
      end(job, Conversations.code(failure), e.getMessage());
    } else if (e instanceof UnusableFileException) {
      end(job, "settings/unusable", Names.withoutFolders(e.getMessage()));
    } else if (job.stop == State.FAILED) {
      end(job, "analysis/too-long", tooLong());
    } else if (job.stop == null) {
      LOG.atError().addKeyValue("analysis", job.id).setCause(e).log("analysis failed");
      boolean isMemory = e instanceof OutOfMemoryError;
      end(job, isMemory ? "analysis/memory" : "internal", isMemory ? MEMORY : FAULT);
    }
  }

  private void end(Job job, String code, String problem) {
    try {
      whenReachable(() -> store.analyses().end(job.id, State.FAILED, code, problem));
    } catch (IOException | CancellationException e) {
      LOG.atWarn().addKeyValue("analysis", job.id).addKeyValue("code", code).setCause(e).log("end not stored");
    }
  }

  private interface StorageWork<T> {
    T run() throws IOException;
  }

  /** Does what must not get lost: where the database is away, waits until it is back, or until the server ends. */
  private static <T> T whenReachable(StorageWork<T> work) throws IOException {
    while (true) {
      try {
        return work.run();
      } catch (LedgerException e) {
        if (e.reason() != LedgerException.Reason.UNREACHABLE) {
          throw e;
        }
      }
      try {
        Thread.sleep(STORAGE_PAUSE_MILLIS);
      } catch (InterruptedException e) {
        throw new CancellationException("stopped while storage was away");
      }
    }
  }

  private String tooLong() {
    return "Stopped after " + options.limits().duration().toSeconds() + " s, the longest that one analysis may take on this server.";
  }

  private static void discard(Job job, Path result) {
    try {
      Files.deleteIfExists(result);
    } catch (IOException e) {
      LOG.atWarn().addKeyValue("analysis", job.id).setCause(e).log("scratch file left behind");
    }
  }

  private void finish(Job job, Path result, long begun) {
    discard(job, result);
    // Decisions may have come over from the revision before.
    State state = stateOf(job.id) == State.DONE ? followAll(job) : ended(job);
    double seconds = seconds(begun);
    metrics.analysis(state.word(), seconds);
    LOG.atInfo().addKeyValue("analysis", job.id).addKeyValue("state", state.word()).addKeyValue("seconds", seconds).log("analysis ended");
    job.tell(new Progress(state, state == State.DONE ? "Done" : "", state == State.DONE ? 1 : job.progress.fraction()));
  }

  /** Since a moment, in whole milliseconds. */
  private static double seconds(long begun) {
    return Math.round((System.nanoTime() - begun) / 1e6) / 1e3;
  }

  private State ended(Job job) {
    jobs.remove(job.id);
    return stateOf(job.id);
  }

  private State stateOf(String id) {
    try {
      return store.analyses().get(id).state();
    } catch (LedgerException e) {
      return e.reason() == LedgerException.Reason.NOT_FOUND ? State.CANCELLED : State.QUEUED;
    }
  }

  /** Stops everything; what ran runs again at the next start. */
  @Override
  public void close() throws InterruptedException {
    workers.getQueue().clear();
    // Why comes before the interrupt of the pool: work that is cut off must not count as a fault of the program.
    jobs.values().forEach(j -> interrupt(j, State.QUEUED));
    workers.shutdownNow();
    workers.awaitTermination(10, TimeUnit.SECONDS);
  }
}
