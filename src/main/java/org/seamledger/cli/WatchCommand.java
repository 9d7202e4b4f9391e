package org.seamledger.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.seamledger.finding.Severity;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Store;
import org.seamledger.progress.Progress;
import org.seamledger.run.Result;
import org.seamledger.run.TakeoffResult;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.watch.Download;
import org.seamledger.watch.Event;
import org.seamledger.watch.Health;
import org.seamledger.watch.LocalAnalyst;
import org.seamledger.watch.RoundOutcome;
import org.seamledger.watch.Servers;
import org.seamledger.watch.WatchFilter;
import org.seamledger.watch.WatchTarget;
import org.seamledger.watch.Watching;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "watch", description = "Watch projects on servers of models: analyse each new revision and leave the answer with it.",
    footer = {"", "A watch begins with the newest revision of a project. What happens is written to standard error, one line an event, with"
        + " the time in UTC.",
        "Exit status with --once: as of analyze, and 3 where a server did not answer or an answer could not be left."
            + " 70: a fault of the program, also where a watch that runs ended by itself."})
final class WatchCommand implements Task {

  private static final int PATIENCE_SECONDS = 15;

  @Parameters(arity = "0..*", paramLabel = "SERVER[/PROJECT]",
      description = "A server of the list, or one of its projects by name or number (default: what people switched on on the page).")
  private List<String> targets = List.of();

  @Mixin
  private ServersChoice list;

  @Mixin
  private DataFolder data;

  @Mixin
  private DatabaseChoice database;

  @Mixin
  private Settings settings;

  @Option(names = "--every", paramLabel = "SECONDS",
      description = "The usual pause between two looks; it grows while a server does not answer (default: 60).")
  private long every = Watching.EVERY.toSeconds();

  @Option(names = "--once", description = "Look once, do what there is to do, and end.")
  private boolean once;

  @Option(names = "--fail-on", paramLabel = "SEVERITY",
      description = "violation or warning, with --once: exit with 1 where an analysed revision has such a finding.")
  private AnalyzeCommand.Limit failOn;

  @Option(names = "--log", paramLabel = "FORM", defaultValue = "text",
      description = "Form of what is written to standard error: text, or json for one object a line (default: text)."
          + " SEAMLEDGER_LOG sets its level.")
  private LogForm log;

  /** What became of this run, for its exit status. */
  private static final class Tally {
    private volatile boolean finds;
    private volatile boolean fails;
    private volatile boolean isNotSetUp;
  }

  @Override
  public int run(Session session) {
    if (every < 1) {
      throw new UsageException("--every takes a number of seconds, at least 1");
    }
    Servers servers =
        Servers.of(list.list().orElseThrow(() -> new UsageException("name the list of servers that may be asked: --servers FILE")));
    WatchTargets named = new WatchTargets(targets, servers);
    Thread main = Thread.currentThread();
    CountDownLatch ended = new CountDownLatch(1);
    Thread stop = new Thread(() -> {
      main.interrupt();
      await(ended);
    }, "stop");
    Runtime.getRuntime().addShutdownHook(stop);
    Logging.asService(log, session.err());
    try (Store store = Store.open(data.path(), database.resolve(session.environment().database()))) {
      store.analyses().unfinished();
      return watch(session, servers, named, store);
    } catch (LedgerException e) {
      throw new UsageException(e.getMessage());
    } finally {
      Logging.asCommand();
      ended.countDown();
      forget(stop);
    }
  }

  private int watch(Session session, Servers servers, WatchTargets named, Store store) {
    WatchFilter on = new WatchFilter(store.watches());
    WatchTarget wanted = targets.isEmpty() ? on : named;
    List<String> names = targets.isEmpty() ? servers.names().stream().filter(on::wantsAny).toList() : named.servers();
    if (names.isEmpty()) {
      throw new UsageException(
          "nothing is watched: name a server of the list (" + String.join(", ", servers.names()) + "), or one of its projects");
    }
    Tally tally = new Tally();
    Path scratch = data.path().resolve("scratch");
    LocalAnalyst analyst = new LocalAnalyst(store, scratch, (inputs, progress) -> analyze(session, inputs, progress, tally));
    Watching.Setting setting = new Watching.Setting(servers, wanted, store, new Download(store.uploads(), scratch, Watching.MOST_BYTES),
        Duration.ofSeconds(every), analyst, event -> tell(event, tally), session.clock(), new Health(session.clock()));
    return watch(setting, names, named, tally);
  }

  private Result analyze(Session session, Inputs stored, Progress progress, Tally tally) throws IOException {
    Inputs inputs = settings.on(stored, session.environment());
    Takeoff takeoff =
        session.analyzer().analyze(stored.decisions().isEmpty() ? inputs : inputs.withDecisions(stored.decisions()), progress);
    Severity limit = failOn == null ? null : failOn.severity();
    tally.finds |= limit != null && takeoff.findings().stream().anyMatch(f -> f.isOpenAt(limit));
    return new TakeoffResult(takeoff);
  }

  private static void tell(Event event, Tally tally) {
    tally.fails |= event.what().equals("analysed") && event.detail().contains(" failed");
    tally.isNotSetUp |= event.detail().startsWith("server/not-set-up");
    Logging.tell(event);
  }

  /** Watches until it is done or the process is asked to end; what is going on then stops in good order. */
  private int watch(Watching.Setting setting, List<String> names, WatchTargets named, Tally tally) {
    try (Watching watching = new Watching(setting)) {
      if (!once) {
        watching.start(names);
        // One that did not start again by itself: whoever runs this program starts it again, or learns at least that nothing is watched.
        throw new IllegalStateException("the watch on " + watching.awaitEnd() + " has ended by itself; the log says why");
      }
      RoundOutcome outcome = watching.once(names);
      if (outcome == RoundOutcome.FINE && !named.unmet().isEmpty()) {
        throw new UsageException("there is no project " + String.join(", ", named.unmet()));
      }
      if (tally.isNotSetUp) {
        return ExitStatus.USAGE;
      }
      return outcome != RoundOutcome.FINE || tally.fails ? ExitStatus.UNREADABLE : tally.finds ? ExitStatus.FINDINGS : ExitStatus.DONE;
    } catch (InterruptedException e) {
      return ExitStatus.DONE;
    }
  }

  private static void await(CountDownLatch ended) {
    try {
      ended.await(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void forget(Thread hook) {
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      // The process is ending: that is what it was for.
    }
  }
}
