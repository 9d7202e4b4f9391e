package org.seamledger.export.view;

import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * A perspective camera; local coordinates, metres.
 *
 * @param eye where it stands
 * @param forward unit direction in which it looks
 * @param up unit direction that is up in the picture, square to {@code forward}
 * @param fieldOfView vertical angle of the picture, degrees
 * @param aspect width of the picture by its height
 */
public record Camera(Vec3 eye, Vec3 forward, Vec3 up, double fieldOfView, double aspect) {

  /** What BCF 2.1 allows is 45° to 60°, and 3.0 whatever it is. */
  public static final double FIELD_OF_VIEW = 50;
  public static final double ASPECT = 1.5;

  /** Share of the picture that the points fill. */
  private static final double FILL = 0.72;

  Vec3 right() {
    return forward.cross(up);
  }

  /** One that looks from a direction at points, so far off that all are in the picture with a margin. */
  static Camera at(List<Vec3> points, Vec3 centre, Vec3 towardsEye, double nearest) {
    Vec3 forward = towardsEye.unit().negated();
    Vec3 side = forward.cross(Vec3.Z);
    Vec3 right = side.length() < 1e-6 ? Vec3.X : side.unit();
    Vec3 up = right.cross(forward);
    double high = FILL * Math.tan(Math.toRadians(FIELD_OF_VIEW / 2));
    double wide = high * ASPECT;
    double far = nearest;
    for (Vec3 p : points) {
      Vec3 q = p.minus(centre);
      double towards = -q.dot(forward);
      far = Math.max(far, towards + Math.max(Math.abs(q.dot(right)) / wide, Math.abs(q.dot(up)) / high));
    }
    return new Camera(centre.minus(forward.times(far)), forward, up, FIELD_OF_VIEW, ASPECT);
  }
}
