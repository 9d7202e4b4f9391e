package org.seamledger.http;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.seamledger.ledger.Analyses;
import org.seamledger.ledger.Origin;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.Watch;
import org.seamledger.ledger.WatchedRevision;
import org.seamledger.ledger.Watches;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;
import org.seamledger.watch.Download;
import org.seamledger.watch.Watching;

/**
 * Models from servers: which there are, analysing one, watching a project. A client names a server as the operator did, and a project and a
 * revision by their numbers; nothing that it sends is ever taken as an address.
 */
final class ServersApi {

  private final Store store;
  private final ServerConnections conversations;
  private final ServedModels served;
  private final AnalysesApi analyses;
  private final Download download;
  private final Options options;
  private final Optional<Watching> watching;

  ServersApi(Store store, ServerConnections conversations, ServedModels served, AnalysesApi analyses, Download download, Options options,
      Optional<Watching> watching) {
    this.store = store;
    this.conversations = conversations;
    this.served = served;
    this.analyses = analyses;
    this.download = download;
    this.options = options;
    this.watching = watching;
  }

  void install(RoutesConfig routes) {
    routes.get("/api/servers",
        ctx -> JsonBodies.answer(ctx, 200, JsonBodies.object("servers", options.servers().names(), "watching", watching.isPresent())));
    routes.get("/api/servers/{server}/projects", this::projects);
    routes.get("/api/servers/{server}/projects/{project}/revisions", this::revisions);
    routes.post("/api/servers/{server}/projects/{project}/revisions/{revision}/analyses", this::analyse);
    routes.put("/api/servers/{server}/projects/{project}/watch", this::turn);
    routes.get("/api/watches", this::watches);
  }

  private void projects(Context ctx) {
    String server = ctx.pathParam("server");
    List<ServedProject> projects = conversations.ask(server, ModelServer::projects);
    Map<Long, Watch> known = store.watches().list().stream().filter(w -> w.server().equals(server))
        .collect(Collectors.toMap(Watch::served, w -> w));
    JsonBodies.answer(ctx, 200,
        Map.of("projects", projects.stream().map(p -> JsonBodies.object("id", p.id(), "name", p.name(), "schema", p.schema(),
            "watched", known.containsKey(p.id()) && known.get(p.id()).on())).toList()));
  }

  private void revisions(Context ctx) {
    String server = ctx.pathParam("server");
    long project = number(ctx, "project");
    List<ServedRevision> revisions = conversations.ask(server, s -> s.revisions(project));
    Map<Long, WatchedRevision> watched = store.watches().revisions(server, project).stream()
        .collect(Collectors.toMap(r -> r.origin().revision(), r -> r));
    List<Map<String, Object>> rows = new ArrayList<>();
    for (ServedRevision r : revisions) {
      Map<String, Object> row =
          JsonBodies.object("id", r.id(), "number", r.number(), "comment", r.comment(), "created", r.created().toString());
      Optional.ofNullable(watched.get(r.id())).ifPresent(w -> row.put("stage", w.stage().word()));
      store.watches().done(server, project, r.id()).ifPresent(id -> row.put("analysis", id));
      rows.add(row);
    }
    JsonBodies.answer(ctx, 200, Map.of("revisions", rows));
  }

  /** Begins the analysis of a revision; the model is fetched when its turn comes. */
  private void analyse(Context ctx) {
    String server = ctx.pathParam("server");
    long project = number(ctx, "project");
    long revision = number(ctx, "revision");
    conversations.requireKnown(server);
    analyses.requireRoom();
    Origin origin = served.origin(server, project, revision);
    String id = Analyses.newId();
    StoredAnalysis begun = store.watches().begin(id, origin, List.of(download.file(id, origin)));
    analyses.begin(ctx, begun);
  }

  private void turn(Context ctx) throws IOException {
    String server = ctx.pathParam("server");
    long project = number(ctx, "project");
    JsonNode on = JsonBodies.body(ctx, options.limits().bodyBytes()).path("on");
    if (!on.isBoolean()) {
      throw HttpProblem.badRequest("body/value", "on must be true or false.");
    }
    conversations.requireKnown(server);
    if (watching.isEmpty()) {
      throw new HttpProblem(409, "watch/off", "This service was started without watching; its operator can start it with --watch.");
    }
    Optional<Watch> known = store.watches().get(server, project);
    // A server that is down can't tell the name; what is to be switched off is known already.
    String name = known.isPresent() && !on.booleanValue() ? known.get().name()
        : conversations.ask(server, s -> ServedModels.project(s, project)).name();
    Watch watch = store.watches().turn(server, project, name, on.booleanValue());
    watching.get().wake(server);
    JsonBodies.answer(ctx, 200, body(watch));
  }

  private void watches(Context ctx) {
    JsonBodies.answer(ctx, 200, Map.of("watches", store.watches().list().stream()
        .filter(w -> options.servers().names().contains(w.server())).filter(w -> w.on() || w.checked().isPresent()).map(this::body)
        .toList()));
  }

  private Map<String, Object> body(Watch w) {
    Map<String, Object> b = JsonBodies.object("server", w.server(), "project", w.served(), "name", w.name(), "on", w.on());
    w.checked().ifPresent(c -> b.put("checked", c));
    w.problem().ifPresent(p -> b.put("problem", JsonBodies.object("code", w.problemCode().orElse(""), "detail", p)));
    List<WatchedRevision> revisions = store.watches().revisions(w.server(), w.served());
    b.put("open", revisions.stream().filter(Watches::isOpen).count());
    revisions.stream().reduce((first, second) -> second).ifPresent(r -> b.put("last", last(r)));
    return b;
  }

  private static Map<String, Object> last(WatchedRevision r) {
    Map<String, Object> b =
        JsonBodies.object("revision", r.origin().revision(), "number", r.origin().number(), "comment", r.origin().comment(),
            "created", r.created(), "stage", r.stage().word());
    r.analysis().ifPresent(a -> b.put("analysis", a));
    r.problem().ifPresent(p -> b.put("problem", p));
    return b;
  }

  private static long number(Context ctx, String name) {
    String text = ctx.pathParam(name);
    if (!text.matches("[0-9]{1,18}")) {
      throw HttpProblem.notFound("Projects and revisions on servers have numbers.");
    }
    return Long.parseLong(text);
  }
}
