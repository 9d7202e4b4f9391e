package org.seamledger.http.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Semaphore;
import org.seamledger.graph.GraphQuery;
import org.seamledger.graph.QueryLimits;
import org.seamledger.graph.QueryRefusedException;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.job.DrawingBoard;
import org.seamledger.http.job.Recent;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;

/** Queries of a result's graph, by the SPARQL 1.1 Protocol: the body is the query. Few at once, each within limits. */
public final class QueryApi {

  private static final String TYPE = "application/sparql-query";
  private static final int AT_ONCE = 2;

  private final Store store;
  private final DrawingBoard board;
  private final int mostBytes;
  private final Recent<GraphQuery> graphs = new Recent<>();
  private final Semaphore turns = new Semaphore(AT_ONCE);

  /** @param mostBytes of a query */
  public QueryApi(Store store, DrawingBoard board, int mostBytes) {
    this.store = store;
    this.board = board;
    this.mostBytes = mostBytes;
  }

  public void install(RoutesConfig routes) {
    routes.post("/api/analyses/{id}/query", this::query);
  }

  private void query(Context ctx) throws IOException {
    StoredAnalysis analysis = store.analyses().get(ctx.pathParam("id"));
    String hash = store.analyses().ledgerHash(analysis.id());
    String query = text(ctx);
    boolean isCsv = String.valueOf(ctx.header("Accept")).contains("text/csv");
    ByteArrayOutputStream answer = new ByteArrayOutputStream();
    if (!turns.tryAcquire()) {
      throw new HttpProblem(503, "busy", "The server answers other queries; try again in a moment.");
    }
    try {
      GraphQuery.check(query, "query");
      graph(analysis, hash).answer(query, "query", isCsv ? GraphQuery.AnswerForm.csv : GraphQuery.AnswerForm.json, QueryLimits.SERVED,
          answer);
    } catch (QueryRefusedException e) {
      throw e.reason() == QueryRefusedException.Reason.WRONG ? HttpProblem.badRequest("query/refused", e.getMessage())
          : new HttpProblem(422, "query/too-much", e.getMessage());
    } finally {
      turns.release();
    }
    ctx.header("Cache-Control", "no-cache").contentType(isCsv ? "text/csv; charset=utf-8" : "application/sparql-results+json")
        .result(answer.toByteArray());
  }

  private GraphQuery graph(StoredAnalysis analysis, String hash) {
    GraphQuery graph = graphs.get(hash);
    if (graph == null) {
      graph = board.of(analysis, hash).graph().orElseThrow(() -> HttpProblem.notFound("This analysis has no graph."));
      graphs.put(hash, graph);
    }
    return graph;
  }

  private String text(Context ctx) {
    if (ctx.contentType() == null || !ctx.contentType().split(";")[0].trim().equalsIgnoreCase(TYPE)) {
      throw new HttpProblem(415, "body/type", "Send the query as " + TYPE + ".");
    }
    byte[] bytes;
    try {
      bytes = ctx.bodyInputStream().readNBytes(mostBytes + 1);
    } catch (IOException | RuntimeException e) {
      throw HttpProblem.badRequest("body/cut", "The body did not arrive whole.");
    }
    if (bytes.length > mostBytes) {
      throw new HttpProblem(413, "body/too-large", "The query has more than " + mostBytes + " bytes.");
    }
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(java.nio.ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw HttpProblem.badRequest("query/refused", "The query is not UTF-8.");
    }
  }
}
