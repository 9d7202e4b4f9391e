package org.seamledger.graph;

import java.util.Set;
import org.apache.jena.graph.Node;
import org.apache.jena.query.Query;
import org.apache.jena.query.QueryException;
import org.apache.jena.query.QueryFactory;
import org.apache.jena.query.QueryParseException;
import org.apache.jena.query.Syntax;
import org.apache.jena.sparql.algebra.Algebra;
import org.apache.jena.sparql.algebra.Op;
import org.apache.jena.sparql.algebra.OpVisitorBase;
import org.apache.jena.sparql.algebra.op.OpBGP;
import org.apache.jena.sparql.algebra.op.OpGroup;
import org.apache.jena.sparql.algebra.op.OpOrder;
import org.apache.jena.sparql.algebra.op.OpPath;
import org.apache.jena.sparql.algebra.op.OpService;
import org.apache.jena.sparql.algebra.walker.Walker;
import org.apache.jena.sparql.expr.E_Function;
import org.apache.jena.sparql.expr.Expr;
import org.apache.jena.sparql.expr.ExprFunctionN;
import org.apache.jena.sparql.expr.ExprVisitorBase;

/**
 * Lets only such queries through as ask this graph and nothing else: SELECT and ASK of SPARQL 1.1, without SERVICE, without FROM, with no
 * function but those of the standard and the casts of XML Schema. Looked for in the tree of the query, not in its text.
 */
final class QueryGuard {

  private static final int LONGEST = 1 << 16;
  private static final Set<String> CASTS = Set.of("boolean", "integer", "decimal", "double", "float", "string", "dateTime", "date");

  private QueryGuard() {
  }

  /** @throws QueryRefusedException where it is no query, with line and column, or one that may not be asked */
  static Query check(String text, String name) {
    if (text.length() > LONGEST) {
      throw refused(name + ": expected at most " + LONGEST + " characters, found " + text.length());
    }
    Query query = parse(text, name);
    if (!query.isSelectType() && !query.isAskType()) {
      throw refused(name + ": only SELECT and ASK can be answered as csv or json");
    }
    if (query.hasDatasetDescription()) {
      throw refused(name + ": FROM names another graph; a query asks this result's graph only");
    }
    try {
      Op op = Algebra.compile(query);
      new Places(name).walk(op);
    } catch (StackOverflowError e) {
      throw refused(name + ": the query is nested too deeply");
    }
    return query;
  }

  private static Query parse(String text, String name) {
    try {
      return QueryFactory.create(text, Syntax.syntaxSPARQL_11);
    } catch (QueryParseException e) {
      String message = String.valueOf(e.getMessage()).lines().findFirst().orElse("").replaceAll("\\s+", " ").strip();
      throw refused(name + (e.getLine() > 0 ? ":" + e.getLine() + ":" + e.getColumn() : "") + ": expected a query in SPARQL 1.1, found: "
          + message);
    } catch (QueryException e) {
      throw refused(name + ": expected a query in SPARQL 1.1, found: " + String.valueOf(e.getMessage()).replaceAll("\\s+", " ").strip());
    } catch (StackOverflowError e) {
      throw refused(name + ": the query is nested too deeply");
    }
  }

  private static QueryRefusedException refused(String message) {
    return new QueryRefusedException(QueryRefusedException.Reason.WRONG, message);
  }

  /** Where it looks. */
  private static final class Places extends OpVisitorBase {
    private final String name;

    Places(String name) {
      this.name = name;
    }

    void walk(Op op) {
      Walker.walk(op, this, new Functions(name));
    }

    private void walk(Expr expr) {
      if (expr != null) {
        Walker.walk(expr, this, new Functions(name));
      }
    }

    /** The walker leaves out what rows are ordered by. */
    @Override
    public void visit(OpOrder order) {
      order.getConditions().forEach(c -> walk(c.getExpression()));
    }

    /** And what is summed up. */
    @Override
    public void visit(OpGroup group) {
      group.getGroupVars().getExprs().values().forEach(this::walk);
      group.getAggregators().forEach(a -> {
        if (a.getAggregator().getExprList() != null) {
          a.getAggregator().getExprList().forEach(this::walk);
        }
      });
    }

    @Override
    public void visit(OpPath path) {
      if (path.getTriplePath().getPath().toString().contains("<java:")) {
        throw refused(name + ": <java:…> is a program and no property of the graph");
      }
    }

    @Override
    public void visit(OpService service) {
      throw refused(name + ": SERVICE asks another server; a query asks this result's graph only");
    }

    @Override
    public void visit(OpBGP pattern) {
      pattern.getPattern().forEach(t -> predicate(t.getPredicate()));
    }

    private void predicate(Node predicate) {
      if (predicate.isURI() && (predicate.getURI().startsWith("java:") || predicate.getURI().startsWith("http://jena."))) {
        throw refused(name + ": <" + predicate.getURI() + "> is a program and no property of the graph");
      }
    }
  }

  /** What it computes. */
  private static final class Functions extends ExprVisitorBase {
    private final String name;

    Functions(String name) {
      this.name = name;
    }

    @Override
    public void visit(ExprFunctionN function) {
      if (function instanceof E_Function call) {
        String iri = call.getFunctionIRI();
        if (!iri.startsWith(GraphTerms.XSD) || !CASTS.contains(iri.substring(GraphTerms.XSD.length()))) {
          throw refused(name + ": the function <" + iri + "> is none of SPARQL 1.1 and no cast of XML Schema");
        }
      }
    }
  }
}
