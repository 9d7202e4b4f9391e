package org.seamledger.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.seamledger.http.setting.Limits;
import org.seamledger.ledger.LedgerException;
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
import org.seamledger.watch.Watching;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(name = "work", description = "Analyse what servers take in: a worker beside serve --database URL --models DIR, on any machine.",
    footer = {"",
        "Any number of workers share the database and the folder of models. One that is killed loses nothing: another begins again"
            + " what it had. User and password of the database come from SEAMLEDGER_DATABASE_USER and SEAMLEDGER_DATABASE_PASSWORD.",
        "Exit status: 0 ended when asked to; 2 the command line, database or folder can't be used; 3 an analysis could not be ended in time"
            + " otherwise than with the worker: start it again."})
final class WorkCommand implements Task {

  private static final int HOURS_KEPT = 168;

  @Mixin
  private DatabaseChoice database;

  @Mixin
  private SharedFolder models;

  @Mixin
  private DataFolder data;

  @Option(names = "--threads", paramLabel = "N", description = "Analyses at once (default: half the processors).")
  private int threads = Limits.standard().running();

  @Option(names = "--analysis-seconds", paramLabel = "N", description = "Longest that one analysis may take (default: 1800).")
  private int analysisSeconds = (int) Limits.standard().duration().toSeconds();

  @Option(names = "--per-project", paramLabel = "N",
      description = "Most analyses of one project at once, in all workers together (default: no limit).")
  private int perProject = Integer.MAX_VALUE;

  @Option(names = "--keep-hours", paramLabel = "N",
      description = "How long a model stays that no analysis refers to any more (default: " + HOURS_KEPT + ").")
  private int keepHours = HOURS_KEPT;

  @Option(names = "--shapes", paramLabel = "DIR", description = "Shapes to use instead of the program's own; the same for all processes.")
  private Path shapes;

  @Mixin
  private ServersChoice list;

  @Option(names = "--log", paramLabel = "FORM", defaultValue = "text",
      description = "Form of the log on standard error: text, or json for one object a line (default: text). SEAMLEDGER_LOG sets its "
          + "level.")
  private LogForm log;

  @Override
  public int run(Session session) {
    if (threads < 1 || analysisSeconds < 1 || perProject < 1 || keepHours < 1) {
      throw new UsageException("--threads, --analysis-seconds, --per-project and --keep-hours take a whole number, at least 1");
    }
    PostgresAddress address = SharedFolder.requireDatabase(database.resolve(session.environment().database()));
    ModelPlace place = models.place(data).orElseThrow(() -> new UsageException(
        "name the folder of models that serve and the workers share: --models DIR, or say --models-in-database as serve does"));
    Analyzer<Result> analyzer = new TakeoffAnalyzer(Optional.ofNullable(shapes).or(session.environment()::shapes));
    Logging.asService(log, session.err());
    try (Store store = Store.share(address, place, Processes.Member.here("work", analyzer.version(), analyzer.rules()))) {
      work(session, store, analyzer);
      return ExitStatus.DONE;
    } catch (LedgerException e) {
      throw new UsageException(e.getMessage());
    } finally {
      Logging.asCommand();
    }
  }

  private void work(Session session, Store store, Analyzer<Result> analyzer) {
    warnOfOthers(store);
    Path scratch = store.models().scratch(store.here().id());
    WorkerSetting setting = new WorkerSetting(store, analyzer, scratch, list.list().map(Servers::of).orElseGet(Servers::none),
        new Download(store.uploads(), scratch, Watching.MOST_BYTES), new Health(session.clock()), limits(),
        () -> Runtime.getRuntime().halt(ExitStatus.UNREADABLE));
    Worker worker = Worker.start(setting);
    LoggerFactory.getLogger(Worker.class).atInfo().addKeyValue("database", store.address()).addKeyValue("models", store.models())
        .addKeyValue("threads", threads).log("working");
    if (log == LogForm.text) {
      session.err().println("seamledger: waiting for analyses; stop with Ctrl-C");
    }
    CountDownLatch ended = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(() -> end(worker, store, scratch, ended), "stop"));
    try {
      ended.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private WorkerLimits limits() {
    WorkerLimits standard = WorkerLimits.standard();
    return standard.threads(threads).perProject(perProject).lasting(Duration.ofSeconds(analysisSeconds), standard.grace())
        .keeping(Duration.ofHours(keepHours));
  }

  private static void end(Worker worker, Store store, Path scratch, CountDownLatch ended) {
    try {
      worker.close();
      store.models().forget(scratch);
      store.close();
    } finally {
      ended.countDown();
    }
  }

  /** Results by other rules, or of another version, are not the same to the byte: a server can't draw them. */
  private static void warnOfOthers(Store store) {
    Processes.Member here = store.here();
    boolean others = store.processes().alive().stream()
        .anyMatch(m -> !m.rules().equals(here.rules()) || !m.version().equals(here.version()));
    if (others) {
      LoggerFactory.getLogger(Worker.class).warn("other processes on this database apply other rules, or are of another version: results"
          + " depend on who computes them, until all are the same");
    }
  }
}
