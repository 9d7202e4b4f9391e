package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;

/**
 * A connected exposed piece of one plane with what is known of its surroundings.
 *
 * @param thicknessM of the thickest element that carries it, zero where it has none
 */
record ExposedFacet(Plane plane, Region region, TopSurface top, List<Obstacle> obstacles, double thicknessM) {

  ExposedFacet withRegion(Region other) {
    return new ExposedFacet(plane, other, top, obstacles, thicknessM);
  }

  Box3 box() {
    return TopSurface.box(plane, region);
  }
}
