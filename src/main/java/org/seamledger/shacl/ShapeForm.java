package org.seamledger.shacl;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.Triple;
import org.apache.jena.vocabulary.RDF;

/**
 * Looks for shapes that are not formed as SHACL asks (W3C SHACL, 2017, sections 2 to 4) and that an engine would fail at, or go round in
 * for ever: counts that are no whole numbers, properties without a path, targets that are no names, lists, paths and shapes that contain
 * themselves.
 */
final class ShapeForm {

  private static final Set<String> COUNTS =
      Set.of("minCount", "maxCount", "minLength", "maxLength", "qualifiedMinCount", "qualifiedMaxCount");
  private static final Set<String> LISTS = Set.of("and", "or", "xone", "in", "languageIn", "ignoredProperties", "alternativePath");
  private static final Set<String> NAMED = Set.of("targetClass", "targetSubjectsOf", "targetObjectsOf", "class", "datatype", "nodeKind");
  private static final Set<String> TO_SHAPES = Set.of("node", "not", "property", "qualifiedValueShape");
  private static final Set<String> OF_SHAPES = Set.of("and", "or", "xone");
  private static final Set<String> OF_PATHS =
      Set.of("inversePath", "alternativePath", "zeroOrMorePath", "oneOrMorePath", "zeroOrOnePath");
  private static final int DEEPEST = 100;

  private final Graph graph;
  private final Places places;
  private final Map<Node, Integer> depths = new HashMap<>();

  private ShapeForm(Graph graph, Places places) {
    this.graph = graph;
    this.places = places;
  }

  /** @throws BrokenRulesException at the first problem in the order of files and lines */
  static void check(Graph graph, Places places) {
    ShapeForm form = new ShapeForm(graph, places);
    List<Triple> all = graph.find().toList();
    all.sort((a, b) -> order(places.of(a), places.of(b)));
    all.forEach(form::check);
    for (Triple t : all) {
      if (TO_SHAPES.contains(term(t)) || OF_SHAPES.contains(term(t)) || term(t).equals("path")) {
        form.depth(t.getSubject(), t, new HashSet<>());
      }
    }
  }

  private static int order(Places.Place a, Places.Place b) {
    int c = a.file().compareTo(b.file());
    c = c != 0 ? c : Long.compare(a.line(), b.line());
    return c != 0 ? c : Long.compare(a.column(), b.column());
  }

  private void check(Triple t) {
    String term = term(t);
    Node o = t.getObject();
    if (COUNTS.contains(term) && !isCount(o)) {
      throw problem(t, "sh:" + term + " needs a whole number from 0 on");
    }
    if (NAMED.contains(term) && !o.isURI()) {
      throw problem(t, "sh:" + term + " needs a name, such as a class or a property");
    }
    if (term.equals("property") && graph.find(o, RuleCheck.PATH, Node.ANY).toList().size() != 1) {
      throw problem(t, "what sh:property refers to needs one sh:path");
    }
    if ((TO_SHAPES.contains(term) || term.equals("path")) && o.isLiteral()) {
      throw problem(t, "sh:" + term + " refers to no " + (term.equals("path") ? "property" : "shape"));
    }
    if (term.equals("pattern")) {
      checkPattern(t);
    }
    if (LISTS.contains(term)) {
      members(t);
    }
  }

  private void checkPattern(Triple t) {
    try {
      Pattern.compile(t.getObject().isLiteral() ? t.getObject().getLiteralLexicalForm() : "(");
    } catch (PatternSyntaxException e) {
      throw problem(t, "sh:pattern needs a regular expression");
    }
  }

  private static boolean isCount(Node o) {
    return o.isLiteral() && o.getLiteral().isWellFormed() && o.getLiteralValue() instanceof Integer n && n >= 0;
  }

  /** The members of the list that a triple leads to. */
  private List<Node> members(Triple t) {
    List<Node> members = new ArrayList<>();
    Set<Node> seen = new HashSet<>();
    for (Node at = t.getObject(); !at.equals(RDF.Nodes.nil);) {
      List<Triple> first = at.isLiteral() ? List.of() : graph.find(at, RDF.Nodes.first, Node.ANY).toList();
      List<Triple> rest = at.isLiteral() ? List.of() : graph.find(at, RDF.Nodes.rest, Node.ANY).toList();
      if (first.size() != 1 || rest.size() != 1) {
        throw problem(t, "sh:" + term(t) + " needs a list, in parentheses");
      }
      if (!seen.add(at)) {
        throw problem(t, "the list of sh:" + term(t) + " contains itself");
      }
      members.add(first.get(0).getObject());
      at = rest.get(0).getObject();
    }
    return members;
  }

  /** How many shapes or paths stand within each other from here on. */
  private int depth(Node node, Triple by, Set<Node> above) {
    Integer known = depths.get(node);
    if (known != null) {
      return known;
    }
    if (!above.add(node)) {
      throw problem(by, "a " + (term(by).endsWith("ath") ? "path" : "shape") + " contains itself");
    }
    if (above.size() > DEEPEST) {
      throw problem(by, "shapes are nested more than " + DEEPEST + " deep");
    }
    int deepest = 0;
    for (Triple t : graph.find(node, Node.ANY, Node.ANY).toList()) {
      for (Node inner : inner(t)) {
        deepest = Math.max(deepest, depth(inner, t, above) + 1);
      }
    }
    above.remove(node);
    depths.put(node, deepest);
    return deepest;
  }

  private Deque<Node> inner(Triple t) {
    Deque<Node> inner = new ArrayDeque<>();
    String term = term(t);
    if (OF_SHAPES.contains(term) || term.equals("alternativePath")) {
      members(t).stream().filter(m -> !m.isLiteral()).forEach(inner::add);
    } else if (TO_SHAPES.contains(term) || OF_PATHS.contains(term) || term.equals("path") && t.getObject().isBlank()
        || t.getSubject().isBlank() && (t.getPredicate().equals(RDF.Nodes.first) || t.getPredicate().equals(RDF.Nodes.rest))) {
      if (!t.getObject().isLiteral() && !t.getObject().equals(RDF.Nodes.nil)) {
        inner.add(t.getObject());
      }
    }
    return inner;
  }

  private static String term(Triple t) {
    Node p = t.getPredicate();
    return p.isURI() && p.getURI().startsWith(RuleCheck.sh("").getURI()) ? RuleCheck.local(p) : "";
  }

  private BrokenRulesException problem(Triple t, String text) {
    return places.of(t).problem(text);
  }
}
