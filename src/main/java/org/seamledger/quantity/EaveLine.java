package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.roof.RoofFace;

/**
 * A straight piece of an eave, seen from above.
 *
 * @param from its begin, local coordinates, metres
 * @param along unit vector along it, level
 * @param inward unit vector square to it towards the roof, level
 * @param planLengthM its plan length
 */
public record EaveLine(Vec3 from, Vec3 along, Vec3 inward, double planLengthM) {

  private static final double SHORTEST = 1e-3;

  /** The pieces of a junction that bounds a face. */
  public static List<EaveLine> of(Junction line, RoofFace face) {
    double fall = Math.toRadians(face.fallAzimuthDegrees());
    Vec3 up = new Vec3(-Math.sin(fall), -Math.cos(fall), 0);
    List<EaveLine> lines = new ArrayList<>();
    for (int i = 1; i < line.path().size(); i++) {
      Vec3 d = line.path().get(i).minus(line.path().get(i - 1));
      double length = d.planLength();
      if (length > SHORTEST) {
        Vec3 along = new Vec3(d.x() / length, d.y() / length, 0);
        Vec3 left = new Vec3(-along.y(), along.x(), 0);
        lines.add(new EaveLine(line.path().get(i - 1), along, left.dot(up) < 0 ? left.negated() : left, length));
      }
    }
    return lines;
  }

  /** How far along the piece a point stands, metres. */
  public double along(Vec3 p) {
    return p.minus(from).dot(along);
  }

  /** How far a point stands from it in plan, metres; negative in front of the eave. */
  public double inward(Vec3 p) {
    return p.minus(from).dot(inward);
  }

  /** The point so far along and inward, at the height of the begin. */
  public Vec3 at(double alongM, double inwardM) {
    return from.plus(along.times(alongM)).plus(inward.times(inwardM));
  }
}
