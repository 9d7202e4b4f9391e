package org.seamledger.junction;

import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * One end of an open line.
 *
 * @param first whether it is the end at which the path begins
 */
public record LineEnd(Junction junction, boolean first) {

  /** Lines that rise less than this, degrees, are level at both their ends: the limit of level lines in {@code shapes/kinds.ttl}. */
  private static final double LEVEL_DEGREES = 0.5;
  /** How far along a line its direction is taken, metres: slack in a model's corners turns only what is nearer. */
  private static final double REACH = 0.2;

  /** Where an end lies on its line. */
  public enum Height {
    LEVEL, HIGH, LOW
  }

  /** Whether a line of this inclination, degrees, counts as level. */
  public static boolean isLevel(double inclinationDegrees) {
    return inclinationDegrees < LEVEL_DEGREES;
  }

  /** The place, local coordinates, metres. */
  public Vec3 point() {
    List<Vec3> path = junction.path();
    return path.get(first ? 0 : path.size() - 1);
  }

  /** The way from the end to the line's first corner that isn't just beside it, or to the line's other end. */
  public Vec3 direction() {
    List<Vec3> path = junction.path();
    Vec3 end = point();
    int step = first ? 1 : -1;
    int i = first ? 1 : path.size() - 2;
    while (i > 0 && i < path.size() - 1 && path.get(i).distance(end) < REACH) {
      i += step;
    }
    return path.get(i).minus(end);
  }

  /** Whether its line falls or rises from it, or is level: along a vault both ends of an edge are low. */
  public Height height() {
    Vec3 way = direction();
    if (isLevel(Math.toDegrees(Math.atan2(Math.abs(way.z()), way.planLength())))) {
      return Height.LEVEL;
    }
    return way.z() < 0 ? Height.HIGH : Height.LOW;
  }
}
