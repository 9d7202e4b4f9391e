package org.seamledger.quantity;

import java.util.List;

/**
 * What one junction takes.
 *
 * @param closures the cut list of pieces between seams, per part and face the longest first
 * @param cornerPlugs plugs where a line of closures ends: at a rake, or mitred where lines meet; one an end and face
 * @param steps the arithmetic, a line of text each
 */
public record JunctionQuantities(String junction, List<MetalLine> metal, List<SealLine> seals, List<FastenerRow> fasteners,
    List<ClosureCut> closures, int seamEndPlugs, int cornerPlugs, List<String> steps) {

  public JunctionQuantities {
    metal = List.copyOf(metal);
    seals = List.copyOf(seals);
    fasteners = List.copyOf(fasteners);
    closures = List.copyOf(closures);
    steps = List.copyOf(steps);
  }

  /** Pieces between seams. */
  public int closurePieces() {
    return closures.stream().mapToInt(ClosureCut::count).sum();
  }
}
