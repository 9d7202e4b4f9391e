package org.seamledger.graph;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.apache.jena.graph.Graph;
import org.apache.jena.query.ARQ;
import org.apache.jena.query.Query;
import org.apache.jena.query.QueryCancelledException;
import org.apache.jena.riot.resultset.ResultSetLang;
import org.apache.jena.riot.rowset.RowSetWriter;
import org.apache.jena.riot.rowset.RowSetWriterRegistry;
import org.apache.jena.riot.Lang;
import org.apache.jena.sparql.core.DatasetGraphFactory;
import org.apache.jena.sparql.core.Var;
import org.apache.jena.sparql.engine.binding.Binding;
import org.apache.jena.sparql.exec.QueryExec;
import org.apache.jena.sparql.exec.RowSet;
import org.apache.jena.sparql.exec.RowSetStream;
import org.seamledger.takeoff.Takeoff;

/** Answers queries from a takeoff's graph, within limits. May be asked from several threads at once. */
public final class GraphQuery {

  /** Forms of an answer, as the W3C has them. */
  public enum AnswerForm {
    csv, json
  }

  private final Graph graph;

  public GraphQuery(Takeoff takeoff) {
    this.graph = TakeoffGraph.of(takeoff);
  }

  /** @throws QueryRefusedException where a query may not be asked of any graph */
  public static void check(String text, String name) {
    QueryGuard.check(text, name);
  }

  /**
   * Asks a query and writes its whole answer.
   *
   * @param name what the query is called in messages
   * @throws QueryRefusedException where it may not be asked or took too much; nothing has been written then
   */
  public void answer(String text, String name, AnswerForm form, QueryLimits limits, OutputStream out) throws IOException {
    Query query = QueryGuard.check(text, name);
    try (QueryExec exec = exec(query, limits)) {
      AllocationWatch watch = new AllocationWatch(limits.bytes(), exec::abort);
      try {
        if (query.isAskType()) {
          writer(form).write(out, exec.ask(), ARQ.getContext());
        } else {
          writer(form).write(out, rows(exec.select(), limits), ARQ.getContext());
        }
      } finally {
        watch.close();
      }
    } catch (QueryCancelledException e) {
      throw tooMuch("the query took longer than " + limits.duration().toSeconds() + " s, or more memory than " + (limits.bytes() >> 20)
          + " MiB");
    } catch (OutOfMemoryError | StackOverflowError e) {
      throw tooMuch("the query took more memory than there is");
    }
    out.flush();
  }

  private QueryExec exec(Query query, QueryLimits limits) {
    return QueryExec.newBuilder().dataset(DatasetGraphFactory.wrap(graph)).query(query).set(ARQ.httpServiceAllowed, false)
        .set(ARQ.enablePropertyFunctions, false).timeout(limits.duration().toMillis(), TimeUnit.MILLISECONDS).build();
  }

  private static RowSetWriter writer(AnswerForm form) {
    Lang lang = form == AnswerForm.csv ? ResultSetLang.RS_CSV : ResultSetLang.RS_JSON;
    return RowSetWriterRegistry.getFactory(lang).create(lang);
  }

  private static QueryRefusedException tooMuch(String message) {
    return new QueryRefusedException(QueryRefusedException.Reason.TOO_MUCH, message);
  }

  private static RowSet rows(RowSet from, QueryLimits limits) {
    List<Var> names = from.getResultVars();
    List<Binding> rows = new ArrayList<>();
    while (from.hasNext()) {
      if (rows.size() == limits.rows()) {
        throw tooMuch("the answer has more than " + limits.rows() + " rows; ask for fewer, such as by LIMIT");
      }
      rows.add(from.next());
    }
    return RowSetStream.create(names, rows.iterator());
  }
}
