package org.seamledger.roof;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;

/** Whether normals are those of one vault: near one great circle, and filling a part of it in many small steps. */
final class VaultNormals {

  /** Where a normal stands along the great circle, and how far off it: degrees. */
  private record Direction(double at, double off) {
  }

  private final List<Direction> directions;
  private final double first;
  private final double spread;
  private final Tolerance tolerance;
  private final SurfaceLimits.Faces limits;

  private VaultNormals(List<Direction> directions, Tolerance tolerance, SurfaceLimits.Faces limits) {
    this.directions = directions;
    this.first = directions.get(0).at();
    this.spread = directions.get(directions.size() - 1).at() - first;
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /** Whether unit normals are of one vault whose generators run along the axis. */
  static boolean areOfOne(List<Vec3> normals, Vec3 axis, Tolerance tolerance, SurfaceLimits.Faces limits) {
    Vec3 zero = normals.get(0);
    Vec3 quarter = axis.cross(zero).unit();
    VaultNormals all = new VaultNormals(normals.stream()
        .map(n -> new Direction(Math.toDegrees(Math.atan2(n.dot(quarter), n.dot(zero))), Math.toDegrees(Math.asin(n.dot(axis)))))
        .sorted(Comparator.comparingDouble(Direction::at)).toList(), tolerance, limits);
    return all.steps() >= limits.vaultSteps() && all.areNear();
  }

  /** How many directions there are along the circle; none where a step between two is too wide for a curve. */
  private int steps() {
    int steps = 1;
    double last = first;
    double counted = first;
    for (Direction d : directions) {
      if (d.at() - last >= tolerance.facetTurnDegrees()) {
        return 0;
      }
      last = d.at();
      // However fine the steps are: those since the last direction that counts add up.
      if (d.at() - counted > limits.vaultSameDegrees()) {
        steps++;
        counted = d.at();
      }
    }
    return steps;
  }

  /**
   * Whether every direction lies near the circle, or as many miss it to one side as to the other all along it: a triangle whose corners lie
   * on the curve at different places across it is tilted, those beside it are tilted back, and the surface bends one way only. Falls to
   * drains tilt both ways, too, but leave most of the circle out.
   */
  private boolean areNear() {
    double most = limits.vaultOff() * spread;
    if (directions.stream().allMatch(d -> Math.abs(d.off()) <= most)) {
      return true;
    }
    Map<Integer, List<Direction>> along = directions.stream().collect(Collectors.groupingBy(this::part));
    return along.size() == limits.vaultSteps()
        && directions.stream().mapToDouble(d -> d.off() * d.off()).average().orElseThrow() <= most * most
        && along.values().stream()
            .allMatch(some -> Math.abs(some.stream().mapToDouble(Direction::off).average().orElseThrow()) <= most / 2);
  }

  /** In which of equal parts of the circle's used arc a direction lies. */
  private int part(Direction d) {
    return (int) Math.min(limits.vaultSteps() - 1, limits.vaultSteps() * (d.at() - first) / spread);
  }
}
