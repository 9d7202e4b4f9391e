package org.seamledger.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.sse.SseClient;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.watch.Health;

/** Progress as server-sent events: {@code progress} while it goes on, {@code end} with the final state, then the stream closes. */
final class Events implements AutoCloseable {

  private static final int HEARTBEAT_SECONDS = 15;

  private final Store store;
  private final Jobs jobs;
  private final Limits limits;
  private final Set<SseClient> clients = ConcurrentHashMap.newKeySet();

  Events(Store store, Jobs jobs, Limits limits, ScheduledExecutorService clock, Health health) {
    this.store = store;
    this.jobs = jobs;
    this.limits = limits;
    clock.scheduleAtFixedRate(health.guarded("event streams", () -> clients.forEach(c -> c.sendComment("still here"))), HEARTBEAT_SECONDS,
        HEARTBEAT_SECONDS, TimeUnit.SECONDS);
  }

  void install(RoutesConfig routes) {
    routes.before("/api/analyses/{id}/events", ctx -> {
      store.analyses().get(ctx.pathParam("id"));
      if (clients.size() >= limits.watchers()) {
        throw new HttpProblem(503, "busy", "Too many clients watch already; ask for the state now and then instead.");
      }
    });
    routes.sse("/api/analyses/{id}/events", this::watch);
  }

  private void watch(SseClient client) {
    StoredAnalysis a = store.analyses().get(client.ctx().pathParam("id"));
    client.keepAlive();
    clients.add(client);
    client.onClose(() -> clients.remove(client));
    Optional<Runnable> stop = jobs.listen(a.id(), p -> send(client, p));
    if (stop.isEmpty()) {
      send(client, jobs.progress(store.analyses().get(a.id())));
    } else {
      client.onClose(() -> {
        clients.remove(client);
        stop.get().run();
      });
    }
  }

  private static void send(SseClient client, Jobs.Progress p) {
    boolean ended = p.state().isFinal();
    client.sendEvent(ended ? "end" : "progress",
        JsonBodies.text(JsonBodies.object("state", p.state().word(), "stage", p.stage(), "fraction", p.fraction())));
    if (ended) {
      client.close();
    }
  }

  @Override
  public void close() {
    clients.forEach(SseClient::close);
  }
}
