package org.seamledger.node;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.junction.Facts;
import org.seamledger.junction.JunctionNode;
import org.seamledger.progress.Progress;
import org.seamledger.roof.RoofFace;
import org.seamledger.shacl.Choice;
import org.seamledger.shacl.Described;
import org.seamledger.shacl.Rules;

/**
 * The kinds that nodes can have. Of the shapes that a node conforms to the first in their order gives its kind; the last shape of all has
 * no condition, so that every node has one.
 */
public final class NodeKinds {

  private static final Set<String> TERMS = Stream.concat(Stream.of("nodeKind", "meaning", "order"),
      NodeContentReader.TERMS.stream()).collect(Collectors.toUnmodifiableSet());
  /** An office's kind that names no place comes after those of the program, but before the last. */
  private static final int LAST = 900;

  private final SortedMap<String, NodeKind> byId = new TreeMap<>();
  private final Choice shapes;
  /** The first of several kinds, by their ids. */
  private final Map<List<String>, NodeKind> first = new HashMap<>();

  /** @throws org.seamledger.shacl.BrokenRulesException where the rules have no kinds of nodes, or one isn't described */
  public NodeKinds(Rules rules) {
    shapes = rules.choice("nodeKind");
    rules.described("nodeKind").forEach((id, d) -> byId.put(id, kind(id, d.only(TERMS))));
    if (shapes.decide(Facts.builder().build().asMap()).isEmpty()) {
      throw rules.described("nodeKind").get(byId.firstKey()).problem("is one of the kinds of nodes, and none of them fits a node of which "
          + "nothing is known: the last needs a shape without a condition");
    }
  }

  private static NodeKind kind(String id, Described d) {
    if (!id.matches("[a-z][a-z0-9]*(-[a-z0-9]+)*")) {
      throw d.problem("\"" + id + "\" is no name for a kind: it needs small letters, digits and single dashes between them");
    }
    return new NodeKind(id, d.label(), d.word("meaning"), d.count("order", LAST), NodeContentReader.read(d));
  }

  /** All kinds, in their order. */
  public List<NodeKind> all() {
    return byId.values().stream().sorted().toList();
  }

  /** The kind of a node with these facts. */
  public NodeKind kind(Facts facts) {
    return first.computeIfAbsent(shapes.decide(facts.asMap()), ids -> ids.stream().map(byId::get).sorted().findFirst().orElseThrow());
  }

  /**
   * Kinds of all nodes, in the order given.
   *
   * @param junctions all lines that end in them
   * @param faces all faces of these
   */
  public List<KindedNode> classify(List<JunctionNode> nodes, Collection<DetailedJunction> junctions, List<RoofFace> faces,
      Progress progress) {
    NodeFacts facts = new NodeFacts(junctions, faces);
    List<KindedNode> kinded = new ArrayList<>();
    for (JunctionNode node : progress.over(nodes)) {
      Facts f = facts.of(node);
      kinded.add(new KindedNode(node, kind(f), f, facts.lines(node)));
    }
    return kinded;
  }
}
