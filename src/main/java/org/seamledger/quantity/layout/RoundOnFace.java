package org.seamledger.quantity.layout;

import java.util.List;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Vec3;

/**
 * A round thing through a face, and the seams near it.
 *
 * @param seamsCut seams that run through it
 * @param seamsUnderFlange seams that run through its flange only
 * @param clearanceM distance along the eave from its edge to the nearest seam, negative where a seam runs through it; infinite where the
 *     face has no seam
 */
public record RoundOnFace(int seamsCut, int seamsUnderFlange, double clearanceM) {

  /**
   * @param loop its outline on the face
   * @param marginM how far its flange reaches beyond the outline
   */
  public static RoundOnFace of(List<Vec3> loop, FaceLayout layout, double marginM) {
    FaceLayout.Grid grid = layout.gridAt(loop.get(0));
    Plane plane = grid.facet().plane();
    double left = loop.stream().mapToDouble(plane::u).min().orElse(0);
    double right = loop.stream().mapToDouble(plane::u).max().orElse(0);
    // Seams by position alone: one that the hole itself interrupts is the one that matters.
    int cut = count(layout, left, right);
    int under = count(layout, left - marginM, right + marginM) - cut;
    double nearest = layout.seams().stream().mapToDouble(s -> Math.max(left - s.position(), s.position() - right)).min()
        .orElse(Double.POSITIVE_INFINITY);
    return new RoundOnFace(cut, under, nearest);
  }

  private static int count(FaceLayout layout, double left, double right) {
    return (int) layout.seams().stream().filter(s -> s.position() > left && s.position() < right).count();
  }

  /** True where a seam runs through it or its flange. */
  public boolean onSeam() {
    return seamsCut + seamsUnderFlange > 0;
  }
}
