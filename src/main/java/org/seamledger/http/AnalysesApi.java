package org.seamledger.http;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import org.seamledger.ledger.Analyses;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.ledger.StoredLedger;

/** Analyses: begin, look at, stop, fetch the result. */
final class AnalysesApi {

  private final Store store;
  private final Jobs jobs;
  private final Uploads uploads;
  private final ServedModels served;
  private final Samples samples;
  private final Limits limits;
  private final String version;
  private final Recent<LedgerParts> recent = new Recent<>();

  AnalysesApi(Store store, Jobs jobs, Uploads uploads, ServedModels served, Samples samples, Limits limits, String version) {
    this.store = store;
    this.jobs = jobs;
    this.uploads = uploads;
    this.served = served;
    this.samples = samples;
    this.limits = limits;
    this.version = version;
  }

  void install(RoutesConfig routes) {
    routes.post("/api/analyses", this::upload);
    routes.get("/api/analyses",
        ctx -> JsonBodies.answer(ctx, 200, Map.of("analyses", store.analyses().list().stream().map(this::body).toList())));
    routes.get("/api/analyses/{id}", ctx -> JsonBodies.answer(ctx, 200, body(store.analyses().get(ctx.pathParam("id")))));
    routes.delete("/api/analyses/{id}", this::delete);
    routes.get("/api/analyses/{id}/ledger", this::ledger);
    routes.get("/api/analyses/{id}/outline", this::outline);
    routes.get("/api/analyses/{id}/junctions/{junction}", this::junction);
    routes.post("/api/analyses/{id}/recompute", this::recompute);
    routes.post("/api/analyses/{id}/place", this::place);
    routes.get("/api/samples", ctx -> JsonBodies.answer(ctx, 200, Map.of("samples", samples.list())));
    routes.post("/api/samples/{name}/analyses", this::sample);
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
      begin(ctx, upload.served().isEmpty()
          ? store.analyses().add(id, upload.project(), upload.title(), placed(upload.files(), upload), "") : together(id, upload));
      kept = true;
    } finally {
      if (!kept) {
        uploads.remove(id);
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

  private void sample(Context ctx) {
    requireRoom();
    StoredFile file = samples.file(ctx.pathParam("name"));
    begin(ctx, store.analyses().add(Analyses.newId(), Optional.empty(), file.name(), List.of(file), ""));
  }

  /** Runs the models of an analysis again under another roof system, as the next revision of its project. */
  private void recompute(Context ctx) throws IOException {
    StoredAnalysis old = store.analyses().get(ctx.pathParam("id"));
    JsonNode system = JsonBodies.body(ctx, limits.bodyBytes()).path("system");
    if (!system.isObject()) {
      throw HttpProblem.badRequest("body/value", "system must be an object with the values to use.");
    }
    requireRoom();
    String id = Analyses.newId();
    List<StoredFile> files = new ArrayList<>(old.files().stream().filter(StoredFile::isModel).toList());
    files.add(uploads.writeSystem(id, JsonBodies.bytes(system)));
    begin(ctx, store.analyses().add(id, Optional.of(old.project()), old.title(), files, ""));
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
    answer.put("links", links(analysis.id()));
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
      JsonBodies.answer(ctx, 200, body(store.analyses().get(id)));
    } else {
      throw new HttpProblem(409, "conflict", "This analysis has ended. To remove it with its reviews, add ?remove=true.");
    }
  }

  /** A later revision may read the same files again. */
  private void removeUnused(StoredAnalysis removed) {
    boolean used = store.analyses().list().stream().flatMap(a -> a.files().stream()).map(StoredFile::path)
        .anyMatch(p -> removed.files().stream().anyMatch(f -> f.path().equals(p)));
    if (!used) {
      uploads.remove(removed.id());
    }
  }

  private void ledger(Context ctx) {
    String id = ctx.pathParam("id");
    String etag = "\"" + store.analyses().ledgerHash(id) + "\"";
    ctx.header("Cache-Control", "no-cache");
    if (CachedBodies.has(ctx.header("If-None-Match"), etag)) {
      ctx.header("ETag", etag).header("Vary", "Accept-Encoding").status(304);
      return;
    }
    StoredLedger stored = store.analyses().ledger(id);
    byte[] plain = CachedBodies.takesGzip(ctx) ? new byte[0] : unzip(stored.gzip());
    CachedBodies.send(ctx, plain, stored.gzip(), etag, "application/json");
  }

  private void outline(Context ctx) {
    String hash = store.analyses().ledgerHash(ctx.pathParam("id"));
    String etag = PageFiles.etag((version + " outline " + hash).getBytes(StandardCharsets.UTF_8));
    ctx.header("Cache-Control", "no-cache");
    if (CachedBodies.has(ctx.header("If-None-Match"), etag)) {
      ctx.header("ETag", etag).header("Vary", "Accept-Encoding").status(304);
      return;
    }
    byte[] gzip = parts(ctx.pathParam("id"), hash).outline();
    CachedBodies.send(ctx, CachedBodies.takesGzip(ctx) ? new byte[0] : unzip(gzip), gzip, etag, "application/json");
  }

  private void junction(Context ctx) {
    String hash = store.analyses().ledgerHash(ctx.pathParam("id"));
    byte[] junction = parts(ctx.pathParam("id"), hash).junction(ctx.pathParam("junction"))
        .orElseThrow(() -> HttpProblem.notFound("This analysis has no junction of that id."));
    ctx.header("Cache-Control", "no-cache");
    CachedBodies.send(ctx, junction, CachedBodies.takesGzip(ctx) ? PageFiles.gzip(junction) : junction, PageFiles.etag(junction),
        "application/json");
  }

  /** One reading of a result at a time: two would only take twice the memory. */
  private LedgerParts parts(String id, String hash) {
    synchronized (recent) {
      LedgerParts parts = recent.get(hash);
      if (parts == null) {
        parts = LedgerParts.of(store.analyses().ledger(id).gzip());
        recent.put(hash, parts);
      }
      return parts;
    }
  }

  private static byte[] unzip(byte[] gzip) {
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(gzip))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether the result follows what people chose by hand. */
  private Map<String, Object> decisions(String id) {
    Choices.Standing standing = store.choices().of(id);
    Map<String, Object> d =
        JsonBodies.object("inForce", standing.inForce().size(), "stale", standing.stale(), "followed", standing.followed());
    jobs.trouble(id).ifPresent(t -> d.put("problem", t));
    return d;
  }

  static Map<String, String> links(String id) {
    String self = "/api/analyses/" + id;
    Map<String, String> links = new LinkedHashMap<>();
    links.put("self", self);
    links.put("events", self + "/events");
    links.put("ledger", self + "/ledger");
    links.put("outline", self + "/outline");
    links.put("reviews", self + "/reviews");
    links.put("decisions", self + "/decisions");
    links.put("plan", self + "/plan.svg");
    links.put("cuts", self + "/cuts.csv");
    links.put("report", self + "/report.txt");
    links.put("page", "/?analysis=" + id);
    return links;
  }

  private static Map<String, Object> file(StoredFile f) {
    Map<String, Object> b = JsonBodies.object("name", f.name(), "bytes", f.bytes(), "role", f.role());
    f.origin().ifPresent(o -> b.put("origin", ServedModels.body(o)));
    f.placement().ifPresent(p -> b.put("placement", p));
    return b;
  }

  Map<String, Object> body(StoredAnalysis a) {
    Jobs.Progress p = jobs.progress(a);
    Map<String, Object> b = new LinkedHashMap<>();
    b.put("id", a.id());
    b.put("project", a.project());
    b.put("revision", a.revision().number());
    b.put("run", a.revision().run());
    b.put("label", a.revision().label());
    b.put("words", a.revision().words());
    a.revision().origin().ifPresent(o -> b.put("origin", ServedModels.body(o)));
    b.put("title", a.title());
    b.put("state", a.state() == State.QUEUED && p.state() == State.RUNNING ? p.state().word() : a.state().word());
    b.put("progress", JsonBodies.object("stage", p.stage(), "fraction", p.fraction()));
    b.put("files", a.files().stream().map(AnalysesApi::file).toList());
    b.put("created", a.created());
    a.finished().ifPresent(f -> b.put("finished", f));
    a.problem().ifPresent(m -> b.put("problem", JsonBodies.object("code", a.problemCode().orElse(""), "detail", m)));
    if (a.state() == State.DONE) {
      b.put("ledgerSha256", store.analyses().ledgerHash(a.id()));
      b.put("decisions", decisions(a.id()));
    }
    b.put("links", links(a.id()));
    return b;
  }
}
