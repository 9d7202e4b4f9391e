package org.seamledger.http;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.seamledger.http.setting.Limits;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.ledger.Processes;
import org.seamledger.ledger.Store;
import org.seamledger.queue.Worker;
import org.seamledger.queue.WorkerLimits;
import org.seamledger.queue.WorkerSetting;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Result;
import org.seamledger.watch.Download;
import org.seamledger.watch.Health;
import org.seamledger.watch.Servers;

/** One of several processes on a database, with made-up results: {@code SharedProcess serve|work URL MODELS}. */
final class SharedProcess {

  private static final Duration LONGEST = Duration.ofSeconds(Integer.getInteger("seamledger.longest", 60));
  /** Shorter than users have it, so that a death is noticed sooner. */
  private static final Duration HEARTBEAT = Duration.ofMillis(Integer.getInteger("seamledger.heartbeat", 200));
  private static final int PER_PROJECT = Integer.getInteger("seamledger.perProject", Integer.MAX_VALUE);

  private SharedProcess() {
  }

  public static void main(String[] args) throws Exception {
    PostgresAddress database = PostgresAddress.of(args[1], Optional.empty(), Optional.empty());
    if (args[0].equals("serve")) {
      Server server = Server.start(options(database, Path.of(args[2])));
      System.err.println("ready " + server.url());
    } else {
      start(database, Path.of(args[2]));
      System.err.println("ready");
    }
    Thread.currentThread().join();
  }

  static Options options(PostgresAddress database, Path models) {
    return Options.of(new FixtureAnalyzer(), models).port(0).database(Optional.of(database)).shared(models)
        .limits(Limits.standard().waiting(10_000));
  }

  private static void start(PostgresAddress database, Path models) {
    Analyzer<Result> analyzer = new FixtureAnalyzer();
    Store store = Store.share(database, models, Processes.Member.here("work", analyzer.version(), analyzer.rules()));
    Path scratch = store.models().scratch(store.here().id());
    Worker worker =
        Worker.start(new WorkerSetting(store, analyzer, scratch, Servers.none(), new Download(store.uploads(), scratch, 1 << 20),
            new Health(Clock.systemUTC()), new WorkerLimits(1, PER_PROJECT, LONGEST, Duration.ofSeconds(1), Duration.ofDays(7), HEARTBEAT),
            () -> Runtime.getRuntime().halt(3)));
    Runtime.getRuntime().addShutdownHook(new Thread(() -> {
      worker.close();
      store.close();
    }));
  }
}
