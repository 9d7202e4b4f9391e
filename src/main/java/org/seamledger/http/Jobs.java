package org.seamledger.http;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
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
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.Analysis;
import org.seamledger.ledger.LedgerException;
import org.seamledger.takeoff.UnusableFileException;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredFile;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs analyses in the background, a few at once, in the order in which they came. What storage says is what counts: an analysis that was
 * waiting or running when the process ended runs again at the next start.
 */
final class Jobs implements AutoCloseable {

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
  private final Map<String, Job> jobs = new ConcurrentHashMap<>();
  private final ThreadPoolExecutor workers;
  private final ScheduledExecutorService clock;

  Jobs(Store store, Options options, Metrics metrics, Path scratch, ScheduledExecutorService clock) {
    this.store = store;
    this.options = options;
    this.metrics = metrics;
    this.scratch = scratch;
    this.clock = clock;
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
      if (job.stop != null || !stored(() -> store.analyses().begin(job.id))) {
        return;
      }
      job.tell(new Progress(State.RUNNING, "Starting", 0));
      alarm = clock.schedule(() -> interrupt(job, State.FAILED), options.limits().duration().toMillis(), TimeUnit.MILLISECONDS);
      analyze(job, analysis, result);
      // The result counts from here on; an interrupt that arrives now must not break the write.
      Thread.interrupted();
      job.thread = null;
      stored(() -> {
        store.analyses().complete(job.id, result);
        return true;
      });
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

  private void analyze(Job job, Analysis analysis, Path result) throws IOException {
    List<Analyzer.Model> models = analysis.files().stream().filter(f -> f.role().equals("model"))
        .map(f -> new Analyzer.Model(Path.of(f.path()), f.name())).toList();
    Optional<Path> system = analysis.files().stream().filter(f -> f.role().equals("system")).map(StoredFile::path).map(Path::of).findFirst();
    for (Analyzer.Model m : models) {
      if (!Files.isReadable(m.path())) {
        throw new UnreadableModelException(m.name(), 0, 0, "a file that can be read", "none: it was moved or removed");
      }
    }
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(result), 1 << 16)) {
      options.analyzer().analyze(models, system, (stage, fraction) -> {
        if (job.stop != null) {
          throw new CancellationException();
        }
        job.goesOn(stage, fraction);
      }, out);
    }
    if (job.stop != null) {
      throw new CancellationException();
    }
  }

  private void fail(Job job, Throwable e) {
    if (e instanceof UnreadableModelException) {
      end(job, "model/unreadable", e.getMessage());
    } else if (e instanceof UnusableFileException) {
      end(job, "settings/unusable", e.getMessage());
    } else if (job.stop == State.FAILED) {
      end(job, "analysis/too-long",
          "Stopped after " + options.limits().duration().toSeconds() + " s, the longest that one analysis may take on this server.");
    } else if (job.stop == null) {
      LOG.error("analysis failed id={}", job.id, e);
      String memory = "The models need more memory than this server has; start it with a larger heap, or split the model.";
      String fault = "The program failed at these models; its log says where. Please report it with the model.";
      boolean isMemory = e instanceof OutOfMemoryError;
      end(job, isMemory ? "analysis/memory" : "internal", isMemory ? memory : fault);
    }
  }

  private void end(Job job, String code, String problem) {
    try {
      stored(() -> store.analyses().end(job.id, State.FAILED, code, problem));
    } catch (IOException | CancellationException e) {
      LOG.warn("not stored id={} code={}", job.id, code, e);
    }
  }

  private interface Write {
    boolean run() throws IOException;
  }

  /** Writes what must not get lost: where the database is away, waits until it is back, or until the server ends. */
  private static boolean stored(Write write) throws IOException {
    while (true) {
      try {
        return write.run();
      } catch (LedgerException e) {
        if (e.reason() != LedgerException.Reason.UNREACHABLE) {
          throw e;
        }
        LOG.warn("analysis waits for storage: {}", e.getMessage());
      }
      try {
        Thread.sleep(STORAGE_PAUSE_MILLIS);
      } catch (InterruptedException e) {
        throw new CancellationException("stopped while storage was away");
      }
    }
  }

  private void finish(Job job, Path result, long begun) {
    try {
      Files.deleteIfExists(result);
    } catch (IOException e) {
      LOG.warn("left behind id={}", job.id, e);
    }
    jobs.remove(job.id);
    State state = stateOf(job.id);
    double seconds = (System.nanoTime() - begun) / 1e9;
    metrics.analysis(state.word(), seconds);
    LOG.info("analysis id={} state={} seconds={}", job.id, state.word(), String.format(Locale.ROOT, "%.3f", seconds));
    job.tell(new Progress(state, state == State.DONE ? "Done" : "", state == State.DONE ? 1 : job.progress.fraction()));
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
    workers.shutdownNow();
    jobs.values().forEach(j -> interrupt(j, State.QUEUED));
    workers.awaitTermination(10, TimeUnit.SECONDS);
  }
}
