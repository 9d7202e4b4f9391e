package org.seamledger.portfolio;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;

/**
 * Has each model of a portfolio analysed that has no entry yet, on several threads. A model waits until its share of the memory is free, by
 * its size; one that ran out of memory beside others, or at which the process died, is taken again by itself, after the others.
 */
public final class PortfolioRun {

  /** Deaths of the process at one model until that is taken for the reason. */
  static final int MOST_DEATHS = 2;
  private static final int MIB = 1 << 20;
  /** What one analysis takes whatever its model, and for each byte of it. */
  private static final int LEAST_MIB = 96;
  private static final int BYTES_EACH = 10;

  private final ModelRun runner;
  private final EntryStore store;
  private final Consumer<String> say;
  private final boolean again;
  private final int threads;
  private final int roomMiB;
  private final Semaphore room;
  private final ConcurrentLinkedQueue<PortfolioModel> alone = new ConcurrentLinkedQueue<>();
  private final AtomicReference<Throwable> fatal = new AtomicReference<>();
  private final AtomicInteger kept = new AtomicInteger();

  /**
   * @param again whether models without a result are analysed again even where that would say the same
   * @param threads most models at a time
   * @param memory bytes that all of them together may take
   * @param say a line about how far it is, now and then
   */
  public PortfolioRun(ModelRun runner, EntryStore store, boolean again, int threads, long memory, Consumer<String> say) {
    this.runner = runner;
    this.store = store;
    this.again = again;
    this.threads = threads;
    this.roomMiB = (int) Math.max(1, Math.min(Integer.MAX_VALUE, memory / MIB));
    this.room = new Semaphore(roomMiB, true);
    this.say = say;
  }

  /**
   * Runs until every model has its entry.
   *
   * @return number of models whose entry was there before
   * @throws org.seamledger.run.FailureException where rules or roof system can't be used: no model has a result then
   */
  public int run(List<PortfolioModel> models) throws IOException, InterruptedException {
    AtomicInteger next = new AtomicInteger();
    ModelCount count = new ModelCount(models.size(), say);
    List<Thread> workers = new ArrayList<>();
    for (int i = 0; i < Math.min(threads, models.size()); i++) {
      Thread worker = new Thread(() -> work(models, next, count), "portfolio " + i);
      worker.setDaemon(true);
      worker.start();
      workers.add(worker);
    }
    for (Thread worker : workers) {
      worker.join();
    }
    List<PortfolioModel> last = alone.stream().sorted(Comparator.comparing(PortfolioModel::name)).toList();
    for (PortfolioModel model : last) {
      stopIfFatal();
      guarded(() -> byItself(model));
    }
    stopIfFatal();
    return kept.get();
  }

  private interface Step {
    void run() throws IOException, InterruptedException;
  }

  private void guarded(Step step) {
    try {
      step.run();
    } catch (Throwable e) {
      fatal.compareAndSet(null, e);
    }
  }

  private void stopIfFatal() throws IOException {
    Throwable e = fatal.get();
    if (e instanceof IOException io) {
      throw io;
    }
    if (e instanceof RuntimeException unchecked) {
      throw unchecked;
    }
    if (e != null) {
      throw new IllegalStateException(e);
    }
  }

  private void work(List<PortfolioModel> models, AtomicInteger next, ModelCount count) {
    for (int i = next.getAndIncrement(); i < models.size() && fatal.get() == null; i = next.getAndIncrement()) {
      PortfolioModel model = models.get(i);
      guarded(() -> amongOthers(model));
      count.add();
    }
  }

  private void amongOthers(PortfolioModel model) throws IOException, InterruptedException {
    String file = model.sha256();
    if (!file.isEmpty() && file.equals(store.known(model.name(), runner.basis(), again))) {
      kept.incrementAndGet();
      return;
    }
    if (store.deaths(model.name()) > 0) {
      alone.add(model);
      return;
    }
    int mib = share(model);
    room.acquire(mib);
    try {
      ModelEntry entry = entry(model, file);
      if (entry.state() == ModelState.TOO_LARGE && threads > 1) {
        alone.add(model);
      } else {
        store.put(entry);
      }
    } finally {
      room.release(mib);
    }
  }

  private int share(PortfolioModel model) {
    long mib = LEAST_MIB + model.roughBytes() * BYTES_EACH / MIB;
    return (int) Math.min(roomMiB, mib);
  }

  private void byItself(PortfolioModel model) throws IOException, InterruptedException {
    String file = model.sha256();
    if (again || store.deaths(model.name()) < MOST_DEATHS) {
      store.put(entry(model, file));
      return;
    }
    store.put(runner.gaveUp(model, file));
    store.end(model.name());
  }

  private ModelEntry entry(PortfolioModel model, String file) throws IOException, InterruptedException {
    store.begin(model.name());
    ModelEntry entry = runner.run(model, file);
    store.end(model.name());
    return entry;
  }
}
