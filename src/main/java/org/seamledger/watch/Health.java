package org.seamledger.watch;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentSkipListMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What works by itself in the background, and whether it does. Whoever runs such a part tells here of every unexpected end, which is
 * logged here, once each, with its trace; and tells when the part did its work again, which clears it.
 */
public final class Health {

  /**
   * A part that does not work.
   *
   * @param part what people call it, such as {@code watch office}
   * @param since when it failed first since it last worked, in whole seconds
   * @param times how often it has failed since
   * @param stopped whether it has ended for good; else it is tried again by itself
   */
  public record Fault(String part, Instant since, int times, boolean stopped) {
  }

  private static final Logger LOG = LoggerFactory.getLogger(Health.class);

  private final Clock clock;
  private final Map<String, Fault> faults = new ConcurrentSkipListMap<>();

  public Health(Clock clock) {
    this.clock = clock;
  }

  /** The watch on a server, as a part. */
  static String watch(String server) {
    return "watch " + server;
  }

  /** A part failed and will be tried again. */
  public void failed(String part, Throwable cause) {
    note(part, false);
    LOG.atError().addKeyValue("part", part).setCause(cause).log("unexpected end, will be tried again");
  }

  /**
   * A part has ended and can't be started again.
   *
   * @param cause what ended it, or null where nothing says so
   */
  public void stopped(String part, Throwable cause) {
    note(part, true);
    LOG.atError().addKeyValue("part", part).setCause(cause).log("unexpected end, stopped for good");
  }

  /** A part failed, which is in the log already: as {@link #failed} without another entry there. */
  public void failedAsLogged(String part) {
    note(part, false);
  }

  private void note(String part, boolean stopped) {
    Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
    faults.merge(part, new Fault(part, now, 1, stopped), (old, fresh) -> new Fault(part, old.since, old.times + 1, stopped));
  }

  /** A part did its work. */
  public void works(String part) {
    if (faults.remove(part) != null) {
      LOG.atInfo().addKeyValue("part", part).log("works again");
    }
  }

  /** What does not work now, in alphabetical order; empty where all is well. */
  public List<Fault> faults() {
    return List.copyOf(faults.values());
  }

  /** The task, made so that it never throws: a timer silently drops what does. */
  public Runnable guarded(String part, Runnable task) {
    return () -> {
      try {
        task.run();
        works(part);
      } catch (Throwable e) {
        failed(part, e);
      }
    };
  }
}
