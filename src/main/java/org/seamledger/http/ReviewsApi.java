package org.seamledger.http;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.ledger.FindingMark;
import org.seamledger.ledger.Review;
import org.seamledger.ledger.Store;

/** What people say about junctions and findings. */
final class ReviewsApi {

  private final Store store;
  private final Limits limits;

  ReviewsApi(Store store, Limits limits) {
    this.store = store;
    this.limits = limits;
  }

  void install(RoutesConfig routes) {
    routes.get("/api/analyses/{id}/reviews", this::list);
    routes.put("/api/analyses/{id}/reviews/{junction}", this::putReview);
    routes.put("/api/analyses/{id}/findings/{finding}", this::putFinding);
    routes.post("/api/analyses/{id}/findings/{finding}/comments", this::comment);
  }

  private void list(Context ctx) {
    String id = ctx.pathParam("id");
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("reviews", store.reviews().of(id));
    answer.put("findings", store.reviews().findings(id));
    byte[] plain = Json.bytes(answer);
    Bodies.send(ctx.header("Cache-Control", "no-cache"), plain, PageFiles.gzip(plain), PageFiles.etag(plain), "application/json");
  }

  private void putReview(Context ctx) throws IOException {
    JsonNode b = Json.body(ctx, limits.bodyBytes());
    Review review = new Review(ctx.pathParam("junction"), Json.text(b, "state"), Json.text(b, "note"), Json.text(b, "kind"),
        Json.text(b, "detail"), Json.text(b, "reason"), false, Json.version(b), "");
    Json.answer(ctx, 200, store.reviews().put(ctx.pathParam("id"), review));
  }

  private void putFinding(Context ctx) throws IOException {
    JsonNode b = Json.body(ctx, limits.bodyBytes());
    FindingMark mark = new FindingMark(ctx.pathParam("finding"), 0, Json.text(b, "state"), Json.text(b, "reason"),
        Json.text(b, "assignee"), Json.version(b), "", List.of());
    Json.answer(ctx, 200, store.reviews().put(ctx.pathParam("id"), mark));
  }

  private void comment(Context ctx) throws IOException {
    JsonNode b = Json.body(ctx, limits.bodyBytes());
    Json.answer(ctx, 201, store.reviews().comment(ctx.pathParam("id"), ctx.pathParam("finding"), Json.text(b, "author"), Json.text(b, "text")));
  }
}
