package org.seamledger.node;

import java.util.List;
import org.seamledger.junction.Facts;
import org.seamledger.junction.JunctionNode;

/**
 * A node with its kind.
 *
 * @param facts what the shapes saw of it
 * @param lines that lead away from it
 */
public record KindedNode(JunctionNode node, NodeKind kind, Facts facts, List<NodeLine> lines) {

  public KindedNode {
    lines = List.copyOf(lines);
  }

  public String id() {
    return node.id();
  }
}
