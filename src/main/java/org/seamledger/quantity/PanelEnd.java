package org.seamledger.quantity;

import java.util.List;

/**
 * Where a panel ends, and how it moves there. Lengths in metres; those of movement are 0 where the panel is fixed at this end.
 *
 * @param junctions ids of the lines that it ends at, sorted; none where no line lies there
 * @param kinds of those lines, sorted
 * @param growM how far the end moves outwards from installation to the highest temperature of the metal: the gap to leave
 * @param shrinkM how far it draws back from installation to the lowest
 * @param slotM length of a slot that lets a fastener stand while the end moves: both, and the fastener's shank
 */
public record PanelEnd(List<String> junctions, List<String> kinds, double growM, double shrinkM, double slotM) {

  public PanelEnd {
    junctions = List.copyOf(junctions);
    kinds = List.copyOf(kinds);
  }

  /** Whole movement between the lowest and the highest temperature of the metal. */
  public double movementM() {
    return growM + shrinkM;
  }
}
