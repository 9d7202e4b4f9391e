package org.seamledger.quantity.layout;

import org.seamledger.geometry.Vec3;

/**
 * A stretch of a panel's low or high end as it lies on the roof, from its left to its right corner.
 *
 * @param left in the building's local coordinates, metres
 * @param right likewise
 * @param fromU position of the left corner along the eave, in the facet's plane
 * @param toU and of the right corner
 */
public record EndCut(Vec3 left, Vec3 right, double fromU, double toU) {

  /** Extent along the eave, metres. */
  public double widthM() {
    return toU - fromU;
  }
}
