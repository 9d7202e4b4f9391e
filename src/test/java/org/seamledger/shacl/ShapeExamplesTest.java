package org.seamledger.shacl;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.GraphMemFactory;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;
import org.apache.jena.graph.Triple;
import org.apache.jena.riot.Lang;
import org.apache.jena.riot.RDFDataMgr;
import org.apache.jena.riot.RDFParser;
import org.apache.jena.shacl.ShaclValidator;
import org.apache.jena.shacl.Shapes;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.seamledger.rdf.Vocabulary;

/**
 * The examples beside the rules, in the form of the W3C's SHACL test suite ({@code sht:Validate}): a data graph, a shapes graph, and the
 * validation report that must come out, compared as graphs. They run through the engine alone.
 */
public class ShapeExamplesTest {

  private static final Path SHAPES = Path.of("shapes");
  private static final String MF = "http://www.w3.org/2001/sw/DataAccess/tests/test-manifest#";
  private static final String SHT = "http://www.w3.org/ns/shacl-test#";
  /** Parts of a report that the W3C's suite leaves out of comparison, too. */
  private static final Set<String> FREE = Set.of("resultMessage", "detail");

  @TestFactory
  Stream<DynamicTest> examples() throws IOException {
    try (Stream<Path> files = Files.walk(SHAPES.resolve("tests"))) {
      List<Path> found = files.filter(f -> f.toString().endsWith(".ttl")).sorted(Comparator.naturalOrder()).toList();
      return found.stream().flatMap(ShapeExamplesTest::tests);
    }
  }

  /** The examples of one file. */
  public static Stream<DynamicTest> tests(Path file) {
    Graph manifest = read(file.toUri());
    List<Node> tests = manifest.find(Node.ANY, Vocabulary.TYPE, uri(SHT + "Validate")).toList().stream().map(Triple::getSubject).toList();
    assertThat(tests).as("%s holds no test", file).isNotEmpty();
    return tests.stream().map(t -> DynamicTest.dynamicTest(file + " " + RuleCheck.local(t), () -> run(manifest, t)));
  }

  private static void run(Graph manifest, Node test) {
    Node action = object(manifest, test, MF + "action");
    Graph data = read(URI.create(object(manifest, action, SHT + "dataGraph").getURI()));
    Graph shapes = withImports(URI.create(object(manifest, action, SHT + "shapesGraph").getURI()), GraphMemFactory.createDefaultGraph());
    Graph found = ShaclValidator.get().validate(Shapes.parse(shapes), data).getGraph();
    Graph expected = GraphMemFactory.createDefaultGraph();
    copy(manifest, object(manifest, test, MF + "result"), expected);
    Graph got = GraphMemFactory.createDefaultGraph();
    copy(found, found.find(Node.ANY, Vocabulary.TYPE, RuleCheck.sh("ValidationReport")).next().getSubject(), got);
    assertThat(got.isIsomorphicWith(expected)).as(() -> "expected\n" + text(expected) + "\ngot\n" + text(got)).isTrue();
  }

  @Test
  void everyKindEveryDetailAndEveryFindingHasItsExamples() throws IOException {
    Rules rules = Rules.packaged();
    Set<String> tried = new TreeSet<>();
    try (Stream<Path> files = Files.walk(SHAPES.resolve("tests"))) {
      for (Path f : files.filter(p -> p.toString().endsWith(".ttl")).toList()) {
        read(f.toUri()).find().forEachRemaining(t -> {
          if (t.getPredicate().equals(RuleCheck.sh("targetNode")) || t.getPredicate().equals(RuleCheck.sh("sourceShape"))) {
            Node shape = t.getPredicate().equals(RuleCheck.sh("targetNode")) ? t.getSubject() : t.getObject();
            tried.add(RuleCheck.local(shape));
          }
        });
      }
    }
    for (String property : List.of("kind", "detail", "code", "fixed", "nodeKind")) {
      assertThat(tried).as(property).containsAll(rules.described(property).values().stream().map(Described::name).toList());
    }
  }

  private static Graph withImports(URI file, Graph all) {
    Graph one = read(file);
    one.find().forEachRemaining(all::add);
    one.find(Node.ANY, uri("http://www.w3.org/2002/07/owl#imports"), Node.ANY).toList()
        .forEach(t -> withImports(URI.create(t.getObject().getURI()), all));
    return all;
  }

  /** The report and its results, with the nodes that only stand for an unnamed shape kept apart. */
  private static void copy(Graph from, Node report, Graph to) {
    for (Triple t : from.find(report, Node.ANY, Node.ANY).toList()) {
      if (t.getPredicate().equals(RuleCheck.sh("result"))) {
        to.add(t);
        for (Triple r : from.find(t.getObject(), Node.ANY, Node.ANY).toList()) {
          if (!FREE.contains(RuleCheck.local(r.getPredicate()))) {
            Node o = r.getPredicate().equals(RuleCheck.sh("sourceShape")) && r.getObject().isBlank()
                ? NodeFactory.createBlankNode() : r.getObject();
            to.add(Triple.create(r.getSubject(), r.getPredicate(), o));
          }
        }
      } else {
        to.add(t);
      }
    }
  }

  private static Graph read(URI file) {
    Graph g = GraphMemFactory.createDefaultGraph();
    RDFParser.source(Path.of(file)).base(file.toString()).lang(Lang.TTL).parse(g);
    return g;
  }

  private static Node object(Graph g, Node s, String p) {
    return g.find(s, uri(p), Node.ANY).next().getObject();
  }

  private static Node uri(String u) {
    return NodeFactory.createURI(u);
  }

  private static String text(Graph g) {
    StringWriter w = new StringWriter();
    RDFDataMgr.write(w, g, Lang.TURTLE);
    return w.toString();
  }
}
