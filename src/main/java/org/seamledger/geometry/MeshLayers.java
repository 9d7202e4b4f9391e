package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.List;

/** What of a mesh's triangles lies in a plane: every corner within the coincidence of it. */
final class MeshLayers {

  private final Mesh mesh;
  private final Plane plane;
  private final double coincidence;

  /** @param coincidence corners within this distance of the plane (metres) lie in it */
  MeshLayers(Mesh mesh, Plane plane, double coincidence) {
    this.mesh = mesh;
    this.plane = plane;
    this.coincidence = coincidence;
  }

  /** The triangles that lie in the plane. */
  Region lyingIn() {
    return Region.unionOf(lying(0));
  }

  /** The triangles that lie in the plane, less what lies over them along the plane's normal. */
  Region bare() {
    Region lying = lyingIn();
    List<Region> over = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      List<Vec2> above = above(t);
      if (mayLieOver(above, lying)) {
        over.add(Region.polygon(above));
      }
    }
    return lying.minus(Region.unionOf(over));
  }

  private static boolean mayLieOver(List<Vec2> above, Region lying) {
    return above.stream().anyMatch(p -> p.u() > lying.minU()) && above.stream().anyMatch(p -> p.u() < lying.maxU())
        && above.stream().anyMatch(p -> p.v() > lying.minV()) && above.stream().anyMatch(p -> p.v() < lying.maxV());
  }

  /** Outline of the part of a triangle that is farther above the plane than what lies in it. */
  private List<Vec2> above(int t) {
    List<Vec2> outline = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      Vec3 p = mesh.corner(t, k);
      Vec3 q = mesh.corner(t, (k + 1) % 3);
      double from = plane.height(p) - coincidence;
      double to = plane.height(q) - coincidence;
      if (from > 0) {
        outline.add(new Vec2(plane.u(p), plane.v(p)));
      }
      if (from > 0 != to > 0) {
        Vec3 cut = p.towards(q, from / (from - to));
        outline.add(new Vec2(plane.u(cut), plane.v(cut)));
      }
    }
    return outline;
  }

  /** Where two layers of triangles lie in the plane, so that what is between them is too thin to be cut. */
  Region thin() {
    List<Region> up = lying(1);
    List<Region> down = up.isEmpty() ? up : lying(-1);
    return down.isEmpty() ? Region.EMPTY : Region.unionOf(up).intersect(Region.unionOf(down));
  }

  /** Triangles in the plane: those that turn with it (1), against it (-1), or either way (0). */
  private List<Region> lying(int turn) {
    List<Region> parts = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      List<Vec2> corners = new ArrayList<>(3);
      for (int k = 0; k < 3; k++) {
        Vec3 p = mesh.corner(t, k);
        if (Math.abs(plane.height(p)) <= coincidence) {
          corners.add(new Vec2(plane.u(p), plane.v(p)));
        }
      }
      if (corners.size() == 3 && (turn == 0 || turn * twiceArea(corners) > 0)) {
        parts.add(Region.polygon(corners));
      }
    }
    return parts;
  }

  private static double twiceArea(List<Vec2> c) {
    return c.get(1).minus(c.get(0)).cross(c.get(2).minus(c.get(0)));
  }
}
