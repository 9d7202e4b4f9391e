package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.FaceSide;
import org.seamledger.node.NodeLine;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

/**
 * A line that leads away from a node, with the roof beside it.
 *
 * @param way unit vector away from the node
 * @param sides unit vectors from the line into each of its faces, in the face's plane and square to the line
 * @param faces ids of these faces, in the same order
 */
record Arm(NodeLine line, Vec3 way, List<Vec3> sides, List<String> faces) {

  static Arm of(NodeLine line, Vec3 at, List<RoofFace> faces) {
    Vec3 way = line.end().direction().unit();
    List<Vec3> sides = new ArrayList<>();
    List<String> beside = new ArrayList<>();
    for (RoofFace face : faces) {
      if (line.end().junction().faces().contains(face.id())) {
        boolean left = FaceSide.isLeft(line.end().junction().path(), face) == line.end().first();
        Vec3 side = nearest(face, at).plane().normal().cross(way);
        if (side.length() > 1e-9) {
          sides.add(left ? side.unit() : side.unit().negated());
          beside.add(face.id());
        }
      }
    }
    return new Arm(line, way, sides, beside);
  }

  /** The facet of a face that is nearest to a point. */
  static Facet nearest(RoofFace face, Vec3 at) {
    Facet best = face.facets().get(0);
    for (Facet f : face.facets()) {
      best = Math.abs(f.plane().height(at)) < Math.abs(best.plane().height(at)) - 1e-9 ? f : best;
    }
    return best;
  }

  /** Up at a wall or a curb, down over an edge; null where both sides are roof. */
  Vec3 leg() {
    return line.sort().isWall() || line.sort().isCurb() ? Vec3.Z : line.sort().isEdge() ? Vec3.Z.negated() : null;
  }
}
