package org.seamledger.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.seamledger.http.Server;
import org.seamledger.http.setting.Limits;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.ModelPlace;
import org.seamledger.run.TakeoffAnalyzer;
import org.seamledger.source.KnownServers;
import org.seamledger.watch.Servers;
import org.seamledger.watch.Watching;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "serve", description = "Serve the page and the HTTP interface, on this machine only unless told otherwise.",
    footer = {"", "With --models or --models-in-database analyses are done by workers (see work), and several servers may share them.",
        "Off loopback a token is needed: set SEAMLEDGER_TOKEN to at least 16 characters. User and password of a database",
        "come from SEAMLEDGER_DATABASE_USER and SEAMLEDGER_DATABASE_PASSWORD."})
final class ServeCommand implements Task {

  private static final int MOST_WAITING = 10_000;

  @Parameters(arity = "0..*", paramLabel = "MODEL", description = "Models, together one building, to open the page on.")
  private List<Path> models = List.of();

  @Option(names = "--port", paramLabel = "N", description = "Port; 0 for any free one (default: " + Options.PORT + ").")
  private int port = Options.PORT;

  @Option(names = "--bind", paramLabel = "ADDRESS", description = "Address to listen on (default: " + Options.LOOPBACK + ").")
  private String address = Options.LOOPBACK;

  @Mixin
  private DataFolder data;

  @Option(names = "--host", paramLabel = "NAME", description = "A name under which clients may call, besides the address. Repeatable.")
  private List<String> hosts = List.of();

  @Option(names = "--proxy", paramLabel = "ADDRESS",
      description = "Address of a reverse proxy whose X-Forwarded-For and X-Forwarded-Proto are believed. Repeatable.")
  private List<String> proxies = List.of();

  @Option(names = "--analysis-seconds", paramLabel = "N", description = "Longest that one analysis may take (default: 1800).")
  private int analysisSeconds = (int) Limits.standard().duration().toSeconds();

  @Option(names = "--shapes", paramLabel = "DIR", description = "Shapes to use instead of the program's own.")
  private Path shapes;

  @Option(names = "--log", paramLabel = "FORM", defaultValue = "text",
      description = "Form of the log on standard error: text, or json for one object a line (default: text). SEAMLEDGER_LOG sets its "
          + "level.")
  private LogForm log;

  @Mixin
  private DatabaseChoice database;

  @Mixin
  private SharedFolder shared;

  @Mixin
  private ServersChoice list;

  @Option(names = "--watch", description = "Watch the projects on these servers that people switch on on the page.")
  private boolean watch;

  @Option(names = "--every", paramLabel = "SECONDS", description = "With --watch: the usual pause between two looks (default: 60).")
  private long every = Watching.EVERY.toSeconds();

  @Override
  public int run(Session session) {
    Optional<Path> rules = Optional.ofNullable(shapes).or(session.environment()::shapes);
    Options options = Options.of(new TakeoffAnalyzer(rules), data.path())
        .bind(address, session.environment().token()).port(port).models(models).hosts(hosts).proxies(proxies)
        .limits(Limits.standard().lasting(Duration.ofSeconds(Math.max(1, analysisSeconds))))
        .database(database.resolve(session.environment().database()));
    Optional<ModelPlace> place = shared.place(data);
    if (place.isPresent()) {
      options = withWorkers(options, place.get());
    }
    options = withServers(session.environment().samples().map(options::samples).orElse(options));
    Logging.asService(log, session.err());
    try (Server server = Server.start(options)) {
      if (log == LogForm.text) {
        session.err().println("seamledger: open " + server.url() + " in a browser; stop with Ctrl-C");
      }
      untilStopped(server);
      return ExitStatus.DONE;
    } catch (IllegalArgumentException | LedgerException e) {
      throw new UsageException(e.getMessage());
    } finally {
      Logging.asCommand();
    }
  }

  /** Analyses wait in the database, where there is room for many. */
  private static Options withWorkers(Options options, ModelPlace place) {
    SharedFolder.requireDatabase(options.database());
    return options.shared(place).limits(options.limits().waiting(MOST_WAITING));
  }

  private Options withServers(Options options) {
    Optional<KnownServers> known = list.list();
    if (watch && known.isEmpty()) {
      throw new UsageException("--watch needs the list of servers that may be asked: --servers FILE");
    }
    if (every < 1) {
      throw new UsageException("--every takes a number of seconds, at least 1");
    }
    Options listed = known.map(k -> options.servers(Servers.of(k))).orElse(options);
    return watch ? listed.watch(Duration.ofSeconds(every)) : listed;
  }

  /** Waits until the process is asked to end, then lets the server end in good order. */
  private static void untilStopped(Server server) {
    CountDownLatch stop = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(server::close, "stop"));
    try {
      stop.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
