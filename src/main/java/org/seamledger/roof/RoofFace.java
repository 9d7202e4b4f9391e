package org.seamledger.roof;

import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * One face of the roof: the exposed top area in one plane, or a run of narrow facets that together are a curved face.
 *
 * @param id {@code F1}, {@code F2}, … in an order that depends on the surface only
 * @param facets one for a flat face, from the lowest up for a curved one
 * @param elements GlobalIds of the elements whose surface it is, sorted
 * @param innerEdgesM length of the facets' outlines where they meet each other, counted on both sides, metres; zero for one facet
 * @param isCurved whether the facets turn against each other as those of a curve do; else they are one flat face drawn in pieces
 */
public record RoofFace(String id, List<Facet> facets, List<String> elements, double innerEdgesM, boolean isCurved) {

  /** Below this horizontal part of the unit normal a face is level: its fall has no direction. */
  private static final double LEVEL = 1e-9;
  private static final double FULL_TURN = 360;
  private static final double RUN = 12;

  public RoofFace {
    facets = List.copyOf(facets);
    elements = List.copyOf(elements);
  }

  /** A face of one facet. */
  public RoofFace(String id, Facet facet, List<String> elements) {
    this(id, List.of(facet), elements, 0, false);
  }

  /** True area, square metres. */
  public double areaM2() {
    return facets.stream().mapToDouble(f -> f.area().area()).sum();
  }

  /** Area of the horizontal projection, square metres. */
  public double planAreaM2() {
    return facets.stream().mapToDouble(f -> f.area().area() * Math.abs(f.plane().normal().z())).sum();
  }

  /** Length of the outline, holes included, metres; where facets of one face meet there is no outline. */
  public double perimeterM() {
    return facets.stream().mapToDouble(f -> f.area().perimeter()).sum() - innerEdgesM;
  }

  /** Mean upward normal, weighted by area; unit length. */
  public Vec3 meanNormal() {
    Vec3 sum = Vec3.ZERO;
    for (Facet f : facets) {
      sum = sum.plus(f.plane().normal().times(f.area().area()));
    }
    return sum.unit();
  }

  /** Angle to the horizontal, degrees; of a curved face the mean normal's, or the mean of its facets' where it falls to both sides. */
  public double slopeDegrees() {
    if (isCrowned()) {
      return facets.stream().mapToDouble(f -> f.area().area() * f.plane().slopeDegrees()).sum() / areaM2();
    }
    Vec3 n = meanNormal();
    return Math.toDegrees(Math.atan2(n.planLength(), n.z()));
  }

  /** Rise in 12 of run: 12 · tan(slope). */
  public double risePer12() {
    return RUN * Math.tan(Math.toRadians(slopeDegrees()));
  }

  /** Whether it falls to opposite sides, so that its slopes cancel: a vault with its crown. */
  private boolean isCrowned() {
    double slopes = facets.stream().mapToDouble(f -> f.area().area() * f.plane().normal().planLength()).sum();
    Vec3 sum = Vec3.ZERO;
    for (Facet f : facets) {
      sum = sum.plus(f.plane().normal().times(f.area().area()));
    }
    return isCurved && sum.planLength() < slopes / 2;
  }

  /** Plan direction in which the facets slope most, whichever way: the principal axis of their normals' plan parts. */
  private Vec3 acrossTheCrown() {
    double xx = 0;
    double xy = 0;
    double yy = 0;
    for (Facet f : facets) {
      Vec3 n = f.plane().normal();
      xx += f.area().area() * n.x() * n.x();
      xy += f.area().area() * n.x() * n.y();
      yy += f.area().area() * n.y() * n.y();
    }
    double angle = Math.atan2(2 * xy, xx - yy) / 2;
    Vec3 across = new Vec3(Math.cos(angle), Math.sin(angle), 0);
    return across.dot(meanNormal()) < 0 ? across.negated() : across;
  }

  /** Direction in which water leaves, degrees clockwise from +Y of the model, 0 to 360; 0 for a level face. */
  public double fallAzimuthDegrees() {
    Vec3 n = isCrowned() ? acrossTheCrown() : meanNormal();
    if (n.planLength() < LEVEL) {
      return 0;
    }
    double degrees = Math.toDegrees(Math.atan2(n.x(), n.y()));
    return degrees < 0 ? degrees + FULL_TURN : degrees;
  }
}
