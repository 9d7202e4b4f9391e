package org.seamledger.cli;

import java.util.List;
import java.util.Optional;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.node.KindedNode;
import org.seamledger.takeoff.Takeoff;

/** Finds the junction that a command line names by its id or the id's beginning. */
final class JunctionChoice {

  private JunctionChoice() {
  }

  /**
   * The id of a junction, or of a node.
   *
   * @throws UsageException where none is meant, or several are
   */
  static String id(Takeoff takeoff, String id) {
    return node(takeoff, id).map(KindedNode::id).orElseGet(() -> find(takeoff, id).junction().junction().id());
  }

  /** The node that is meant, if one is. */
  static Optional<KindedNode> node(Takeoff takeoff, String id) {
    List<KindedNode> found = takeoff.nodes().stream().filter(n -> n.id().startsWith(id)).toList();
    return found.size() == 1 ? Optional.of(found.get(0)) : found.stream().filter(n -> n.id().equals(id)).findFirst();
  }

  /** @throws UsageException where none is meant, or several are */
  static DetailedJunction find(Takeoff takeoff, String id) {
    List<DetailedJunction> found = takeoff.lines().stream().filter(j -> j.junction().junction().id().startsWith(id)).toList();
    if (found.size() == 1) {
      return found.get(0);
    }
    Optional<DetailedJunction> exact = found.stream().filter(j -> j.junction().junction().id().equals(id)).findFirst();
    return exact.orElseThrow(() -> new UsageException(found.isEmpty()
        ? "no junction's id begins with " + id + "; analyze lists them all"
        : found.size() + " junctions' ids begin with " + id + "; give more of it"));
  }
}
