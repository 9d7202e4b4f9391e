package org.seamledger.quantity.layout;

import java.util.List;
import java.util.Optional;
import org.seamledger.geometry.Vec3;

/**
 * A blank of a pan's width to cut: one connected piece of face between two seams, or between a seam and an edge.
 *
 * @param pan number of the pan from 1 at the left
 * @param widthM extent along the eave
 * @param lengthM longest extent along the seams
 * @param lowBevelDegrees cut of the low end from square: positive where the right-hand corner is the longer, 0 for a square end
 * @param highBevelDegrees the same for the high end
 * @param areaM2 what remains of the blank
 * @param shaped true where it takes more than one straight cut an end: a notch, a hole, two bevels
 * @param sliver true where it is narrower than the least width that can be worked
 * @param low its low end, from the left; what a notch cuts in above it is not its end
 * @param high its high end
 * @param piecesM lengths of the pieces that it is lapped of, from the low end, without their laps; one where it is made in one
 */
public record Panel(int pan, double widthM, double lengthM, double lowBevelDegrees, double highBevelDegrees, double areaM2,
    boolean shaped, boolean sliver, List<EndCut> low, List<EndCut> high, List<Double> piecesM) {

  public Panel {
    low = List.copyOf(low);
    high = List.copyOf(high);
    // Most are made in one: of hundreds of thousands a list each is spared.
    piecesM = piecesM.size() == 1 && piecesM.get(0) == lengthM ? List.of() : List.copyOf(piecesM);
  }

  @Override
  public List<Double> piecesM() {
    return piecesM.isEmpty() ? List.of(lengthM) : piecesM;
  }

  /** Middle of the widest stretch of its low end; empty where it has none. */
  public Optional<Vec3> lowMiddle() {
    EndCut widest = null;
    for (EndCut c : low) {
      widest = widest == null || Double.compare(c.widthM(), widest.widthM()) > 0 ? c : widest;
    }
    return Optional.ofNullable(widest).map(c -> c.left().plus(c.right()).times(0.5));
  }
}
