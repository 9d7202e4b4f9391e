package org.seamledger.shacl;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.GraphMemFactory;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;
import org.apache.jena.graph.Triple;
import org.apache.jena.riot.Lang;
import org.apache.jena.riot.RDFParser;
import org.apache.jena.riot.RiotException;
import org.apache.jena.shacl.ShaclValidator;
import org.apache.jena.shacl.Shapes;
import org.seamledger.rdf.Vocabulary;

/**
 * Runs the examples of rules: files in the form of the W3C's SHACL test suite ({@code sht:Validate}), whose data and shapes are the file
 * itself with what it imports, and which state the report that must come out.
 */
public final class ShapeExamples {

  /**
   * An example.
   *
   * @param file such as {@code kinds/ridge.ttl}
   * @param shapes local names of the shapes that it tries
   * @param holds whether what comes out is what the example states
   * @param differences each case that comes out otherwise, in words
   */
  public record Example(String file, SortedSet<String> shapes, boolean holds, List<String> differences) {
    public Example {
      differences = List.copyOf(differences);
    }
  }

  /** A case that a shape refuses. */
  private record Refusal(String focus, String shape) implements Comparable<Refusal> {
    @Override
    public int compareTo(Refusal o) {
      return (focus + ' ' + shape).compareTo(o.focus + ' ' + o.shape);
    }
  }

  private static final String BASE = "file:///rules/";
  private static final Node RESULT = NodeFactory.createURI("http://www.w3.org/2001/sw/DataAccess/tests/test-manifest#result");
  private static final Node IMPORTS = NodeFactory.createURI("http://www.w3.org/2002/07/owl#imports");

  private final RuleFiles rules;
  private final Map<String, Graph> read = new HashMap<>();

  private ShapeExamples(RuleFiles rules) {
    this.rules = rules;
  }

  /** @param examples texts by the file's name under the folder of examples */
  public static List<Example> run(RuleFiles rules, SortedMap<String, String> examples) {
    ShapeExamples all = new ShapeExamples(rules);
    List<Example> done = new ArrayList<>();
    examples.forEach((file, text) -> done.add(all.run(file, text)));
    return done;
  }

  private Example run(String file, String text) {
    try {
      Graph data = parse(BASE + "tests/" + file, text);
      SortedSet<Refusal> expected = new TreeSet<>();
      data.find(Node.ANY, RESULT, Node.ANY).forEachRemaining(t -> expected.addAll(refusals(data, t.getObject())));
      Graph shapes = GraphMemFactory.createDefaultGraph();
      data.find().forEachRemaining(shapes::add);
      for (Triple t : data.find(Node.ANY, IMPORTS, Node.ANY).toList()) {
        imported(t.getObject()).find().forEachRemaining(shapes::add);
      }
      Graph report = ShaclValidator.get().validate(Shapes.parse(shapes), data).getGraph();
      SortedSet<Refusal> found = new TreeSet<>();
      report.find(Node.ANY, Vocabulary.TYPE, RuleCheck.sh("ValidationReport"))
          .forEachRemaining(t -> found.addAll(refusals(report, t.getSubject())));
      return new Example(file, tried(data), found.equals(expected), differences(expected, found));
    } catch (RiotException | BrokenRulesException e) {
      return new Example(file, new TreeSet<>(), false, List.of(String.valueOf(e.getMessage()).replaceAll("\\s+", " ")));
    }
  }

  private Graph imported(Node file) {
    String name = file.isURI() ? file.getURI().substring(file.getURI().lastIndexOf('/') + 1) : "";
    String text = rules.texts().get(name);
    if (text == null) {
      throw new BrokenRulesException(name, 0, 0, "is no file of these rules");
    }
    return read.computeIfAbsent(name, n -> parse(BASE + n, text));
  }

  private static Graph parse(String base, String text) {
    Graph graph = GraphMemFactory.createDefaultGraph();
    RDFParser.fromString(text, Lang.TTL).base(base).parse(graph);
    return graph;
  }

  private static SortedSet<Refusal> refusals(Graph graph, Node report) {
    SortedSet<Refusal> all = new TreeSet<>();
    for (Triple t : graph.find(report, RuleCheck.sh("result"), Node.ANY).toList()) {
      all.add(new Refusal(local(graph, t.getObject(), "focusNode"), local(graph, t.getObject(), "sourceShape")));
    }
    return all;
  }

  private static String local(Graph graph, Node of, String property) {
    List<Triple> found = graph.find(of, RuleCheck.sh(property), Node.ANY).toList();
    return found.isEmpty() ? "" : RuleCheck.local(found.get(0).getObject());
  }

  private static SortedSet<String> tried(Graph data) {
    SortedSet<String> names = new TreeSet<>();
    data.find(Node.ANY, RuleCheck.sh("targetNode"), Node.ANY).forEachRemaining(t -> names.add(RuleCheck.local(t.getSubject())));
    data.find(Node.ANY, RuleCheck.sh("sourceShape"), Node.ANY).forEachRemaining(t -> names.add(RuleCheck.local(t.getObject())));
    names.remove("");
    return names;
  }

  private static List<String> differences(Set<Refusal> expected, Set<Refusal> found) {
    List<String> words = new ArrayList<>();
    expected.stream().filter(r -> !found.contains(r))
        .forEach(r -> words.add(r.focus() + " conforms to " + r.shape() + " now; the example says that it doesn't"));
    found.stream().filter(r -> !expected.contains(r))
        .forEach(r -> words.add(r.focus() + " doesn't conform to " + r.shape() + " now; the example says that it does"));
    return words;
  }
}
