package org.seamledger.node;

/**
 * A kind of node, as its shape in {@code shapes/nodes.ttl} describes it; nothing in the program knows one by its id.
 *
 * @param id such as {@code hip-head}
 * @param label in the words of the trade, lower case
 * @param meaning what it is, in a few words
 * @param order of two shapes that a node conforms to, the one with the lower number gives the kind; kinds are listed in this order
 * @param content what is done there
 */
public record NodeKind(String id, String label, String meaning, int order, NodeContent content) implements Comparable<NodeKind> {

  @Override
  public int compareTo(NodeKind o) {
    int c = Integer.compare(order, o.order);
    return c != 0 ? c : id.compareTo(o.id);
  }
}
