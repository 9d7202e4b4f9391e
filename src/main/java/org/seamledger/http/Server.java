package org.seamledger.http;

import io.javalin.Javalin;
import io.javalin.config.RoutesConfig;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.eclipse.jetty.http.MimeTypes;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.seamledger.http.answer.PageFiles;
import org.seamledger.http.api.AlternatesApi;
import org.seamledger.http.api.AnalysesApi;
import org.seamledger.http.api.AnalysisBody;
import org.seamledger.http.api.DrawingsApi;
import org.seamledger.http.api.Events;
import org.seamledger.http.api.HandoverApi;
import org.seamledger.http.api.LinksApi;
import org.seamledger.http.api.PhotosApi;
import org.seamledger.http.api.PricesApi;
import org.seamledger.http.api.ProjectsApi;
import org.seamledger.http.api.QueryApi;
import org.seamledger.http.api.RecordApi;
import org.seamledger.http.api.ResultsApi;
import org.seamledger.http.api.ReviewsApi;
import org.seamledger.http.api.RulesApi;
import org.seamledger.http.api.Samples;
import org.seamledger.http.api.ServedModels;
import org.seamledger.http.api.ServerConnections;
import org.seamledger.http.api.SequenceApi;
import org.seamledger.http.api.ServersApi;
import org.seamledger.http.api.TopicsApi;
import org.seamledger.http.api.UploadFolder;
import org.seamledger.http.job.DrawingBoard;
import org.seamledger.http.job.JobAnalyst;
import org.seamledger.http.job.Jobs;
import org.seamledger.http.job.LocalJobs;
import org.seamledger.http.job.QueuedJobs;
import org.seamledger.http.job.Metrics;
import org.seamledger.http.setting.Limits;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Lease;
import org.seamledger.ledger.Processes;
import org.seamledger.ledger.Store;
import org.seamledger.watch.Download;
import org.seamledger.watch.Health;
import org.seamledger.watch.WatchFilter;
import org.seamledger.watch.Watching;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The running service. */
public final class Server implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(Server.class);
  /** How often a database is looked at when nobody asks for anything, so that its loss is in the log soon. */
  private static final int LOOK_SECONDS = 20;

  private final Options options;
  private final Store store;
  private final Metrics metrics = new Metrics();
  private final Health health = new Health(Clock.systemUTC());
  private final Map<String, Lease> leases = new ConcurrentHashMap<>();
  private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(r -> {
    Thread t = new Thread(r, "clock");
    t.setDaemon(true);
    return t;
  });
  private final Download download;
  private final Jobs jobs;
  private final Events events;
  private final ServerConnections conversations;
  private final Optional<Watching> watching;
  private final Javalin javalin;
  private final RequestHandling handling;

  private Server(Options options, AccessGuard gate, Store store, Supplier<PageFiles> page) throws IOException {
    this.options = options;
    this.store = store;
    Path scratch = options.data().resolve("scratch");
    UploadFolder uploads = UploadFolder.of(store, scratch);
    uploads.sweep(store.isShared() ? List.of() : store.analyses().list());
    if (store.isShared()) {
      gate.share(store.sessions());
      uploads.adopt(store);
    }
    download = new Download(store.uploads(), scratch, options.limits().fileBytes());
    DrawingBoard board = new DrawingBoard(store, options, scratch);
    jobs = store.isShared() ? new QueuedJobs(store, options, clock, health)
        : new LocalJobs(store, options, metrics, scratch, board, download, clock, health);
    events = new Events(store, jobs, options.limits(), clock, health);
    conversations = new ServerConnections(options.servers(), options.limits().answer());
    watching = options.watch().map(every -> watching(every, board));
    handling = new RequestHandling(options, page.get(), gate, metrics, health);
    javalin = Javalin.create(c -> handling.install(c, store, jobs, apis(board, uploads)));
    jobs.resume();
    handling.opensOn(new OpeningModels(options, store.analyses(), jobs, uploads).open());
  }

  /** Everything under /api that has to do with analyses. */
  private Consumer<RoutesConfig> apis(DrawingBoard board, UploadFolder uploads) {
    String version = options.analyzer().version();
    Path scratch = options.data().resolve("scratch");
    Limits limits = options.limits();
    ServedModels served = new ServedModels(conversations, download);
    Samples samples = new Samples(options.samples());
    AnalysesApi analyses = new AnalysesApi(store, jobs, uploads, served, samples, limits);
    return routes -> {
      analyses.install(routes);
      new ResultsApi(store, version).install(routes);
      new DrawingsApi(store, board, version).install(routes);
      new RulesApi(store, board, options.analyzer(), samples, scratch).install(routes);
      new HandoverApi(store, board, scratch).install(routes);
      new TopicsApi(store, board, scratch).install(routes);
      new QueryApi(store, board, limits.bodyBytes()).install(routes);
      events.install(routes);
      new ReviewsApi(store, jobs, limits).install(routes);
      new PricesApi(store, limits).install(routes);
      new SequenceApi(store, board).install(routes);
      new RecordApi(store, board, limits).install(routes);
      new PhotosApi(store).install(routes);
      new LinksApi(store, limits).install(routes);
      new AlternatesApi(store, board, limits, options.data().resolve("scratch")).install(routes);
      new ProjectsApi(store, new AnalysisBody(store, jobs), limits).install(routes);
      new ServersApi(store, conversations, served, analyses, download, options, watching).install(routes);
    };
  }

  /**
   * Starts to serve; returns when requests are answered.
   *
   * @throws IllegalArgumentException where the options cannot be honoured, with one line for people
   * @throws org.seamledger.ledger.LedgerException where the data folder cannot be used
   */
  public static Server start(Options options) {
    AccessGuard gate = new AccessGuard(options);
    // Beside the store, since each takes a tenth of the time until the first answer.
    CompletableFuture<PageFiles> page = CompletableFuture.supplyAsync(PageFiles::new);
    page.thenRunAsync(Server::loadWebServer);
    Store store = open(options);
    try {
      Options own = store.isShared() ? options.data(store.models().scratch(store.here().id())) : options;
      Server server = new Server(own, gate, store, page::join);
      server.listen();
      return server;
    } catch (IOException e) {
      store.close();
      throw new IllegalArgumentException("The data folder " + options.data() + " cannot be used: " + e.getMessage(), e);
    } catch (RuntimeException | Error e) {
      store.close();
      throw e;
    }
  }

  /** Of its classes those that take long to be ready: whoever needs them first finds them so. */
  private static void loadWebServer() {
    LOG.trace("{} {}", MimeTypes.DEFAULTS, new QueuedThreadPool());
  }

  private static Store open(Options options) {
    return options.shared().isEmpty() ? Store.open(options.data(), options.database())
        : Store.share(options.database().orElseThrow(), options.shared().get(),
            Processes.Member.here("serve", options.analyzer().version(), options.analyzer().rules()));
  }

  /** The watch on the projects that people switched on; of several servers one at a time watches. */
  private Watching watching(Duration every, DrawingBoard board) {
    Watching.Setting setting = new Watching.Setting(options.servers(), new WatchFilter(store.watches()), store, download, every,
        new JobAnalyst(store, jobs, board), event -> LOG.info("watch {}", event), Clock.systemUTC(), health);
    return new Watching(store.isShared()
        ? setting.inTurn(server -> leases.computeIfAbsent(server, s -> store.lease("watch " + s)).isMine()) : setting);
  }

  private void listen() {
    try {
      javalin.start(options.bind(), options.port());
    } catch (RuntimeException e) {
      stopQuietly();
      throw new IllegalArgumentException(
          "Port " + options.port() + " on " + options.bind() + " cannot be used: another program listens there,"
              + " or it is not allowed.",
          e);
    }
    try {
      watching.ifPresent(w -> w.start(options.servers().names()));
    } catch (RuntimeException | Error e) {
      stopQuietly();
      javalin.stop();
      throw e;
    }
    Runnable look = health.guarded("clock", this::lookAtDatabase);
    options.database().ifPresent(d -> clock.scheduleWithFixedDelay(look, LOOK_SECONDS, LOOK_SECONDS, TimeUnit.SECONDS));
    LOG.atInfo().addKeyValue("url", url()).addKeyValue("data", options.data())
        .addKeyValue("database", options.database().map(Object::toString).orElse("embedded")).log("serving");
  }

  private void lookAtDatabase() {
    try {
      store.check();
    } catch (LedgerException e) {
      LOG.debug("database", e);
    }
  }

  public int port() {
    return javalin.port();
  }

  /** Every address of the API: method and path. */
  Set<String> addresses() {
    return handling.addresses();
  }

  /** The address of the page. */
  public String url() {
    String host = options.bind().contains(":") ? "[" + options.bind() + "]" : options.bind();
    return "http://" + host + ":" + port() + "/";
  }

  private void stopQuietly() {
    quietly(events::close);
    quietly(() -> watching.ifPresent(Watching::close));
    leases.values().forEach(l -> quietly(l::close));
    quietly(conversations::close);
    quietly(() -> {
      try {
        jobs.close();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    });
    // Last: jobs that end set alarms still.
    clock.shutdownNow();
  }

  /** What can't be stopped must not keep the rest from it. */
  private static void quietly(Runnable stop) {
    try {
      stop.run();
    } catch (RuntimeException | Error e) {
      LOG.error("not stopped in good order", e);
    }
  }

  /** Stops answering, stops analyses (they run again at the next start), closes the storage. */
  @Override
  public void close() {
    stopQuietly();
    quietly(javalin::stop);
    if (store.isShared()) {
      quietly(() -> store.models().forget(options.data()));
    }
    store.close();
  }
}
