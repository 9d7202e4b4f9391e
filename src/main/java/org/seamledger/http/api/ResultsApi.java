package org.seamledger.http.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.function.Function;
import java.util.zip.GZIPInputStream;
import org.seamledger.http.answer.CachedBodies;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.PageFiles;
import org.seamledger.http.job.Recent;
import org.seamledger.ledger.LedgerParts;
import org.seamledger.ledger.RoofThumbnail;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredLedger;

/** Results of analyses: whole, as an outline, the panels, one junction. */
public final class ResultsApi {

  private final Store store;
  private final String version;
  private final Recent<LedgerParts> recent = new Recent<>();

  public ResultsApi(Store store, String version) {
    this.store = store;
    this.version = version;
  }

  public void install(RoutesConfig routes) {
    routes.get("/api/analyses/{id}/ledger", this::ledger);
    routes.get("/api/analyses/{id}/outline", ctx -> part(ctx, "outline", LedgerParts::outline));
    routes.get("/api/analyses/{id}/panels", ctx -> part(ctx, "panels", LedgerParts::panels));
    routes.get("/api/analyses/{id}/junctions/{junction}", this::junction);
    routes.get("/api/analyses/{id}/thumbnail.svg", this::thumbnail);
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

  /** A small picture of the roof from above. */
  private void thumbnail(Context ctx) {
    String id = ctx.pathParam("id");
    String etag = PageFiles.etag((version + " thumbnail " + store.analyses().ledgerHash(id)).getBytes(StandardCharsets.UTF_8));
    ctx.header("Cache-Control", "no-cache");
    if (CachedBodies.has(ctx.header("If-None-Match"), etag)) {
      ctx.header("ETag", etag).header("Vary", "Accept-Encoding").status(304);
      return;
    }
    byte[] svg = RoofThumbnail.svg(store.analyses().ledger(id)).getBytes(StandardCharsets.UTF_8);
    CachedBodies.send(ctx, svg, CachedBodies.takesGzip(ctx) ? PageFiles.gzip(svg) : svg, etag, "image/svg+xml; charset=utf-8");
  }

  private void part(Context ctx, String name, Function<LedgerParts, byte[]> part) {
    String hash = store.analyses().ledgerHash(ctx.pathParam("id"));
    String etag = PageFiles.etag((version + ' ' + name + ' ' + hash).getBytes(StandardCharsets.UTF_8));
    ctx.header("Cache-Control", "no-cache");
    if (CachedBodies.has(ctx.header("If-None-Match"), etag)) {
      ctx.header("ETag", etag).header("Vary", "Accept-Encoding").status(304);
      return;
    }
    byte[] gzip = part.apply(parts(ctx.pathParam("id"), hash));
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

  private LedgerParts parts(String id, String hash) {
    return recent.get(hash, () -> LedgerParts.of(store.analyses().ledger(id).gzip()));
  }

  private static byte[] unzip(byte[] gzip) {
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(gzip))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
