package org.seamledger.http;

import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.seamledger.ledger.LedgerException;
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
  private static final int IDLE_MILLIS = 60_000;
  /** How often a database is looked at when nobody asks for anything, so that its loss is in the log soon. */
  private static final int LOOK_SECONDS = 20;

  private final Options options;
  private final Store store;
  private final Metrics metrics = new Metrics();
  private final Health health = new Health(Clock.systemUTC());
  private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(r -> {
    Thread t = new Thread(r, "clock");
    t.setDaemon(true);
    return t;
  });
  private final Download download;
  private final Jobs jobs;
  private final Events events;
  private final AccessGuard gate;
  private final PageFiles page = new PageFiles();
  private final Set<String> addresses = new TreeSet<>();
  private final byte[] openApi = resource("/org/seamledger/http/openapi.json");
  private final ServerConnections conversations;
  private final ServedModels served;
  private final Optional<Watching> watching;
  private final Javalin javalin;
  private final Optional<String> opened;

  private Server(Options options, AccessGuard gate, Store store) throws IOException {
    this.options = options;
    this.gate = gate;
    this.store = store;
    Path scratch = options.data().resolve("scratch");
    Uploads uploads = new Uploads(store.uploads(), scratch, options.limits());
    uploads.sweep(store.analyses().list());
    download = new Download(store.uploads(), scratch, options.limits().fileBytes());
    DrawingBoard board = new DrawingBoard(store, options);
    jobs = new Jobs(store, options, metrics, scratch, board, download, clock, health);
    events = new Events(store, jobs, options.limits(), clock, health);
    conversations = new ServerConnections(options.servers(), options.limits().answer());
    served = new ServedModels(conversations, download);
    AnalysesApi analyses = new AnalysesApi(store, jobs, uploads, served, new Samples(options.samples()), options.limits(),
        options.analyzer().version());
    DrawingsApi drawings = new DrawingsApi(store, board, options.analyzer().version());
    watching = options.watch().map(this::watching);
    javalin = Javalin.create(c -> configure(c, analyses, drawings));
    jobs.resume();
    opened = new OpeningModels(options, store.analyses(), jobs).open();
  }

  /**
   * Starts to serve; returns when requests are answered.
   *
   * @throws IllegalArgumentException where the options cannot be honoured, with one line for people
   * @throws org.seamledger.ledger.LedgerException where the data folder cannot be used
   */
  public static Server start(Options options) {
    AccessGuard gate = new AccessGuard(options);
    Store store = Store.open(options.data(), options.database());
    try {
      Server server = new Server(options, gate, store);
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

  /** The watch on the projects that people switched on. */
  private Watching watching(Duration every) {
    return new Watching(new Watching.Setting(options.servers(), new WatchFilter(store.watches()), store, download, every,
        new JobAnalyst(store, jobs), event -> LOG.info("watch {}", event), Clock.systemUTC(), health));
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
    return Set.copyOf(addresses);
  }

  /** The address of the page. */
  public String url() {
    String host = options.bind().contains(":") ? "[" + options.bind() + "]" : options.bind();
    return "http://" + host + ":" + port() + "/";
  }

  private void configure(JavalinConfig c, AnalysesApi analyses, DrawingsApi drawings) {
    c.startup.showJavalinBanner = false;
    c.startup.showOldJavalinVersionWarning = false;
    c.startup.startupWatcherEnabled = false;
    c.http.compressionStrategy = CompressionStrategy.NONE;
    c.http.prefer405over404 = true;
    c.http.maxRequestSize = options.limits().bodyBytes() + 1L;
    c.jetty.modifyHttpConfiguration(h -> {
      h.setSendServerVersion(false);
      h.setIdleTimeout(IDLE_MILLIS);
    });
    c.events.handlerAdded(h -> {
      if (h.getHttpMethod().isHttpMethod() && !page.has(h.getPath())) {
        addresses.add(h.getHttpMethod() + " " + h.getPath());
      }
    });
    RoutesConfig routes = c.routes;
    c.router.javaLangErrorHandler(Problems::answer);
    routes.before(this::secure);
    Problems.install(routes);
    routes.get("/api/start", this::opening);
    routes.post("/api/session", this::session);
    routes.get("/openapi.json",
        ctx -> CachedBodies.send(ctx, openApi, PageFiles.gzip(openApi), PageFiles.etag(openApi), "application/json"));
    page.paths().forEach(path -> routes.get(path, ctx -> page.answer(ctx, path)));
    analyses.install(routes);
    drawings.install(routes);
    events.install(routes);
    new ReviewsApi(store, jobs, options.limits()).install(routes);
    new ProjectsApi(store, analyses, options.limits()).install(routes);
    new ServersApi(store, conversations, served, analyses, download, options, watching).install(routes);
    new Monitor(options.analyzer().version(), store, jobs, metrics, health, page::has).install(c);
  }

  private void secure(Context ctx) {
    ctx.header("X-Content-Type-Options", "nosniff");
    ctx.header("Referrer-Policy", "no-referrer");
    ctx.header("Cross-Origin-Opener-Policy", "same-origin");
    ctx.header("Cross-Origin-Resource-Policy", "same-origin");
    ctx.header("Content-Security-Policy", page.contentSecurityPolicy());
    gate.check(ctx);
  }

  /** What the page shall open on. */
  private void opening(Context ctx) {
    Map<String, Object> b = new LinkedHashMap<>();
    b.put("analysis", opened.orElse(null));
    b.put("limits", JsonBodies.object("fileBytes", options.limits().fileBytes(), "requestBytes", options.limits().requestBytes(), "files",
        options.limits().files()));
    JsonBodies.answer(ctx, 200, b);
  }

  private void session(Context ctx) throws IOException {
    gate.openSession(ctx, JsonBodies.text(JsonBodies.body(ctx, options.limits().bodyBytes()), "token"));
    ctx.status(204);
  }

  private static byte[] resource(String name) {
    try (InputStream in = Server.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void stopQuietly() {
    quietly(events::close);
    quietly(() -> watching.ifPresent(Watching::close));
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
    store.close();
  }
}
