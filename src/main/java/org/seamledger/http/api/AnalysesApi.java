package org.seamledger.http.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.answer.Names;
import org.seamledger.http.job.Jobs;
import org.seamledger.http.setting.Limits;
import org.seamledger.ledger.Analyses;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.SystemFormatException;

/** Analyses: begin, look at, stop. */
public final class AnalysesApi {

  private static final int PAGE = 50;
  private static final int MOST_ON_A_PAGE = 200;

  private final Store store;
  private final Jobs jobs;
  private final Uploads uploads;
  private final UploadFolder folder;
  private final ServedModels served;
  private final Samples samples;
  private final Limits limits;
  private final AnalysisBody body;

  public AnalysesApi(Store store, Jobs jobs, UploadFolder folder, ServedModels served, Samples samples, Limits limits) {
    this.store = store;
    this.jobs = jobs;
    this.folder = folder;
    this.uploads = new Uploads(folder, limits);
    this.served = served;
    this.samples = samples;
    this.limits = limits;
    this.body = new AnalysisBody(store, jobs);
  }

  public void install(RoutesConfig routes) {
    routes.post("/api/analyses", this::upload);
    routes.get("/api/analyses", this::list);
    routes.get("/api/analyses/{id}", ctx -> JsonBodies.answer(ctx, 200, body.of(store.analyses().get(ctx.pathParam("id")))));
    routes.delete("/api/analyses/{id}", this::delete);
    routes.post("/api/analyses/{id}/recompute", this::recompute);
    routes.post("/api/analyses/{id}/place", this::place);
    routes.get("/api/samples", ctx -> JsonBodies.answer(ctx, 200, Map.of("samples", samples.list())));
    routes.post("/api/samples/{name}/analyses", this::sample);
    routes.get("/api/samples/{name}/thumbnail.svg", this::thumbnail);
  }

  /** A page of all analyses, the newest first: {@code ?limit=} at most, after {@code ?offset=} newer ones. */
  private void list(Context ctx) {
    int limit = number(ctx, "limit", PAGE, MOST_ON_A_PAGE);
    int offset = number(ctx, "offset", 0, Integer.MAX_VALUE);
    List<StoredAnalysis> page = store.analyses().list(limit, offset);
    JsonBodies.answer(ctx, 200, JsonBodies.object("analyses", body.of(page), "total", store.analyses().count()));
  }

  private static int number(Context ctx, String name, int otherwise, int most) {
    String text = ctx.queryParam(name);
    if (text != null && !text.matches("[0-9]{1,9}")) {
      throw HttpProblem.badRequest("query/" + name, name + " must be a whole number, such as ?" + name + "=20.");
    }
    return text == null ? otherwise : Math.min(most, Integer.parseInt(text));
  }

  void requireRoom() {
    if (!jobs.hasRoom()) {
      throw new HttpProblem(503, "busy", "Too many analyses are waiting; try again when some are done.");
    }
  }

  private void upload(Context ctx) {
    requireRoom();
    String id = Analyses.newId();
    Uploads.Upload upload = uploads.receive(ctx, id);
    boolean kept = false;
    try {
      StoredAnalysis noted = upload.served().isEmpty()
          ? store.analyses().add(id, upload.project(), upload.title(), placed(upload.files(), upload), "") : together(id, upload);
      if (upload.priority() != 0) {
        store.analyses().prioritize(id, upload.priority());
      }
      begin(ctx, noted);
      kept = true;
    } finally {
      if (!kept) {
        folder.remove(id);
      }
    }
  }

  /**
   * Models of servers, with what was sent: the next revision of the project that was named, or else of the one with the same sources. One
   * revision on a server alone is that revision of its project.
   */
  private StoredAnalysis together(String id, Uploads.Upload upload) {
    List<StoredFile> models = new ArrayList<>(upload.files().stream().filter(StoredFile::isModel).toList());
    models.addAll(served.files(id, models.size(), upload.served()));
    List<StoredFile> files = new ArrayList<>(placed(models, upload));
    upload.files().stream().filter(f -> !f.isModel()).forEach(files::add);
    if (models.size() == 1 && upload.project().isEmpty()) {
      return store.watches().begin(id, models.get(0).origin().orElseThrow(), files);
    }
    Optional<String> project = upload.project().or(() -> store.analyses().bySources(files));
    return store.watches().beginTogether(id, project, Names.together(models), files);
  }

  private static List<StoredFile> placed(List<StoredFile> files, Uploads.Upload upload) {
    return upload.placements().map(list -> PlacementRequests.on(files, list)).orElse(files);
  }

  private void thumbnail(Context ctx) throws IOException {
    Path file = samples.thumbnail(ctx.pathParam("name"));
    if (!Files.isRegularFile(file)) {
      throw HttpProblem.notFound("This sample has no picture.");
    }
    ctx.header("Cache-Control", "no-cache").contentType("image/svg+xml; charset=utf-8").result(Files.readAllBytes(file));
  }

  private void sample(Context ctx) {
    requireRoom();
    StoredFile file = folder.within(samples.file(ctx.pathParam("name")));
    begin(ctx, store.analyses().add(Analyses.newId(), Optional.empty(), file.name(), List.of(file), ""));
  }

  /** Runs the models of an analysis again under another roof system, as the next revision of its project. */
  private void recompute(Context ctx) throws IOException {
    StoredAnalysis old = store.analyses().get(ctx.pathParam("id"));
    JsonNode system = JsonBodies.body(ctx, limits.bodyBytes()).path("system");
    if (!system.isObject()) {
      throw HttpProblem.badRequest("body/value", "system must be an object with the values to use.");
    }
    requireUsable(system);
    requireRoom();
    String id = Analyses.newId();
    List<StoredFile> files = new ArrayList<>(old.files().stream().filter(StoredFile::isModel).toList());
    files.add(folder.writeSystem(id, JsonBodies.bytes(system)));
    begin(ctx, store.analyses().add(id, Optional.of(old.project()), old.title(), files, ""));
  }

  /** A mistake in the form is refused before anything is computed or stored. */
  private static void requireUsable(JsonNode system) {
    try {
      RoofSystem.parse(JsonBodies.text(system), "system");
    } catch (SystemFormatException e) {
      throw new HttpProblem(422, "system/invalid", e.getMessage());
    }
  }

  /** Runs the models of an analysis again with some of them placed otherwise, as the next revision of its project. */
  private void place(Context ctx) throws IOException {
    StoredAnalysis old = store.analyses().get(ctx.pathParam("id"));
    List<StoredFile> files = PlacementRequests.on(old.files(), JsonBodies.body(ctx, limits.bodyBytes()).path("placements"));
    requireRoom();
    begin(ctx, store.analyses().add(Analyses.newId(), Optional.of(old.project()), old.title(), files, ""));
  }

  void begin(Context ctx, StoredAnalysis analysis) {
    jobs.submit(analysis);
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("id", analysis.id());
    answer.put("project", analysis.project());
    answer.put("links", AnalysisBody.links(analysis.id()));
    ctx.header("Location", "/api/analyses/" + analysis.id());
    JsonBodies.answer(ctx, 202, answer);
  }

  private void delete(Context ctx) {
    String id = ctx.pathParam("id");
    StoredAnalysis a = store.analyses().get(id);
    if ("true".equals(ctx.queryParam("remove"))) {
      store.analyses().remove(id);
      removeUnused(a);
      ctx.status(204);
    } else if (jobs.cancel(id)) {
      JsonBodies.answer(ctx, 200, body.of(store.analyses().get(id)));
    } else {
      throw new HttpProblem(409, "conflict", "This analysis has ended. To remove it with its reviews, add ?remove=true.");
    }
  }

  /** A later revision may read the same files again. */
  private void removeUnused(StoredAnalysis removed) {
    boolean used = store.analyses().list().stream().flatMap(a -> a.files().stream()).map(StoredFile::path)
        .anyMatch(p -> removed.files().stream().anyMatch(f -> f.path().equals(p)));
    if (!used) {
      folder.remove(removed.id());
    }
  }

}
