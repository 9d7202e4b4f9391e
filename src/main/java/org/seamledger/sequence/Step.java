package org.seamledger.sequence;

import java.util.List;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;
import org.seamledger.quantity.layout.Panel;

/**
 * One work at one place.
 *
 * @param id the place's id, a slash, the work's
 * @param place id of a face, a junction or a node
 * @param amount square metres, metres or pieces, as the work's rate counts
 * @param after ids of the steps that must be done before it, sorted
 * @param holdPoints ids of what is looked at before it begins
 * @param locked whether one of these can't be skipped
 * @param metal what is fitted in it
 * @param panels that are laid in it
 */
public record Step(String id, String place, Work work, double amount, List<String> after, List<String> holdPoints, boolean locked,
    List<MetalLine> metal, List<SealLine> seals, List<FastenerRow> fasteners, List<Panel> panels) {

  public Step {
    after = List.copyOf(after);
    holdPoints = List.copyOf(holdPoints);
    metal = List.copyOf(metal);
    seals = List.copyOf(seals);
    fasteners = List.copyOf(fasteners);
    panels = List.copyOf(panels);
  }
}
