package org.seamledger.quantity;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.seamledger.detail.FixedLine;
import org.seamledger.geometry.Vec3;
import org.seamledger.quantity.layout.EndCut;
import org.seamledger.quantity.layout.Panel;

/**
 * A panel with the line along which it is fixed.
 *
 * @param fixed that line, {@link FixedLine#NONE} where the rules give none or several
 * @param ruled every line that the rules give it
 */
public record FixedPanel(String face, Panel panel, FixedLine fixed, List<FixedLine> ruled, PanelEnd low, PanelEnd high) {

  public FixedPanel {
    ruled = List.copyOf(ruled);
  }

  /** The fixed line from left to right, in the building's local coordinates; that of clips across the middle; empty where there is none. */
  public List<Vec3> line() {
    return switch (fixed) {
      case LOW_END -> corners(panel.low());
      case HIGH_END -> corners(panel.high());
      case CLIP -> panel.low().isEmpty() || panel.high().isEmpty() ? List.of()
          : List.of(panel.low().get(0).left().towards(panel.high().get(0).left(), 0.5),
              last(panel.low()).right().towards(last(panel.high()).right(), 0.5));
      case NONE -> List.of();
    };
  }

  private static EndCut last(List<EndCut> cuts) {
    return cuts.get(cuts.size() - 1);
  }

  private static List<Vec3> corners(List<EndCut> cuts) {
    Set<Vec3> corners = new LinkedHashSet<>();
    for (EndCut c : cuts) {
      corners.add(c.left());
      corners.add(c.right());
    }
    return List.copyOf(corners);
  }

  /** Middle of an end, on the roof; null where the panel has no such end. */
  public Vec3 middle(boolean highEnd) {
    List<EndCut> cuts = highEnd ? panel.high() : panel.low();
    return cuts.isEmpty() ? null : cuts.get(0).left().towards(last(cuts).right(), 0.5);
  }
}
