package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * One face of the roof: the exposed top area in one plane, or a run of narrow facets that together are a curved face.
 *
 * @param id {@code F1}, {@code F2}, … in an order that depends on the surface only
 * @param facets one for a flat face, from the lowest up for a curved one
 * @param elements GlobalIds of the elements whose surface it is, sorted
 */
public record RoofFace(String id, List<Facet> facets, List<String> elements) {

  public RoofFace {
    facets = List.copyOf(facets);
    elements = List.copyOf(elements);
  }

  public boolean isCurved() {
    return facets.size() > 1;
  }

  /** True area, square metres. */
  public double areaM2() {
    return facets.stream().mapToDouble(f -> f.area().area()).sum();
  }

  /** Area of the horizontal projection, square metres. */
  public double planAreaM2() {
    return facets.stream().mapToDouble(f -> f.area().area() * Math.abs(f.plane().normal().z())).sum();
  }

  /** Length of the outline, holes included, metres; where facets of a curved face meet there is no outline. */
  public double perimeterM() {
    double sum = 0;
    for (int i = 0; i < facets.size(); i++) {
      sum += facets.get(i).area().perimeter();
      if (i > 0) {
        sum -= 2 * FacetSeam.lengthM(facets.get(i - 1), facets.get(i));
      }
    }
    return sum;
  }

  /** Mean upward normal, weighted by area; unit length. */
  public Vec3 meanNormal() {
    Vec3 sum = Vec3.ZERO;
    for (Facet f : facets) {
      sum = sum.plus(f.plane().normal().times(f.area().area()));
    }
    return sum.unit();
  }

  /** Angle to the horizontal, degrees; the mean normal's for a curved face. */
  public double slopeDegrees() {
    Vec3 n = meanNormal();
    return Math.toDegrees(Math.atan2(n.planLength(), n.z()));
  }

  /** Rise in 12 of run: 12 · tan(slope). */
  public double risePer12() {
    Vec3 n = meanNormal();
    return 12 * n.planLength() / n.z();
  }

  /** Direction in which water leaves, degrees clockwise from +Y of the model, 0 to 360; 0 for a level face. */
  public double fallAzimuthDegrees() {
    Vec3 n = meanNormal();
    if (n.planLength() < 1e-9) {
      return 0;
    }
    double degrees = Math.toDegrees(Math.atan2(n.x(), n.y()));
    return degrees < 0 ? degrees + 360 : degrees;
  }
}
