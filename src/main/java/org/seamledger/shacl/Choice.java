package org.seamledger.shacl;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import org.apache.jena.graph.Node;
import org.apache.jena.shacl.Shapes;
import org.apache.jena.shacl.parser.Shape;
import org.seamledger.rdf.FactGraph;

/**
 * A set of shapes that each stand for a word; decides which of them a thing conforms to. Things whose facts agree, as far as these shapes
 * look at them, are decided once. Facts are given by name: Double, Integer, Boolean or String. Not for use by several threads at once.
 */
public final class Choice {

  private final Map<String, Shape> shapeOf = new TreeMap<>();
  private final Shapes shapes;
  private final Validation validation;
  private final Set<String> seen;
  private final SortedMap<String, SortedSet<Double>> limits;
  private final Map<Map<String, Object>, List<String>> decided = new HashMap<>();

  Choice(Shapes shapes, Map<String, Node> nodes) {
    nodes.forEach((word, node) -> shapeOf.put(word, shapes.getShape(node)));
    this.shapes = shapes;
    validation = new Validation(shapes);
    seen = new HashSet<>(ShapeText.facts(shapeOf.values()));
    limits = ShapeText.limits(shapeOf.values());
  }

  /** Words of the shapes that a thing with these facts conforms to, sorted. */
  public List<String> decide(Map<String, ?> facts) {
    return decided.computeIfAbsent(relevant(facts), this::conforming);
  }

  /** The same, with the nearest shape that was missed, and by what. */
  public Verdict explain(Map<String, ?> facts) {
    FactGraph thing = FactGraph.of(relevant(facts));
    List<String> conforming = new ArrayList<>();
    String nearest = "";
    Validation.Misses least = null;
    for (Map.Entry<String, Shape> entry : shapeOf.entrySet()) {
      Validation.Misses misses = validation.misses(entry.getValue(), thing);
      if (misses.none()) {
        conforming.add(entry.getKey());
      } else if (least == null || misses.compareTo(least) < 0) {
        nearest = entry.getKey();
        least = misses;
      }
    }
    return new Verdict(conforming, nearest, least == null ? List.of() : least.words());
  }

  /** The numbers that the shapes hold facts against, by the fact's name. */
  public SortedMap<String, SortedSet<Double>> limits() {
    return limits;
  }

  /**
   * What the shape of a word requires and a thing with these facts doesn't give, in words; empty where it conforms, or no shape
   * stands for the word.
   */
  public List<String> misses(String word, Map<String, ?> facts) {
    Shape shape = shapeOf.get(word);
    return shape == null ? List.of() : validation.misses(shape, FactGraph.of(relevant(facts))).words();
  }

  /** Names of the facts by which a thing misses the shape of a word. */
  public Set<String> missedFacts(String word, Map<String, ?> facts) {
    Shape shape = shapeOf.get(word);
    return shape == null ? Set.of() : validation.missedFacts(shape, FactGraph.of(relevant(facts)));
  }

  private Map<String, Object> relevant(Map<String, ?> facts) {
    Map<String, Object> relevant = new HashMap<>();
    facts.forEach((name, value) -> {
      if (seen.contains(name)) {
        relevant.put(name, FactGraph.rounded(name, value));
      }
    });
    return relevant;
  }

  private List<String> conforming(Map<String, Object> facts) {
    Trial trial = new Trial(shapes, FactGraph.of(facts));
    return shapeOf.entrySet().stream().filter(c -> trial.conforms(c.getValue())).map(Map.Entry::getKey).toList();
  }
}
