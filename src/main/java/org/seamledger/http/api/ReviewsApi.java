package org.seamledger.http.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.export.DecisionFile;
import org.seamledger.http.answer.CachedBodies;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.answer.PageFiles;
import org.seamledger.http.job.Jobs;
import org.seamledger.http.setting.Limits;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.FindingMark;
import org.seamledger.ledger.Review;
import org.seamledger.ledger.Store;

/** What people say about junctions and findings. */
public final class ReviewsApi {

  private final Store store;
  private final Jobs jobs;
  private final Limits limits;

  public ReviewsApi(Store store, Jobs jobs, Limits limits) {
    this.store = store;
    this.jobs = jobs;
    this.limits = limits;
  }

  public void install(RoutesConfig routes) {
    routes.get("/api/analyses/{id}/reviews", this::list);
    routes.put("/api/analyses/{id}/reviews/{junction}", this::putReview);
    routes.get("/api/analyses/{id}/decisions", this::decisions);
    routes.put("/api/analyses/{id}/findings/{finding}", this::putFinding);
    routes.post("/api/analyses/{id}/findings/{finding}/comments", this::comment);
  }

  private void list(Context ctx) {
    String id = ctx.pathParam("id");
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("reviews", store.reviews().of(id));
    answer.put("findings", store.reviews().findings(id));
    byte[] plain = JsonBodies.bytes(answer);
    CachedBodies.send(ctx.header("Cache-Control", "no-cache"), plain, PageFiles.gzip(plain), PageFiles.etag(plain), "application/json");
  }

  private void putReview(Context ctx) throws IOException {
    JsonNode b = JsonBodies.body(ctx, limits.bodyBytes());
    Review review =
        new Review(ctx.pathParam("junction"), JsonBodies.text(b, "state"), JsonBodies.text(b, "note"), JsonBodies.text(b, "kind"),
            JsonBodies.text(b, "detail"), JsonBodies.text(b, "reason"), false, false, JsonBodies.version(b), "");
    String id = ctx.pathParam("id");
    Review stored = store.reviews().put(id, review);
    if (!store.choices().of(id).followed()) {
      jobs.follow(id);
    }
    JsonBodies.answer(ctx, 200, stored);
  }

  /** What people decided, and the findings they accepted, as a file that the command line takes: this result without this server. */
  private void decisions(Context ctx) {
    Choices.Standing standing = store.choices().of(ctx.pathParam("id"));
    byte[] file = DecisionFile.bytes(standing.inForce(), store.reviews().accepted(ctx.pathParam("id")));
    ctx.header("Content-Disposition", "attachment; filename=\"decisions.json\"").header("Cache-Control", "no-cache");
    CachedBodies.send(ctx, file, PageFiles.gzip(file), PageFiles.etag(file), "application/json");
  }

  private void putFinding(Context ctx) throws IOException {
    JsonNode b = JsonBodies.body(ctx, limits.bodyBytes());
    FindingMark mark = new FindingMark(ctx.pathParam("finding"), 0, JsonBodies.text(b, "state"), JsonBodies.text(b, "reason"),
        JsonBodies.text(b, "acceptedBy"), "", JsonBodies.text(b, "assignee"), JsonBodies.version(b), "", List.of());
    JsonBodies.answer(ctx, 200, store.reviews().put(ctx.pathParam("id"), mark));
  }

  private void comment(Context ctx) throws IOException {
    JsonNode b = JsonBodies.body(ctx, limits.bodyBytes());
    JsonBodies.answer(ctx, 201,
        store.reviews().comment(ctx.pathParam("id"), ctx.pathParam("finding"), JsonBodies.text(b, "author"), JsonBodies.text(b, "text")));
  }
}
