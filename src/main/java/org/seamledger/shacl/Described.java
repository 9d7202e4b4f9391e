package org.seamledger.shacl;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.Triple;
import org.seamledger.rdf.Vocabulary;

/**
 * What the rules tell of something, property by property, without a trace of the graph. Properties are local names in the project's
 * namespace. Whatever is missing that is needed, or of the wrong kind, is a {@link BrokenRulesException} with its line.
 */
public final class Described {

  private final Graph graph;
  private final Places places;
  private final Node node;

  Described(Graph graph, Places places, Node node) {
    this.graph = graph;
    this.places = places;
    this.node = node;
  }

  Node node() {
    return node;
  }

  /** Objects of one of SHACL's own properties. */
  List<Node> shacl(String property) {
    return graph.find(node, RuleCheck.sh(property), Node.ANY).toList().stream().map(Triple::getObject).toList();
  }

  /** Where the thing is told of first: file and line, such as {@code kinds.ttl:120}; the file without its folder. */
  public String place() {
    return graph.find(node, Node.ANY, Node.ANY).toList().stream().map(places::of)
        .min((a, b) -> Long.compare(a.line(), b.line()))
        .map(p -> p.file().substring(Math.max(p.file().lastIndexOf('/'), p.file().lastIndexOf('\\')) + 1) + ":" + p.line()).orElse("");
  }

  /** What SHACL's own properties say of it in words, such as {@code message}. */
  public List<String> words(String property) {
    return shacl(property).stream().map(n -> n.isLiteral() ? n.getLiteralLexicalForm() : RuleCheck.local(n)).toList();
  }

  /** Local name of the thing, or the empty string. */
  public String name() {
    return RuleCheck.local(node);
  }

  /** Refuses properties of the project's namespace that aren't among those known: a slip of the pen would pass unseen. */
  public Described only(Set<String> known) {
    for (Triple t : graph.find(node, Node.ANY, Node.ANY).toList()) {
      String property = RuleCheck.local(t.getPredicate());
      if (t.getPredicate().getURI().startsWith(Vocabulary.NS) && !known.contains(property)) {
        throw places.of(t).problem("there is no property sl:" + property + " here" + RuleCheck.near(property, known));
      }
    }
    return this;
  }

  /**
   * What people call the thing: its {@code rdfs:label}.
   *
   * @throws BrokenRulesException with the line where it has none
   */
  public String label() {
    List<Node> labels = graph.find(node, Vocabulary.LABEL, Node.ANY).toList().stream().map(Triple::getObject).toList();
    if (labels.size() != 1 || !labels.get(0).isLiteral()) {
      throw problem("needs one rdfs:label in quotes");
    }
    return labels.get(0).getLiteralLexicalForm();
  }

  public boolean has(String property) {
    return graph.contains(node, Vocabulary.term(property), Node.ANY);
  }

  /** A word that must be there. */
  public String word(String property) {
    Triple t = only(property);
    if (t == null) {
      throw problem("needs sl:" + property);
    }
    if (!t.getObject().isLiteral()) {
      throw places.of(t).problem("sl:" + property + " needs a word in quotes");
    }
    return t.getObject().getLiteralLexicalForm();
  }

  /** A word, or the one given where the rules tell none. */
  public String word(String property, String otherwise) {
    return has(property) ? word(property) : otherwise;
  }

  /** A number not below 0, or the one given where the rules tell none. */
  public double number(String property, double otherwise) {
    Triple t = only(property);
    if (t == null) {
      return otherwise;
    }
    if (!t.getObject().isLiteral() || !(t.getObject().getLiteralValue() instanceof Number n) || n.doubleValue() < 0) {
      throw places.of(t).problem("sl:" + property + " needs a number not below 0");
    }
    return n.doubleValue();
  }

  /** A whole number not below 0, or the one given where the rules tell none. */
  public int count(String property, int otherwise) {
    double n = number(property, otherwise);
    if (n != Math.rint(n) || n > 1000) {
      throw places.of(only(property)).problem("sl:" + property + " needs a whole number");
    }
    return (int) n;
  }

  /** A flag, or the one given where the rules tell none. */
  public boolean flag(String property, boolean otherwise) {
    Triple t = only(property);
    if (t == null) {
      return otherwise;
    }
    if (!t.getObject().isLiteral() || !(t.getObject().getLiteralValue() instanceof Boolean b)) {
      throw places.of(t).problem("sl:" + property + " needs true or false");
    }
    return b;
  }

  /** The one of some constants that a word names. */
  public <E> E oneOf(String property, Stream<E> constants, Function<E, String> word) {
    String found = word(property);
    List<E> all = constants.toList();
    for (E e : all) {
      if (word.apply(e).equals(found)) {
        return e;
      }
    }
    throw places.of(only(property)).problem("sl:" + property + " is \"" + found + "\"; there are "
        + String.join(", ", all.stream().map(word).toList()));
  }

  /** The things of a list, in its order; empty where the rules tell none. */
  public List<Described> list(String property) {
    Triple t = only(property);
    List<Described> things = new ArrayList<>();
    if (t == null) {
      return things;
    }
    Node rest = t.getObject();
    while (rest.isBlank()) {
      Node first = object(rest, Vocabulary.FIRST);
      if (first == null || first.isLiteral() || things.size() > 1000) {
        throw places.of(t).problem("sl:" + property + " needs a list ( ... ) of things");
      }
      things.add(new Described(graph, places, first));
      rest = object(rest, Vocabulary.REST);
      if (rest == null) {
        throw places.of(t).problem("sl:" + property + " needs a list ( ... )");
      }
    }
    if (!RuleCheck.local(rest).equals("nil")) {
      throw places.of(t).problem("sl:" + property + " needs a list ( ... )");
    }
    return things;
  }

  private Node object(Node subject, Node property) {
    List<Triple> found = graph.find(subject, property, Node.ANY).toList();
    return found.size() == 1 ? found.get(0).getObject() : null;
  }

  private Triple only(String property) {
    List<Triple> found = graph.find(node, Vocabulary.term(property), Node.ANY).toList();
    if (found.size() > 1) {
      throw places.of(found.get(0)).problem("sl:" + property + " is told more than once");
    }
    return found.isEmpty() ? null : found.get(0);
  }

  /** Something is wrong with the thing as a whole; the line is that of the first thing told of it. */
  public BrokenRulesException problem(String text) {
    return graph.find(node, Node.ANY, Node.ANY).toList().stream().map(places::of)
        .min((a, b) -> Long.compare(a.line(), b.line())).orElse(new Places.Place("rules", 0, 0))
        .problem((name().isEmpty() ? "" : name() + " ") + text);
  }
}
