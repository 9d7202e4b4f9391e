package org.seamledger.shacl;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.GraphMemFactory;
import org.apache.jena.graph.Node;
import org.apache.jena.shacl.Shapes;
import org.apache.jena.shacl.parser.Shape;
import org.seamledger.rdf.Vocabulary;

/** The rules in force: the shapes of every file of a folder, parsed once. */
public final class Rules {

  /** One analysis after the other mostly follows the same rules, and so does whoever looks at its details. Nothing changes them. */
  private static volatile Rules last;

  private final Shapes shapes;
  private final Places places;
  private final String hash;
  private final RuleFiles files;

  private Rules(RuleFiles files) {
    hash = files.hash();
    this.files = files;
    places = new Places();
    Graph graph = GraphMemFactory.createDefaultGraph();
    if (!StoredRules.read(files, hash, graph, places)) {
      read(files, graph, places);
    }
    shapes = parsed(graph);
  }

  /** @throws BrokenRulesException where a file is wrong */
  static void read(RuleFiles files, Graph graph, Places places) {
    TurtleReader reader = new TurtleReader(graph, places);
    files.all().forEach(reader::read);
    RuleCheck.check(graph, places);
    ShapeForm.check(graph, places);
  }

  /** What the checks before let pass is refused by the engine itself, in its own words. */
  private static Shapes parsed(Graph graph) {
    try {
      return Shapes.parse(graph);
    } catch (RuntimeException | StackOverflowError e) {
      String why = e instanceof StackOverflowError ? "they are nested too deeply" : String.valueOf(e.getMessage()).replaceAll("\\s+", " ");
      throw new BrokenRulesException("rules", 0, 0, "the shapes are none that can be used: " + why);
    }
  }

  /** The rules that come with the program. */
  public static Rules packaged() {
    return of(RuleFiles.packaged());
  }

  /**
   * The rules in a folder: each of its {@code .ttl} files takes the place of the packaged one of the same name, or is added.
   *
   * @throws BrokenRulesException where there is no such folder, no such file in it, or a file is wrong
   */
  public static Rules load(Path folder) {
    return of(RuleFiles.in(folder));
  }

  /** @throws BrokenRulesException where a file is wrong */
  public static Rules of(RuleFiles files) {
    Rules known = last;
    if (known == null || !known.files.areSameAs(files)) {
      known = new Rules(files);
      last = known;
    }
    return known;
  }

  /** The numbers that the shapes hold facts against. */
  public RuleLimits limits() {
    return RuleLimits.of(shapes.getGraph(), places, files);
  }

  /** What the shape of a thing that the rules tell of requires, in words. */
  public String requires(Described thing) {
    Shape shape = shapes.getShape(thing.node());
    return shape == null ? "" : ShapeText.required(shape);
  }

  /** See {@link RuleFiles#hash}. */
  public String hash() {
    return hash;
  }

  /**
   * The shapes that claim a word for what conforms to them.
   *
   * @param property local name in the project's namespace, such as {@code kind}
   * @throws BrokenRulesException where no shape has it
   */
  public Choice choice(String property) {
    Node p = Vocabulary.term(property);
    Map<String, Node> byWord = new TreeMap<>();
    shapes.getGraph().find(Node.ANY, p, Node.ANY).forEachRemaining(t -> {
      if (!t.getObject().isLiteral()) {
        throw places.of(t).problem("sl:" + property + " needs a word in quotes");
      }
      if (shapes.getShape(t.getSubject()) == null) {
        throw places.of(t).problem("what has sl:" + property + " must be a sh:NodeShape");
      }
      Node other = byWord.put(t.getObject().getLiteralLexicalForm(), t.getSubject());
      if (other != null) {
        throw places.of(t).problem("a second shape claims sl:" + property + " " + t.getObject().getLiteralLexicalForm()
            + "; combine them by sh:or");
      }
    });
    if (byWord.isEmpty()) {
      throw new BrokenRulesException("rules", 0, 0, "no shape has sl:" + property);
    }
    return new Choice(shapes, byWord);
  }

  /**
   * The shapes that make a finding of what doesn't conform to them.
   *
   * @throws BrokenRulesException where one lacks its class, message, reason or action
   */
  public FindingShapes review() {
    List<ReviewRule> all = new ArrayList<>();
    described("code").forEach((code, d) -> all.add(ReviewRule.read(code, d, shapes)));
    return new FindingShapes(shapes, all);
  }

  /**
   * What the rules tell of the things that have a word by a property, by that word.
   *
   * @param property local name in the project's namespace, such as {@code detail}
   */
  public SortedMap<String, Described> described(String property) {
    SortedMap<String, Described> things = new TreeMap<>();
    shapes.getGraph().find(Node.ANY, Vocabulary.term(property), Node.ANY).forEachRemaining(t -> {
      if (t.getObject().isLiteral()) {
        things.put(t.getObject().getLiteralLexicalForm(), new Described(shapes.getGraph(), places, t.getSubject()));
      }
    });
    return things;
  }
}
