package org.seamledger.http.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.answer.Names;
import org.seamledger.http.setting.Limits;
import org.seamledger.journal.LinkScope;
import org.seamledger.ledger.SiteLinks;
import org.seamledger.ledger.Store;

/** The links to one roof: the operator makes, lists and revokes them. */
public final class LinksApi {

  private static final int MOST_DAYS = 400;

  private final Store store;
  private final Limits limits;

  public LinksApi(Store store, Limits limits) {
    this.store = store;
    this.limits = limits;
  }

  public void install(RoutesConfig routes) {
    routes.get("/api/projects/{id}/links", ctx -> JsonBodies.answer(ctx, 200,
        Map.of("links",
            store.links().ofProject(store.analyses().project(ctx.pathParam("id")).id()).stream().map(LinksApi::body).toList())));
    routes.post("/api/projects/{id}/links", this::make);
    routes.delete("/api/links/{link}", ctx -> {
      store.links().revoke(ctx.pathParam("link"));
      ctx.status(204);
    });
  }

  private void make(Context ctx) throws IOException {
    JsonNode b = JsonBodies.body(ctx, limits.bodyBytes());
    String project = store.analyses().project(ctx.pathParam("id")).id();
    LinkScope scope = LinkScope.of(JsonBodies.text(b, "scope"))
        .orElseThrow(() -> new HttpProblem(422, "invalid", "scope must be one of view, tick, sign."));
    JsonNode days = b.path("days");
    if (!days.isInt() || days.intValue() < 1 || days.intValue() > MOST_DAYS) {
      throw new HttpProblem(422, "invalid", "days must be a whole number from 1 to " + MOST_DAYS + ".");
    }
    SiteLinks.Made made = store.links().make(project, scope, Names.clean(JsonBodies.text(b, "name")), Duration.ofDays(days.intValue()));
    Map<String, Object> answer = body(made.link());
    answer.put("token", made.token());
    answer.put("path", "/roof/#" + made.token());
    JsonBodies.answer(ctx, 201, answer);
  }

  private static Map<String, Object> body(SiteLinks.Link link) {
    return JsonBodies.object("id", link.id(), "scope", link.scope().word(), "name", link.name(), "created", link.created(), "expires",
        link.expires(), "revoked", link.revoked(), "valid", link.isValid(Instant.now()));
  }
}
