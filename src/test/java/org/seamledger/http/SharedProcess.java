package org.seamledger.http;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.seamledger.http.setting.Limits;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.ModelPlace;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.ledger.Processes;
import org.seamledger.ledger.Store;
import org.seamledger.queue.Worker;
import org.seamledger.queue.WorkerLimits;
import org.seamledger.queue.WorkerSetting;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Result;
import org.seamledger.run.TakeoffAnalyzer;
import org.seamledger.watch.Download;
import org.seamledger.watch.Health;
import org.seamledger.watch.Servers;

/**
 * One of several processes on a database, with made-up results or real ones: {@code SharedProcess serve|work URL MODELS}. With
 * {@code -Dseamledger.copies=DIR} the models are in the database.
 */
final class SharedProcess {

  private static final Duration LONGEST = Duration.ofSeconds(Integer.getInteger("seamledger.longest", 60));
  /** Shorter than users have it, so that a death is noticed sooner. */
  private static final Duration HEARTBEAT = Duration.ofMillis(Integer.getInteger("seamledger.heartbeat", 200));
  private static final int PER_PROJECT = Integer.getInteger("seamledger.perProject", Integer.MAX_VALUE);

  private static final Optional<String> COPIES = Optional.ofNullable(System.getProperty("seamledger.copies"));

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

  private static Analyzer<Result> analyzer() {
    return Boolean.getBoolean("seamledger.real") ? new TakeoffAnalyzer(Optional.empty()) : new FixtureAnalyzer();
  }

  private static ModelPlace place(Path models) {
    return COPIES.map(c -> ModelPlace.database(Path.of(c))).orElseGet(() -> ModelPlace.folder(models));
  }

  private static Options options(PostgresAddress database, Path models) {
    return Options.of(analyzer(), models).port(0).database(Optional.of(database)).shared(place(models))
        .limits(Limits.standard().waiting(10_000));
  }

  private static void start(PostgresAddress database, Path models) {
    Analyzer<Result> analyzer = analyzer();
    Store store = Store.share(database, place(models), Processes.Member.here("work", analyzer.version(), analyzer.rules()));
    Path scratch = store.models().scratch(store.here().id());
    Worker worker =
        Worker.start(new WorkerSetting(store, analyzer, scratch, Servers.none(), new Download(store.uploads(), scratch, 1 << 26),
            new Health(Clock.systemUTC()), new WorkerLimits(1, PER_PROJECT, LONGEST, Duration.ofSeconds(1), Duration.ofDays(7), HEARTBEAT),
            () -> Runtime.getRuntime().halt(3)));
    Runtime.getRuntime().addShutdownHook(new Thread(() -> {
      worker.close();
      store.close();
    }));
  }
}
