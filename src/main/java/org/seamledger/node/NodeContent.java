package org.seamledger.node;

import java.util.List;
import org.seamledger.detail.HoldPoint;
import org.seamledger.junction.Facts;

/**
 * What is done at nodes of one kind.
 *
 * @param parts from the first that is fitted to the last
 * @param note the order of work
 * @param source a publication, or {@code common practice, no source}
 */
public record NodeContent(String title, List<NodePart> parts, List<NodeSeal> seals, List<NodeFastening> fastenings,
    List<HoldPoint> holdPoints, String note, String source) {

  public NodeContent {
    parts = List.copyOf(parts);
    seals = List.copyOf(seals);
    fastenings = List.copyOf(fastenings);
    holdPoints = List.copyOf(holdPoints);
  }

  /** Pieces of the part of an id at a node of which these facts are known. */
  public int pieces(String part, Facts facts) {
    return parts.stream().filter(p -> p.id().equals(part)).mapToInt(p -> p.count(facts)).sum();
  }
}
