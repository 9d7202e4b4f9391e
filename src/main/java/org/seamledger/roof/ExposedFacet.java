package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;

/**
 * A connected exposed piece of one plane with what is known of its surroundings.
 *
 * @param thicknessM of the thickest element that carries it, zero where it has none
 * @param asMeshed whether it is a facet of a curve just as the element's triangles have it
 */
record ExposedFacet(Plane plane, Region region, TopSurface top, List<Obstacle> obstacles, double thicknessM, boolean asMeshed) {

  ExposedFacet withRegion(Region other) {
    return new ExposedFacet(plane, other, top, obstacles, thicknessM, asMeshed);
  }

  /** Whether the other one may be the next facet of the same smooth surface: of the same element, and turning by less than a step. */
  boolean goesOnIn(ExposedFacet other, Tolerance tolerance) {
    Vec3 n = plane.normal();
    Vec3 m = other.plane.normal();
    return Math.toDegrees(Math.atan2(n.cross(m).length(), n.dot(m))) < tolerance.facetTurnDegrees()
        && top.pieces().stream().anyMatch(p -> other.top.pieces().stream().anyMatch(o -> o.part() == p.part()));
  }

  Box3 box() {
    return TopSurface.box(plane, region);
  }
}
