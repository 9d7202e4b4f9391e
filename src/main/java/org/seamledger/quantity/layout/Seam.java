package org.seamledger.quantity.layout;

import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * One seam of a face.
 *
 * @param number from 1 at the left
 * @param position along the eave, metres, in the face's own u coordinate
 * @param stretches where it runs, each from its low end to its high end in space; several where a hole or a notch interrupts it
 */
public record Seam(int number, double position, List<Stretch> stretches) {

  public Seam {
    stretches = List.copyOf(stretches);
  }

  /** A piece of the seam, from its low to its high end, metres. */
  public record Stretch(Vec3 low, Vec3 high) {
    /** True length, metres. */
    public double lengthM() {
      return low.distance(high);
    }
  }

  /** Length of all stretches, metres. */
  public double lengthM() {
    return stretches.stream().mapToDouble(Stretch::lengthM).sum();
  }
}
