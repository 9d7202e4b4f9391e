package org.seamledger.shacl;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.jena.shacl.Shapes;
import org.seamledger.rdf.FactGraph;

/**
 * The rules that make findings, tried on things. Things of one class whose facts agree, as far as the rules look at them, are tried once.
 * Not for use by several threads at once.
 */
public final class FindingShapes {

  private final Shapes shapes;
  private final Map<String, List<ReviewRule>> rules = new TreeMap<>();
  private final Map<String, Set<String>> seen = new TreeMap<>();
  private final Map<String, Map<Map<String, Object>, List<Breach>>> done = new TreeMap<>();

  FindingShapes(Shapes shapes, List<ReviewRule> all) {
    this.shapes = shapes;
    for (ReviewRule r : all) {
      rules.computeIfAbsent(r.target(), t -> new ArrayList<>()).add(r);
    }
    rules.forEach((target, list) -> seen.put(target, ShapeText.facts(list.stream().map(ReviewRule::shape).toList())));
  }

  /** Every rule there is, by code, as if it were broken. */
  public List<Breach> catalogue() {
    return rules.values().stream().flatMap(List::stream).map(FindingShapes::breach)
        .sorted((a, b) -> a.code().compareTo(b.code())).toList();
  }

  /**
   * The rules that a thing breaks, by code.
   *
   * @param target {@code Junction}, {@code RoofFace} or {@code RoofSystem}
   * @param facts names of the vocabulary to Double, Integer, Boolean or String
   */
  public List<Breach> breaches(String target, Map<String, ?> facts) {
    Set<String> names = seen.getOrDefault(target, Set.of());
    Map<String, Object> relevant = new HashMap<>();
    facts.forEach((name, value) -> {
      if (names.contains(name)) {
        relevant.put(name, FactGraph.rounded(name, value));
      }
    });
    return done.computeIfAbsent(target, t -> new HashMap<>()).computeIfAbsent(relevant, f -> judge(target, f));
  }

  private List<Breach> judge(String target, Map<String, Object> facts) {
    Trial trial = new Trial(shapes, FactGraph.of(facts));
    return rules.getOrDefault(target, List.of()).stream().filter(r -> !trial.conforms(r.shape())).map(FindingShapes::breach).toList();
  }

  private static Breach breach(ReviewRule r) {
    return new Breach(r.code(), r.severity(), r.message(), r.reason(), r.action(), r.who(), r.once());
  }
}
