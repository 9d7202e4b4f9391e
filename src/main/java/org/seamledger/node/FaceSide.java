package org.seamledger.node;

import java.util.List;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

/** On which side of a line its face lies. */
public final class FaceSide {

  /** How far beside the line the face is looked for, metres. */
  private static final double BESIDE = 0.02;

  private FaceSide() {
  }

  /** Whether a face lies to the left of a path along its outline, in plan; looked at in the middle of the path's longest stretch. */
  public static boolean isLeft(List<Vec3> path, RoofFace face) {
    int longest = 1;
    for (int i = 2; i < path.size(); i++) {
      longest = path.get(i - 1).distance(path.get(i)) > path.get(longest - 1).distance(path.get(longest)) ? i : longest;
    }
    Vec3 way = path.get(longest).minus(path.get(longest - 1));
    if (way.planLength() == 0) {
      return true;
    }
    Vec3 middle = path.get(longest - 1).towards(path.get(longest), 0.5);
    Vec3 beside = new Vec3(-way.y(), way.x(), 0).unit().times(BESIDE);
    return distance(middle.plus(beside), face) < distance(middle.minus(beside), face);
  }

  private static double distance(Vec3 point, RoofFace face) {
    double least = Double.MAX_VALUE;
    for (Facet f : face.facets()) {
      least = Math.min(least, distance(point, f));
    }
    return least;
  }

  private static double distance(Vec3 point, Facet facet) {
    Plane plane = facet.plane();
    Vec3 on = new Vec3(point.x(), point.y(), plane.elevation(point.x(), point.y()));
    return facet.area().distance(new Vec2(plane.u(on), plane.v(on)));
  }
}
