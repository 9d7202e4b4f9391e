package org.seamledger.http;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.job.Jobs;
import org.seamledger.http.job.Metrics;
import org.seamledger.ledger.Store;
import org.seamledger.watch.Health;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.event.Level;

/** What those who run the service look at: health, metrics, a line in the log for every request. */
final class Monitor {

  private static final Logger LOG = LoggerFactory.getLogger(Monitor.class);

  private static final Set<String> METHODS = Set.of("GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS");

  private final String version;
  private final Store store;
  private final Jobs jobs;
  private final Metrics metrics;
  private final Health health;
  private final Predicate<String> isPage;

  /** @param isPage whether a route is a file of the page, of which the log tells only who wants to know all */
  Monitor(String version, Store store, Jobs jobs, Metrics metrics, Health health, Predicate<String> isPage) {
    this.version = version;
    this.store = store;
    this.jobs = jobs;
    this.metrics = metrics;
    this.health = health;
    this.isPage = isPage;
  }

  void install(JavalinConfig c) {
    c.routes.get("/api/health", this::health);
    c.routes.get("/metrics", ctx -> ctx.contentType(Metrics.TYPE)
        .result(metrics.text(jobs, store.analyses().oldestWaiting().toMillis() / 1e3, health.faults().size(),
            store.analyses().counts()))
        .contentType(Metrics.TYPE));
    c.requestLogger.http(this::log);
  }

  /**
   * Whether the service can do its work: without its storage it cannot. What failed in the background and is tried again leaves it
   * {@code degraded} but ready, 200; what has stopped for good needs a start of the program, 503.
   */
  private void health(Context ctx) {
    store.check();
    List<Health.Fault> faults = health.faults();
    boolean isDown = faults.stream().anyMatch(Health.Fault::stopped);
    Map<String, Object> b = new LinkedHashMap<>();
    int waiting = jobs.waiting();
    b.put("status", isDown ? "down" : faults.isEmpty() && (waiting == 0 || jobs.workers() > 0) ? "ok" : "degraded");
    b.put("program", "seamledger");
    b.put("version", version);
    b.put("running", jobs.running());
    b.put("waiting", waiting);
    b.put("workers", jobs.workers());
    b.put("faults", faults.stream()
        .map(f -> JsonBodies.object("part", f.part(), "since", f.since().toString(), "times", f.times(), "stopped", f.stopped())).toList());
    JsonBodies.answer(ctx, isDown ? 503 : 200, b);
  }

  /** The route is the program's own pattern: what a client typed, where it may have typed a secret, stays out. */
  private void log(Context ctx, float millis) {
    String route = ctx.endpoints().lastHttpEndpoint() == null ? "none" : ctx.endpoints().lastHttpEndpoint().path;
    metrics.request(method(ctx), route, ctx.statusCode(), millis / 1000.0);
    boolean quiet = isPage.test(route) && ctx.statusCode() < 400;
    LOG.atLevel(quiet ? Level.DEBUG : Level.INFO).addKeyValue("method", method(ctx)).addKeyValue("route", route)
        .addKeyValue("status", ctx.statusCode()).addKeyValue("ms", Math.round(millis)).log("request");
  }

  /** A method is whatever word a client sends. */
  private static String method(Context ctx) {
    String word = ctx.req().getMethod();
    return METHODS.contains(word) ? word : "other";
  }
}
