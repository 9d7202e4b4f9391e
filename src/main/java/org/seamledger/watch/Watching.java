package org.seamledger.watch;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import org.seamledger.ledger.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Watches servers until it is closed, each on a thread of its own. */
public final class Watching implements AutoCloseable {

  /** The usual pause between two rounds. */
  public static final Duration EVERY = Duration.ofMinutes(1);
  /** The longest pause, where servers don't answer. */
  public static final Duration LONGEST = Duration.ofMinutes(15);
  /** The largest model, in bytes. */
  public static final long MOST_BYTES = 4L << 30;

  private static final Logger LOG = LoggerFactory.getLogger(Watching.class);
  private static final int PATIENCE_SECONDS = 10;

  /**
   * What a watch works with.
   *
   * @param every the usual pause between two rounds
   * @param journal hears what happens, on the watching threads
   */
  public record Setting(Servers servers, Wanted wanted, Store store, Download download, Duration every, Analyst analyst, Consumer<Event> journal) {
  }

  private final Setting setting;
  private final Map<String, Thread> threads = new TreeMap<>();
  private final Map<String, Alarm> alarms = new TreeMap<>();

  public Watching(Setting setting) {
    this.setting = setting;
  }

  /** One round of each of these servers, one after another; returns the worst that happened. */
  public Outcome once(List<String> names) throws InterruptedException {
    Outcome worst = Outcome.FINE;
    for (String name : names) {
      worst = worst.worse(watch(name).round());
    }
    return worst;
  }

  private ServerWatch watch(String name) {
    return new ServerWatch(name, setting.servers, setting.wanted, setting.store, setting.analyst, setting.download, setting.journal);
  }

  /** Begins to watch. */
  public void start(List<String> names) {
    for (String name : names) {
      Alarm alarm = new Alarm();
      Pace pace = new Pace(setting.every, longest(), RandomGenerator.getDefault());
      Thread thread = new Thread(() -> rounds(watch(name)::round, pace, alarm, name, setting.journal), "watch-" + name);
      thread.setDaemon(true);
      alarms.put(name, alarm);
      threads.put(name, thread);
      thread.start();
    }
  }

  private Duration longest() {
    return setting.every.compareTo(LONGEST) > 0 ? setting.every : LONGEST;
  }

  /** Begins the next round of a server now. */
  public void wake(String name) {
    Alarm alarm = alarms.get(name);
    if (alarm != null) {
      alarm.wake();
    }
  }

  /** One round of a server. */
  @FunctionalInterface
  interface Round {
    Outcome run() throws InterruptedException;
  }

  /** Rounds with pauses between them, until the thread is interrupted. A fault ends a round, never the watch. */
  static void rounds(Round round, Pace pace, Sleeper sleeper, String name, Consumer<Event> journal) {
    try {
      while (true) {
        Outcome outcome = guarded(round, name);
        Duration pause = pace.after(outcome);
        if (outcome != Outcome.FINE) {
          journal.accept(new Event("pause", name, "", 0, "next round in " + pause.toMillis() / 1000 + " s"));
        }
        sleeper.sleep(pause);
      }
    } catch (InterruptedException e) {
      journal.accept(new Event("stopped", name, "", 0, ""));
    }
  }

  private static Outcome guarded(Round round, String name) throws InterruptedException {
    try {
      return round.run();
    } catch (RuntimeException e) {
      LOG.error("watch failed server={}", name, e);
      return Outcome.TROUBLE;
    }
  }

  /** Ends the watch. What was being done goes on at the next start. */
  @Override
  public void close() {
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
