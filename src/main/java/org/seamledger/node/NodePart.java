package org.seamledger.node;

import java.util.List;
import org.seamledger.detail.Kind;
import org.seamledger.junction.Facts;

/**
 * A folded piece at a node.
 *
 * @param id by which seals, fasteners and drawings find it
 * @param along sorts of lines that it lies on; empty for all
 * @param per name of the fact that says how often it occurs; empty where it occurs once
 * @param pieces each time
 * @param girthM width of its sheet
 * @param lengthM how far it reaches from the node along each line
 */
public record NodePart(String part, String id, Shape shape, List<String> along, String per, int pieces, double girthM, double lengthM) {

  /** How a piece lies. */
  public enum Shape implements Kind.Worded {
    /** Along lines, with a leg up a wall or a curb, or down over an edge. */
    STRIP,
    /** A plate across the end of a line. */
    END,
    /** Over the corner. */
    PATCH,
    /** Along the foot of a wall, turned out at the end. */
    KICK_OUT
  }

  public NodePart {
    along = List.copyOf(along);
  }

  /** Pieces at a node of which these facts are known. */
  public int count(Facts facts) {
    return per.isEmpty() ? pieces : pieces * (int) Math.round(facts.number(per));
  }

  /** Whether it lies on lines of a sort. */
  public boolean liesOn(LineSort sort) {
    return along.isEmpty() || along.stream().anyMatch(sort::matches);
  }
}
