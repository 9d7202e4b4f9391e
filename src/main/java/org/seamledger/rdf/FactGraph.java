package org.seamledger.rdf;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.jena.datatypes.xsd.XSDDatatype;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.GraphMemFactory;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;
import org.seamledger.junction.FactList;

/**
 * The facts of one thing as a graph with one subject. Numbers are rounded as {@link org.seamledger.junction.Fact.FactUnit} says, so that
 * noise in a model can't tip a limit.
 */
public final class FactGraph {

  private static final Node SUBJECT = NodeFactory.createURI("urn:seamledger:subject");

  /** Powers of ten: of as many decimals as a fact has. */
  private static final double[] STEPS = {1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

  private final Graph graph = GraphMemFactory.createDefaultGraph();
  private final Map<String, Object> facts = new TreeMap<>();

  private FactGraph() {
  }

  /** @param facts names of the vocabulary to Double, Integer, Boolean or String, or to a collection where a thing has several values */
  public static FactGraph of(Map<String, ?> facts) {
    FactGraph thing = new FactGraph();
    facts.forEach((name, value) -> thing.facts.put(name, rounded(name, value)));
    addFacts(thing.graph, SUBJECT, thing.facts);
    return thing;
  }

  static void addFacts(Graph graph, Node subject, Map<String, ?> facts) {
    facts.forEach((name, value) -> (value instanceof Collection<?> several ? several : List.of(value))
        .forEach(one -> graph.add(subject, Vocabulary.term(name), literal(name, one))));
  }

  public Graph graph() {
    return graph;
  }

  public Node subject() {
    return SUBJECT;
  }

  /** Double, Integer, Boolean or String; null where the fact is missing. */
  public Object value(String name) {
    return facts.get(name);
  }

  /** The value as rules see it. */
  public static Object rounded(String name, Object value) {
    if (!(value instanceof Double d)) {
      return value;
    }
    double step = STEPS[FactList.unit(name).decimals()];
    double r = Math.rint(d * step) / step;
    return r == 0 ? 0.0 : r;
  }

  private static Node literal(String name, Object value) {
    Object v = rounded(name, value);
    if (v instanceof Double) {
      return NodeFactory.createLiteralByValue(v, XSDDatatype.XSDdouble);
    }
    if (v instanceof Integer) {
      return NodeFactory.createLiteralByValue(v, XSDDatatype.XSDinteger);
    }
    if (v instanceof Boolean) {
      return NodeFactory.createLiteralByValue(v, XSDDatatype.XSDboolean);
    }
    if (v instanceof String s) {
      return NodeFactory.createLiteralString(s);
    }
    throw new IllegalArgumentException("fact " + name + " is a " + v.getClass().getSimpleName());
  }
}
