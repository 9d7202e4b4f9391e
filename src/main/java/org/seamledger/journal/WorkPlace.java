package org.seamledger.journal;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.stream.Stream;

/**
 * A junction or a node, and what there is to tick.
 *
 * @param line the id by which it goes through all revisions
 * @param kind of junction or node
 * @param detail id of the sealing detail, or empty
 * @param lengthM metres; 0 for a node
 * @param items in working order
 * @param basis what a sign-off signs: kind, detail, length, ends, items, what seals and holds it
 */
public record WorkPlace(String id, String line, boolean isNode, String kind, String detail, double lengthM, List<WorkItem> items,
    JsonNode basis) {
  public WorkPlace {
    items = List.copyOf(items);
  }

  Stream<WorkItem> holdPoints() {
    return items.stream().filter(i -> !i.isStep());
  }
}
