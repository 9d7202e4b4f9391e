package org.seamledger.http.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.Decision;
import org.seamledger.export.ChangesJson;
import org.seamledger.export.ChangesReport;
import org.seamledger.http.answer.CachedBodies;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.answer.Names;
import org.seamledger.http.answer.PageFiles;
import org.seamledger.http.setting.Limits;
import org.seamledger.ledger.Comparison;
import org.seamledger.ledger.Project;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;

/** Projects, their revisions, and what changed from one to another. */
public final class ProjectsApi {

  /** Stands in place of an analysis's id for its own result by the rules alone. */
  private static final String RULES = "rules";

  private final Store store;
  private final AnalysisBody analyses;
  private final Limits limits;

  public ProjectsApi(Store store, AnalysisBody analyses, Limits limits) {
    this.store = store;
    this.analyses = analyses;
    this.limits = limits;
  }

  public void install(RoutesConfig routes) {
    routes.get("/api/projects", ctx -> JsonBodies.answer(ctx, 200, Map.of("projects", store.analyses().projects())));
    routes.post("/api/projects", ctx -> JsonBodies.answer(ctx, 201, store.analyses().addProject(name(ctx))));
    routes.get("/api/projects/{id}", this::project);
    routes.patch("/api/projects/{id}", ctx -> JsonBodies.answer(ctx, 200, store.analyses().rename(ctx.pathParam("id"), name(ctx))));
    routes.get("/api/projects/{id}/changes", this::projectChanges);
    routes.get("/api/analyses/{id}/changes", this::changes);
    routes.get("/api/analyses/{id}/changes.txt", this::changesText);
  }

  private String name(Context ctx) throws IOException {
    String name = Names.clean(JsonBodies.text(JsonBodies.body(ctx, limits.bodyBytes()), "name"));
    if (name.isBlank()) {
      throw new HttpProblem(422, "invalid", "A project needs a name.");
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
    b.put("analyses", analyses.of(store.analyses().ofProject(p.id())));
    JsonBodies.answer(ctx, 200, b);
  }

  private void changes(Context ctx) throws IOException {
    String to = ctx.pathParam("id");
    if (RULES.equals(ctx.queryParam("from"))) {
      Comparison c = store.choices().compareWithRules(to);
      send(ctx, json(new ChangesJson.Compared(RULES, "the rules alone"), side(store.analyses().get(to)), c, List.of()), "application/json");
    } else {
      changes(ctx, before(ctx, to), store.analyses().get(to));
    }
  }

  /** The analysis that a request compares with: by its id, or by the number of its revision. */
  private StoredAnalysis before(Context ctx, String to) {
    String from = ctx.queryParam("from");
    String against = ctx.queryParam("against");
    if (from == null == (against == null)) {
      throw HttpProblem.badRequest("query/from",
          "Name the analysis to compare with: ?from=ID, or ?against=NUMBER, a revision of the same project;"
              + " or ?from=rules, what its decisions by hand changed.");
    }
    return from != null ? store.analyses().get(from)
        : store.analyses().numbered(store.analyses().get(to).project(), number("against", against));
  }

  private static int number(String name, String text) {
    if (text == null || !text.matches("[0-9]{1,9}")) {
      throw HttpProblem.badRequest("query/" + name, name + " must be the number of a revision, such as ?" + name + "=5.");
    }
    return Integer.parseInt(text);
  }

  private void projectChanges(Context ctx) throws IOException {
    String project = store.analyses().project(ctx.pathParam("id")).id();
    changes(ctx, store.analyses().numbered(project, number("from", ctx.queryParam("from"))),
        store.analyses().numbered(project, number("to", ctx.queryParam("to"))));
  }

  private void changes(Context ctx, StoredAnalysis from, StoredAnalysis to) throws IOException {
    Comparison c = store.analyses().compare(from.id(), to.id());
    send(ctx, json(side(from), side(to), c, store.choices().gone(from.id(), c.removed())), "application/json");
  }

  /** The same in the words of the report that a watch leaves. */
  private void changesText(Context ctx) {
    StoredAnalysis to = store.analyses().get(ctx.pathParam("id"));
    StoredAnalysis from = before(ctx, to.id());
    String text = ChangesReport.text(from.revision().words(), to.revision().words(), store.analyses().compare(from.id(), to.id()));
    send(ctx, text.getBytes(StandardCharsets.UTF_8), "text/plain; charset=utf-8");
  }

  private static ChangesJson.Compared side(StoredAnalysis a) {
    return new ChangesJson.Compared(a.id(), a.revision().words());
  }

  private static byte[] json(ChangesJson.Compared from, ChangesJson.Compared to, Comparison c, List<Decision> gone) throws IOException {
    ByteArrayOutputStream json = new ByteArrayOutputStream();
    ChangesJson.write(from, to, c, gone, json);
    return json.toByteArray();
  }

  private static void send(Context ctx, byte[] plain, String type) {
    CachedBodies.send(ctx.header("Cache-Control", "no-cache"), plain, PageFiles.gzip(plain), PageFiles.etag(plain), type);
  }
}
