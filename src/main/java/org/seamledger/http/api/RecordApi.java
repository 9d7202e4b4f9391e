package org.seamledger.http.api;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import org.seamledger.export.RecordJson;
import org.seamledger.export.submittal.RecordPdf;
import org.seamledger.http.answer.CachedBodies;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.answer.PageFiles;
import org.seamledger.http.job.DrawingBoard;
import org.seamledger.http.setting.Limits;
import org.seamledger.journal.EventDraft;
import org.seamledger.journal.EventKind;
import org.seamledger.ledger.RoofSheet;
import org.seamledger.ledger.OwnersRecord;
import org.seamledger.ledger.SiteLinks;
import org.seamledger.ledger.SiteRecords;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;

/** The record of what is done on a roof: how it stands, one more event, the sheets that a telephone keeps, the record for the owner. */
public final class RecordApi {

  private final Store store;
  private final DrawingBoard board;
  private final Limits limits;

  public RecordApi(Store store, DrawingBoard board, Limits limits) {
    this.store = store;
    this.board = board;
    this.limits = limits;
  }

  public void install(RoutesConfig routes) {
    routes.get("/api/analyses/{id}/record", this::state);
    routes.put("/api/analyses/{id}/record/events/{event}", this::event);
    routes.get("/api/analyses/{id}/roof", this::roof);
    routes.get("/api/analyses/{id}/record.json", this::json);
    routes.get("/api/analyses/{id}/record.pdf", this::pdf);
    routes.get("/api/link", this::link);
  }

  /** Only what a telephone shows: hashes stay out of it. */
  private void state(Context ctx) throws IOException {
    byte[] plain = RecordJson.state(store.records().of(ctx.pathParam("id")));
    CachedBodies.send(ctx.header("Cache-Control", "no-cache"), plain, PageFiles.gzip(plain), PageFiles.etag(plain), "application/json");
  }

  private void event(Context ctx) throws IOException {
    JsonNode b = JsonBodies.body(ctx, limits.bodyBytes());
    EventDraft draft = new EventDraft(ctx.pathParam("event"), JsonBodies.text(b, "kind"), JsonBodies.text(b, "place"),
        JsonBodies.text(b, "point"), JsonBodies.text(b, "by"), JsonBodies.text(b, "at"), base(b), JsonBodies.text(b, "after"),
        JsonBodies.text(b, "text"));
    LinkGrant.require(ctx, EventKind.of(draft.kind()).orElse(EventKind.NOTE));
    SiteRecords.Kept kept = store.records().add(ctx.pathParam("id"), draft, LinkGrant.id(ctx));
    JsonBodies.answer(ctx, kept.isNew() ? 201 : 200, Map.of("id", kept.event().id(), "seq", kept.event().seq()));
  }

  private static long base(JsonNode body) {
    JsonNode v = body.path("base");
    if (!v.isIntegralNumber() || v.longValue() < 0) {
      throw HttpProblem.badRequest("body/value", "base must be the number of the last event that was seen, 0 for none.");
    }
    return v.longValue();
  }

  /** Everything that a telephone needs to work without a connection, but the drawings. */
  private void roof(Context ctx) {
    StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
    byte[] plain = RoofSheet.json(analysis.id(), analysis.title(), store.analyses().ledger(analysis.id()),
        store.records().places(analysis.id()));
    CachedBodies.send(ctx.header("Cache-Control", "no-cache"), plain, PageFiles.gzip(plain), PageFiles.etag(plain), "application/json");
  }

  private void json(Context ctx) throws IOException {
    byte[] plain = RecordJson.whole(OwnersRecord.of(store, ctx.pathParam("id")));
    ctx.header("Content-Disposition", "attachment; filename=\"record.json\"").header("Cache-Control", "no-cache");
    CachedBodies.send(ctx, plain, PageFiles.gzip(plain), PageFiles.etag(plain), "application/json");
  }

  private void pdf(Context ctx) {
    OwnersRecord record = OwnersRecord.of(store, ctx.pathParam("id"));
    byte[] pdf = board.inTurn(() -> {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      try {
        RecordPdf.write(record, sha -> store.photos().bytes(record.analysis().project(), sha), out);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return out.toByteArray();
    });
    ctx.header("Content-Disposition", "attachment; filename=\"record.pdf\"").header("Cache-Control", "no-cache").result(pdf)
        .contentType("application/pdf");
  }

  /** What the link that a request shows lets its holder do, and the newest revision of its roof. */
  private void link(Context ctx) {
    SiteLinks.Link link = LinkGrant.of(ctx);
    if (link == null) {
      throw HttpProblem.notFound("This request shows no link.");
    }
    Optional<StoredAnalysis> newest = store.analyses().ofProject(link.project()).stream().filter(a -> a.state().word().equals("done"))
        .reduce((a, b) -> b);
    StoredAnalysis analysis = newest.orElseThrow(() -> new HttpProblem(409, "conflict", "This roof has no result yet."));
    JsonBodies.answer(ctx, 200, JsonBodies.object("analysis", analysis.id(), "scope", link.scope().word(), "name", link.name(), "expires",
        link.expires()));
  }
}
