package org.seamledger.node;

import org.seamledger.junction.Facts;
import org.seamledger.junction.JunctionNode;

/**
 * A node with its kind.
 *
 * @param facts what the shapes saw of it
 */
public record KindedNode(JunctionNode node, NodeKind kind, Facts facts) {

  public String id() {
    return node.id();
  }
}
