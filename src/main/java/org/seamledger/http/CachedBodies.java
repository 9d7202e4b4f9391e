package org.seamledger.http;

import io.javalin.http.Context;
import java.util.Arrays;

/** Answers that a client may have already, or may want compressed. */
final class CachedBodies {

  private CachedBodies() {
  }

  /** Sends the compressed form where the client takes it; 304 where it has this very content. */
  static void send(Context ctx, byte[] plain, byte[] gzip, String etag, String type) {
    ctx.header("ETag", etag).header("Vary", "Accept-Encoding");
    if (has(ctx.header("If-None-Match"), etag)) {
      ctx.status(304);
    } else if (takesGzip(ctx)) {
      ctx.header("Content-Encoding", "gzip").contentType(type).result(gzip);
    } else {
      ctx.contentType(type).result(plain);
    }
  }

  static boolean takesGzip(Context ctx) {
    String accepted = ctx.header("Accept-Encoding");
    return accepted != null && Arrays.stream(accepted.split(",")).map(String::strip)
        .anyMatch(e -> e.equals("gzip") || e.startsWith("gzip;") && !e.replace(" ", "").matches("gzip;q=0(\\.0*)?"));
  }

  /** Whether a list of entity tags names this one, in the weak comparison that RFC 9110 asks for. */
  static boolean has(String ifNoneMatch, String etag) {
    return ifNoneMatch != null && (ifNoneMatch.strip().equals("*") || Arrays.stream(ifNoneMatch.split(",")).map(String::strip)
        .map(t -> t.startsWith("W/") ? t.substring(2) : t).anyMatch(etag::equals));
  }
}
