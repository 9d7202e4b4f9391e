package org.seamledger.shacl;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;
import org.apache.jena.graph.Triple;
import org.seamledger.finding.EditDistance;
import org.seamledger.rdf.Vocabulary;

/**
 * Looks for what a SHACL engine would pass over in silence: a constraint that SHACL doesn't have, a fact that nobody measures, a
 * reference to a shape that isn't there, a shape that matches nothing and that nobody refers to.
 */
final class RuleCheck {

  static final Node PATH = sh("path");
  private static final Node NODE_SHAPE = sh("NodeShape");

  /** SHACL Core, without what needs a query engine. */
  private static final Set<String> TERMS = Set.of("NodeShape", "PropertyShape", "path", "property", "node", "not", "and", "or", "xone",
      "minCount", "maxCount", "minInclusive", "maxInclusive", "minExclusive", "maxExclusive", "hasValue", "in", "equals", "disjoint",
      "lessThan", "lessThanOrEquals", "datatype", "class", "nodeKind", "IRI", "BlankNode", "Literal", "BlankNodeOrIRI",
      "BlankNodeOrLiteral",
      "IRIOrLiteral", "pattern", "flags", "minLength", "maxLength", "languageIn", "uniqueLang", "closed", "ignoredProperties",
      "qualifiedValueShape", "qualifiedMinCount", "qualifiedMaxCount", "qualifiedValueShapesDisjoint", "targetClass", "targetNode",
      "targetSubjectsOf", "targetObjectsOf", "severity", "Violation", "Warning", "Info", "message", "deactivated", "name", "description",
      "order", "group", "PropertyGroup", "inversePath", "alternativePath", "zeroOrMorePath", "oneOrMorePath", "zeroOrOnePath");

  private static final List<Node> REFERENCES = List.of(sh("node"), sh("not"), sh("property"), sh("qualifiedValueShape"));
  /** What a shape is for, where it is for something by itself. */
  private static final Set<Node> MATCHED = Set.of(Vocabulary.term("kind"), Vocabulary.term("detail"), Vocabulary.term("code"),
      Vocabulary.term("nodeKind"), Vocabulary.term("fixed"), Vocabulary.term("work"), Vocabulary.term("precedence"));
  private static final Set<String> COMPARED = Set.of("minInclusive", "maxInclusive", "minExclusive", "maxExclusive");

  private final Graph graph;
  private final Places places;
  private final Set<String> facts;

  private RuleCheck(Graph graph, Places places, Set<String> facts) {
    this.graph = graph;
    this.places = places;
    this.facts = facts;
  }

  /** @throws BrokenRulesException at the first problem in the order of files and lines */
  static void check(Graph graph, Places places) {
    RuleCheck check = new RuleCheck(graph, places, Vocabulary.facts());
    TreeSet<BrokenRulesException> problems = new TreeSet<>((a, b) -> {
      int c = a.file().compareTo(b.file());
      c = c != 0 ? c : Long.compare(a.line(), b.line());
      c = c != 0 ? c : Long.compare(a.column(), b.column());
      return c != 0 ? c : a.getMessage().compareTo(b.getMessage());
    });
    graph.find().forEachRemaining(t -> {
      String problem = check.problem(t);
      if (problem != null) {
        problems.add(places.of(t).problem(problem));
      }
    });
    if (!problems.isEmpty()) {
      throw problems.first();
    }
  }

  private String problem(Triple t) {
    Node p = t.getPredicate();
    Node o = t.getObject();
    String unknown = unknownTerm(p);
    if (unknown == null && o.isURI()) {
      unknown = unknownTerm(o);
    }
    if (unknown != null) {
      return unknown;
    }
    if (p.equals(PATH)) {
      return pathProblem(o);
    }
    if (REFERENCES.contains(p) && !graph.contains(o, Node.ANY, Node.ANY)) {
      return "refers to the shape " + show(o) + ", which is nowhere";
    }
    if (COMPARED.contains(local(p)) && !isNumber(o)) {
      return "sh:" + local(p) + " needs a number, found " + show(o);
    }
    if (p.equals(Vocabulary.TYPE) && o.equals(NODE_SHAPE)) {
      return idle(t.getSubject());
    }
    return null;
  }

  private static String unknownTerm(Node n) {
    return n.isURI() && n.getURI().startsWith(Vocabulary.SHACL_NS) && !TERMS.contains(local(n))
        ? "sh:" + local(n) + " is no term of SHACL Core" + near(local(n), TERMS)
        : null;
  }

  private String pathProblem(Node path) {
    return path.isURI() && path.getURI().startsWith(Vocabulary.NS) && !facts.contains(local(path))
        ? "there is no fact " + local(path) + near(local(path), facts)
        : null;
  }

  /** A shape that nobody refers to, that has no target and that matches nothing for itself can never have an effect. */
  private String idle(Node shape) {
    boolean used = graph.contains(Node.ANY, Node.ANY, shape);
    boolean targets = graph.find(shape, Node.ANY, Node.ANY).toList().stream()
        .anyMatch(t -> local(t.getPredicate()).startsWith("target")
            || MATCHED.contains(t.getPredicate()));
    return used || targets ? null : "the shape " + show(shape) + " has no effect: give it a name (sl:kind \"...\") or refer to it";
  }

  private static boolean isNumber(Node o) {
    return o.isLiteral() && o.getLiteral().isWellFormed() && o.getLiteralValue() instanceof Number;
  }

  private static String show(Node n) {
    return n.isURI() ? local(n) : n.isLiteral() ? "\"" + n.getLiteralLexicalForm() + "\"" : "[]";
  }

  static String local(Node n) {
    String uri = n.isURI() ? n.getURI() : "";
    return uri.substring(uri.lastIndexOf('#') + 1);
  }

  static Node sh(String name) {
    return NodeFactory.createURI(Vocabulary.SHACL_NS + name);
  }

  static String near(String word, Set<String> known) {
    String best = "";
    int least = Math.max(2, word.length() / 3) + 1;
    for (String k : new TreeSet<>(known)) {
      int d = EditDistance.between(word, k);
      if (d < least) {
        least = d;
        best = k;
      }
    }
    return best.isEmpty() ? "" : " (did you mean " + best + "?)";
  }
}
