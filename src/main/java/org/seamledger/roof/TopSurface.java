package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * What roof elements have of top surface in one plane, before anything that stands on it is taken away.
 *
 * @param plane normal up
 * @param own material just below the plane and no material of the same element above it
 * @param free {@code own} less whatever other roof elements' bodies cover or pierce
 * @param pieces who owns what of it
 * @param crossing roof elements that pierce the plane or lie on it, with the section
 */
record TopSurface(Plane plane, Region own, Region free, List<Piece> pieces, List<Piece> crossing) {

  /** Room round a window, metres: any that is larger than the tolerances. */
  private static final double SPARE = 1;

  /** An element's region in the plane. */
  record Piece(Part part, Region region) {
  }

  TopSurface {
    pieces = List.copyOf(pieces);
    crossing = List.copyOf(crossing);
  }

  /** What elements own of a plane, nothing of it covered yet; the pieces must not be empty. */
  static TopSurface of(Plane plane, List<Piece> pieces) {
    Region own = Region.unionOf(pieces.stream().map(Piece::region).toList());
    return new TopSurface(plane, own, own, pieces, List.of());
  }

  /** What an element owns of it. */
  Region of(Part part) {
    return Region.unionOf(pieces.stream().filter(p -> p.part() == part).map(Piece::region).toList());
  }

  /** The point of space with these coordinates in the plane, metres. */
  static Vec3 at(Plane plane, Vec2 p) {
    return plane.at(p.u(), p.v());
  }

  /** Box in space of a region of a plane. */
  static Box3 box(Plane plane, Region region) {
    List<Vec3> corners = new ArrayList<>();
    for (Region.Ring ring : region.rings()) {
      for (Vec2 p : ring.points()) {
        corners.add(at(plane, p));
      }
    }
    return Box3.of(corners);
  }

  /** A rectangle of the plane that holds the projection of the box, with room to spare. */
  static Region window(Plane plane, Box3 box) {
    double minU = Double.POSITIVE_INFINITY;
    double minV = minU;
    double maxU = -minU;
    double maxV = -minU;
    for (int k = 0; k < 8; k++) {
      Vec3 p = new Vec3((k & 1) == 0 ? box.minX() : box.maxX(), (k & 2) == 0 ? box.minY() : box.maxY(),
          (k & 4) == 0 ? box.minZ() : box.maxZ());
      minU = Math.min(minU, plane.u(p));
      maxU = Math.max(maxU, plane.u(p));
      minV = Math.min(minV, plane.v(p));
      maxV = Math.max(maxV, plane.v(p));
    }
    return Region.rectangle(minU - SPARE, minV - SPARE, maxU + SPARE, maxV + SPARE);
  }
}
