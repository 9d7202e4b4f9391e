package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.layout.FaceLayout;
import org.seamledger.quantity.layout.LineOnFace;
import org.seamledger.quantity.layout.LinePiece;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

/**
 * One face of a junction.
 *
 * @param pieces of the line between the face's seams
 * @param below true where the face falls away from the line, false where it drains into it
 */
record JunctionSide(String face, List<LinePiece> pieces, boolean below) {

  /** How far beside the line the face is looked for, metres. */
  private static final double BESIDE = 0.02;

  static JunctionSide of(Junction junction, RoofFace face, FaceLayout layout) {
    return new JunctionSide(face.id(), LineOnFace.pieces(junction.path(), layout), fallsAway(junction.path(), face));
  }

  /** Seams that end at the line. */
  int seams() {
    return Math.max(0, cut().size() - 1);
  }

  /** The pieces that have a width. */
  List<LinePiece> cut() {
    List<LinePiece> cut = new ArrayList<>(pieces.size());
    for (LinePiece p : pieces) {
      if (p.widthM() != 0) {
        cut.add(p);
      }
    }
    return cut;
  }

  private static boolean fallsAway(List<Vec3> path, RoofFace face) {
    int longest = 1;
    for (int i = 2; i < path.size(); i++) {
      longest = path.get(i - 1).distance(path.get(i)) > path.get(longest - 1).distance(path.get(longest)) ? i : longest;
    }
    Vec3 a = path.get(longest - 1);
    Vec3 b = path.get(longest);
    Vec3 middle = a.towards(b, 0.5);
    Vec3 along = b.minus(a);
    if (along.planLength() < 1e-9) {
      return false;
    }
    Vec3 beside = new Vec3(-along.y(), along.x(), 0).unit().times(BESIDE);
    Vec3 left = middle.plus(beside);
    Vec3 right = middle.minus(beside);
    Facet facet = nearest(middle, face);
    Vec3 into = distance(left, facet) <= distance(right, facet) ? left : right;
    Plane plane = facet.plane();
    return plane.elevation(into.x(), into.y()) < plane.elevation(middle.x(), middle.y());
  }

  private static Facet nearest(Vec3 point, RoofFace face) {
    Facet best = face.facets().get(0);
    for (Facet f : face.facets().subList(1, face.facets().size())) {
      if (distance(point, f) < distance(point, best) - 1e-9) {
        best = f;
      }
    }
    return best;
  }

  private static double distance(Vec3 point, Facet facet) {
    Plane plane = facet.plane();
    Vec3 on = new Vec3(point.x(), point.y(), plane.elevation(point.x(), point.y()));
    return facet.area().distance(new Vec2(plane.u(on), plane.v(on)));
  }
}
