package org.seamledger.http.answer;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import jakarta.servlet.http.HttpServletResponse;
import java.io.EOFException;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.seamledger.finding.FullDisk;
import org.seamledger.ledger.LedgerException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The one place where something that went wrong becomes an answer: {@code application/problem+json} (RFC 9457). */
public final class Problems {

  public static final String TYPE = "application/problem+json";
  private static final Logger LOG = LoggerFactory.getLogger(Problems.class);
  private static final Map<Integer, String> TITLES = Map.ofEntries(Map.entry(400, "Bad request"), Map.entry(401, "Token needed"),
      Map.entry(403, "Refused"), Map.entry(404, "Not found"), Map.entry(405, "Method not allowed"), Map.entry(409, "Conflict"),
      Map.entry(411, "Length needed"), Map.entry(413, "Too large"), Map.entry(415, "Wrong kind of content"),
      Map.entry(421, "Wrong host"), Map.entry(422, "Cannot be done"), Map.entry(429, "Too many at once"), Map.entry(500, "Internal fault"),
      Map.entry(502, "A server of models failed"), Map.entry(504, "A server of models did not answer"), Map.entry(503, "Busy"),
      Map.entry(507, "Storage is full"));

  private Problems() {
  }

  public static void install(RoutesConfig routes) {
    routes.exception(Exception.class, (e, ctx) -> answer(ctx, of(e, ctx)));
    routes.exception(HttpResponseException.class, (e, ctx) -> answer(ctx, of(e, ctx)));
  }

  private static HttpProblem of(Exception e, Context ctx) {
    if (e instanceof HttpProblem p) {
      return p;
    }
    if (e instanceof LedgerException l) {
      return ofLedger(l);
    }
    if (e instanceof JsonProcessingException) {
      return HttpProblem.badRequest("body/not-json", "The body is not the JSON that this address takes; see /openapi.json.");
    }
    if (e instanceof HttpResponseException h) {
      return new HttpProblem(h.getStatus(), code(h.getStatus()), detail(h.getStatus(), ctx));
    }
    if (isGone(e)) {
      return cut();
    }
    if (FullDisk.causes(e)) {
      LOG.atError().addKeyValue("path", Names.forLog(ctx.path())).log("no room left on the disk");
      return HttpProblem.diskFull();
    }
    LOG.atError().addKeyValue("method", ctx.method()).addKeyValue("path", Names.forLog(ctx.path())).setCause(e).log("fault");
    return internal();
  }

  private static HttpProblem cut() {
    return HttpProblem.badRequest("body/cut", "The request did not arrive whole.");
  }

  /** For a request that broke off or is no HTTP: the client's fault, and not worth a trace. */
  public static void answerCut(Context ctx) {
    answer(ctx, cut());
  }

  /** Whether the client went away. */
  private static boolean isGone(Throwable e) {
    for (Throwable t = e; t != null; t = t.getCause()) {
      if (t instanceof EOFException) {
        return true;
      }
    }
    return false;
  }

  private static HttpProblem internal() {
    return new HttpProblem(500, "internal", "The program failed at this; its log says where. Nothing was changed.");
  }

  /** What is thrown and is no exception, such as a class that is missing, goes past the handlers of exceptions. */
  public static void answer(HttpServletResponse response, Error e) {
    LOG.error("fault", e);
    try {
      response.setStatus(500);
      response.setContentType(TYPE);
      response.getOutputStream().write(JsonBodies.bytes(body(internal())));
    } catch (IOException | IllegalStateException ended) {
      // The answer had begun, or nobody waits for it any more.
    }
  }

  private static HttpProblem ofLedger(LedgerException e) {
    return switch (e.reason()) {
      case NOT_FOUND -> HttpProblem.notFound(e.getMessage());
      case CONFLICT -> new HttpProblem(409, "conflict", e.getMessage());
      case INVALID -> new HttpProblem(422, "invalid", e.getMessage());
      case STORAGE -> logged(e, "storage", "The storage cannot be used now; the log says why.");
      case FULL -> logged(e, "storage/full", "There is no room left to store this, and it was not saved. Whoever runs this server"
          + " has to make room; then try again.");
      case READ_ONLY -> logged(e, "storage/read-only", "The storage takes no changes now, and this was not saved. Whoever runs this server"
          + " finds the reason in the log.");
      case IN_USE -> new HttpProblem(503, "storage/in-use", "The database is in use by another server now, so this one can neither read nor"
          + " save. Work on with the other server, or have it stopped. The log says which database.");
      case UNREACHABLE ->
          new HttpProblem(503, "storage/unreachable", "The database cannot be reached now; try again in a while. The log says why.");
    };
  }

  /** The message names the cause; the trace, with the statement that failed, is for who asks for it by the log's level. */
  private static HttpProblem logged(LedgerException e, String code, String detail) {
    LOG.error("{}", e.getMessage());
    LOG.debug("storage fault", e);
    return new HttpProblem(503, code, detail);
  }

  /** The body for what the HTTP server itself refused. */
  public static String ofServer(int status) {
    return JsonBodies.text(body(new HttpProblem(status, code(status), "The request is not one that this server can take.")));
  }

  private static String code(int status) {
    return switch (status) {
      case 404 -> "not-found";
      case 405 -> "method";
      case 413 -> "too-large";
      default -> "http-" + status;
    };
  }

  private static String detail(int status, Context ctx) {
    return switch (status) {
      case 404 -> "There is nothing at this address; see /openapi.json.";
      case 405 -> "This address does not take " + ctx.method() + "; see /openapi.json.";
      case 413 -> "The body is too large.";
      default -> "The request cannot be answered.";
    };
  }

  private static Map<String, Object> body(HttpProblem p) {
    Map<String, Object> body = new LinkedHashMap<>();
    body.put("type", "about:blank");
    body.put("title", TITLES.getOrDefault(p.status(), "Problem"));
    body.put("status", p.status());
    body.put("code", p.code());
    body.put("detail", p.getMessage());
    return body;
  }

  static void answer(Context ctx, HttpProblem p) {
    ctx.status(p.status()).header("Cache-Control", "no-store");
    if (p.status() == 401) {
      ctx.header("WWW-Authenticate", "Bearer");
    }
    ctx.result(JsonBodies.bytes(body(p))).contentType(TYPE);
  }
}
