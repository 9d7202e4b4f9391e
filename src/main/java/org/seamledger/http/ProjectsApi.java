package org.seamledger.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.export.ChangesJson;
import org.seamledger.ledger.Comparison;
import org.seamledger.ledger.Project;
import org.seamledger.ledger.Store;

/** Projects, their revisions, and what changed from one to another. */
final class ProjectsApi {

  /** Stands in place of an analysis's id for its own result by the rules alone. */
  private static final String RULES = "rules";

  private final Store store;
  private final AnalysesApi analyses;
  private final Limits limits;

  ProjectsApi(Store store, AnalysesApi analyses, Limits limits) {
    this.store = store;
    this.analyses = analyses;
    this.limits = limits;
  }

  void install(RoutesConfig routes) {
    routes.get("/api/projects", ctx -> Json.answer(ctx, 200, Map.of("projects", store.analyses().projects())));
    routes.post("/api/projects", ctx -> Json.answer(ctx, 201, store.analyses().addProject(name(ctx))));
    routes.get("/api/projects/{id}", this::project);
    routes.patch("/api/projects/{id}", ctx -> Json.answer(ctx, 200, store.analyses().rename(ctx.pathParam("id"), name(ctx))));
    routes.get("/api/analyses/{id}/changes", this::changes);
  }

  private String name(Context ctx) throws IOException {
    String name = Names.clean(Json.text(Json.body(ctx, limits.bodyBytes()), "name"));
    if (name.isBlank()) {
      throw new Problem(422, "invalid", "A project needs a name.");
    }
    return name;
  }

  private void project(Context ctx) {
    Project p = store.analyses().project(ctx.pathParam("id"));
    Map<String, Object> b = new LinkedHashMap<>();
    b.put("id", p.id());
    b.put("name", p.name());
    b.put("created", p.created());
    b.put("revisions", p.revisions());
    b.put("analyses", store.analyses().ofProject(p.id()).stream().map(analyses::body).toList());
    Json.answer(ctx, 200, b);
  }

  private void changes(Context ctx) throws IOException {
    String from = ctx.queryParam("from");
    if (from == null) {
      throw Problem.badRequest("query/from", "Name the analysis to compare with: ?from=ID; or ?from=rules, what its decisions by hand changed.");
    }
    String to = ctx.pathParam("id");
    boolean rules = from.equals(RULES);
    Comparison c = rules ? store.choices().compareWithRules(to) : store.analyses().compare(from, to);
    ByteArrayOutputStream json = new ByteArrayOutputStream();
    ChangesJson.write(from, to, c, rules ? List.of() : store.choices().gone(from, c.removed()), json);
    byte[] plain = json.toByteArray();
    Bodies.send(ctx.header("Cache-Control", "no-cache"), plain, PageFiles.gzip(plain), PageFiles.etag(plain), "application/json");
  }
}
