package org.seamledger.watch;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.random.RandomGenerator;
import org.seamledger.ledger.Store;

/** Watches servers until it is closed, each on a thread of its own. */
public final class Watching implements AutoCloseable {

  /** The usual pause between two rounds. */
  public static final Duration EVERY = Duration.ofMinutes(1);
  /** The longest pause, where servers don't answer. */
  public static final Duration LONGEST = Duration.ofMinutes(15);
  /** The largest model, in bytes. */
  public static final long MOST_BYTES = 4L << 30;

  private static final int PATIENCE_SECONDS = 10;

  /**
   * What a watch works with.
   *
   * @param every the usual pause between two rounds
   * @param journal hears what happens, on the watching threads
   * @param clock when things happen
   * @param health hears of faults in the program
   * @param turn whether it is this process's turn to watch a server, of several that could
   */
  public record Setting(Servers servers, WatchTarget wanted, Store store, Download download, Duration every, Analyst analyst,
      Consumer<Event> journal, Clock clock, Health health, Predicate<String> turn) {

    /** For a process that watches alone. */
    public Setting(Servers servers, WatchTarget wanted, Store store, Download download, Duration every, Analyst analyst,
        Consumer<Event> journal, Clock clock, Health health) {
      this(servers, wanted, store, download, every, analyst, journal, clock, health, server -> true);
    }

    /** The same for one of several processes. */
    public Setting inTurn(Predicate<String> mine) {
      return new Setting(servers, wanted, store, download, every, analyst, journal, clock, health, mine);
    }

    void tell(String what, String server, String project, int revision, String detail) {
      journal.accept(new Event(clock.instant(), what, server, project, revision, detail));
    }
  }

  private final Setting setting;
  private final Map<String, Thread> threads = new TreeMap<>();
  private final Map<String, WakeUp> alarms = new TreeMap<>();
  private final BlockingQueue<String> ended = new LinkedBlockingQueue<>();
  private volatile boolean closing;

  public Watching(Setting setting) {
    this.setting = setting;
  }

  /**
   * One round of each of these servers, one after another; returns the worst that happened. A fault of the program at one server is
   * thrown when the others are done.
   */
  public RoundOutcome once(List<String> names) throws InterruptedException {
    RoundOutcome worst = RoundOutcome.FINE;
    FirstFault fault = new FirstFault();
    for (String name : names) {
      try {
        worst = worst.worse(watch(name).round());
      } catch (RuntimeException | Error e) {
        fault.add(e);
      }
    }
    fault.rethrow();
    return worst;
  }

  private ServerWatch watch(String name) {
    return new ServerWatch(name, setting);
  }

  /** Begins to watch. */
  public void start(List<String> names) {
    for (String name : names) {
      WakeUp alarm = new WakeUp();
      ServerWatch watch = watch(name);
      Rounds rounds = new Rounds(name, watch::round, new Backoff(setting.every, longest(), RandomGenerator.getDefault()), alarm, setting);
      Thread thread = new Thread(() -> run(rounds), "watch-" + name);
      thread.setDaemon(true);
      alarms.put(name, alarm);
      threads.put(name, thread);
      start(thread);
    }
  }

  private static void start(Thread thread) {
    try {
      thread.start();
    } catch (OutOfMemoryError e) {
      // What is short is threads, not memory for a model.
      throw new IllegalStateException("the thread " + thread.getName() + " can't be started", e);
    }
  }

  private Duration longest() {
    return setting.every.compareTo(LONGEST) > 0 ? setting.every : LONGEST;
  }

  /** Whatever ends a watch that nobody closed is told: one that is dead must not look like one that has nothing to do. */
  private void run(Rounds rounds) {
    Throwable cause = null;
    try {
      rounds.run();
    } catch (Throwable e) {
      cause = e;
    }
    if (!closing) {
      ended.add(rounds.server());
      setting.health.stopped(Health.watch(rounds.server()), cause);
    }
  }

  /** Waits until a watch ends without being closed, which it never should; returns its server. */
  public String awaitEnd() throws InterruptedException {
    return ended.take();
  }

  /** Begins the next round of a server now. */
  public void wake(String name) {
    WakeUp alarm = alarms.get(name);
    if (alarm != null) {
      alarm.wake();
    }
  }

  /** Ends the watch. What was being done goes on at the next start. */
  @Override
  public void close() {
    closing = true;
    threads.values().forEach(Thread::interrupt);
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    try {
      for (Thread thread : threads.values()) {
        thread.join(Math.max(1, TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime())));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
