package org.seamledger.http;

import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.eclipse.jetty.http.HttpException;
import org.seamledger.http.answer.CachedBodies;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.answer.PageFiles;
import org.seamledger.http.answer.Problems;
import org.seamledger.http.job.Jobs;
import org.seamledger.http.job.Metrics;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.Store;
import org.seamledger.watch.Health;

/** How requests are taken: limits, headers, the guard, problems as answers; the page and what it opens on. */
final class RequestHandling {

  private static final int IDLE_MILLIS = 60_000;

  private final Options options;
  private final AccessGuard guard;
  private final Metrics metrics;
  private final Health health;
  private final SlowBodies slow;
  private final PageFiles page;
  private final Map<String, String> securityHeaders;
  private final Set<String> addresses = new TreeSet<>();
  private final byte[] openApi = resource("/org/seamledger/http/openapi.json");
  private volatile Optional<String> opened = Optional.empty();

  RequestHandling(Options options, PageFiles page, AccessGuard guard, Metrics metrics, Health health) {
    this.options = options;
    this.page = page;
    this.guard = guard;
    this.slow = new SlowBodies(SlowBodies.Limits.STANDARD, options.proxies());
    this.metrics = metrics;
    this.health = health;
    this.securityHeaders = Map.of("X-Content-Type-Options", "nosniff", "Referrer-Policy", "no-referrer", "Cross-Origin-Opener-Policy",
        "same-origin", "Cross-Origin-Resource-Policy", "same-origin", "Content-Security-Policy", page.contentSecurityPolicy());
  }

  /** The analysis that the page shall open on. */
  void opensOn(Optional<String> analysis) {
    opened = analysis;
  }

  /** Every address of the API: method and path. */
  Set<String> addresses() {
    return Set.copyOf(addresses);
  }

  /** @param apis what stands under /api besides the start of the page */
  void install(JavalinConfig c, Store store, Jobs jobs, Consumer<RoutesConfig> apis) {
    limit(c);
    c.events.handlerAdded(h -> {
      if (h.getHttpMethod().isHttpMethod() && !page.has(h.getPath())) {
        addresses.add(h.getHttpMethod() + " " + h.getPath());
      }
    });
    RoutesConfig routes = c.routes;
    c.router.javaLangErrorHandler(Problems::answer);
    LinkGuard links = new LinkGuard(store, guard, Clock.systemUTC());
    routes.before(ctx -> secure(ctx, links));
    Problems.install(routes);
    routes.exception(HttpException.RuntimeException.class, (e, ctx) -> Problems.answerCut(ctx));
    routes.get("/api/start", this::opening);
    routes.post("/api/session", this::session);
    routes.delete("/api/session", ctx -> {
      guard.closeSession(ctx);
      ctx.status(204);
    });
    routes.get("/openapi.json",
        ctx -> CachedBodies.send(ctx, openApi, PageFiles.gzip(openApi), PageFiles.etag(openApi), "application/json"));
    page.paths().forEach(path -> routes.get(path, ctx -> page.answer(ctx, path)));
    apis.accept(routes);
    new Monitor(options.analyzer().version(), store, jobs, metrics, health, page::has).install(c);
  }

  private void limit(JavalinConfig c) {
    c.startup.showJavalinBanner = false;
    c.startup.showOldJavalinVersionWarning = false;
    c.startup.startupWatcherEnabled = false;
    c.http.compressionStrategy = CompressionStrategy.NONE;
    c.http.prefer405over404 = true;
    c.http.maxRequestSize = options.limits().bodyBytes() + 1L;
    c.jetty.modifyServer(server -> {
      server.setErrorHandler(new ServerErrors(securityHeaders));
      slow.install(server);
    });
    c.jetty.modifyServletContextHandler(h -> h.setErrorHandler(new ServerErrors(securityHeaders)));
    c.jetty.modifyHttpConfiguration(h -> {
      h.setSendServerVersion(false);
      h.setIdleTimeout(IDLE_MILLIS);
    });
  }

  private void secure(Context ctx, LinkGuard links) {
    securityHeaders.forEach(ctx::header);
    guard.checkSource(ctx);
    if (!links.admits(ctx)) {
      guard.checkToken(ctx);
    }
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
    guard.openSession(ctx, JsonBodies.text(JsonBodies.body(ctx, options.limits().bodyBytes()), "token"));
    ctx.status(204);
  }

  private static byte[] resource(String name) {
    try (InputStream in = RequestHandling.class.getResourceAsStream(name)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
