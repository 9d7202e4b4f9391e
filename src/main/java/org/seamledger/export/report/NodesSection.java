package org.seamledger.export.report;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeKind;
import org.seamledger.takeoff.Takeoff;

/** Where lines end and meet, in the report: how many nodes of each kind, and what one is made with. */
public final class NodesSection {

  private static final String INDENT = "  ";

  private NodesSection() {
  }

  public static void write(Takeoff takeoff, TextPage page) {
    SortedMap<NodeKind, List<KindedNode>> kinds =
        takeoff.nodes().stream().collect(Collectors.groupingBy(KindedNode::kind, TreeMap::new, Collectors.toList()));
    if (kinds.isEmpty()) {
      return;
    }
    page.title("Nodes, where lines end and meet");
    Table table = new Table(INDENT, "lrl").row("kind", "nodes", "pieces in all");
    kinds.forEach((kind, nodes) -> table.row(kind.label(), Integer.toString(nodes.size()), pieces(takeoff, nodes)));
    table.on(page);
  }

  private static String pieces(Takeoff takeoff, List<KindedNode> nodes) {
    SortedMap<String, Integer> sums = new TreeMap<>();
    nodes.forEach(n -> takeoff.quantities().byJunction().get(n.id()).metal().forEach(m -> sums.merge(m.part(), m.pieces(), Integer::sum)));
    return sums.entrySet().stream().map(e -> e.getValue() + " × " + e.getKey()).collect(Collectors.joining(", "));
  }
}
