package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.roof.Obstacle.Penetration;
import org.seamledger.roof.Obstacle.Wall;

/**
 * Posts, studs and boards in a row along an edge of a surface are one wall, as a timber frame is modelled: one unbroken line. Single ones,
 * and what stands in the field, go through the roof each by itself.
 */
final class WallRows {

  /** A member of a row along an edge: from, to along the edge, and across it. */
  private record Member(Penetration what, double from, double to, double low, double high) {
  }

  private final Tolerance tolerance;
  private final SurfaceLimits.Obstacles limits;

  private WallRows(Tolerance tolerance, SurfaceLimits.Obstacles limits) {
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /**
   * The obstacles with rows joined to walls, which stand where the first of their members stood.
   *
   * @param surface whose edges rows may stand at, without holes
   */
  static List<Obstacle> joined(List<Obstacle> obstacles, Region surface, Tolerance tolerance, SurfaceLimits.Obstacles limits) {
    List<Obstacle> all = new ArrayList<>(obstacles);
    WallRows rows = new WallRows(tolerance, limits);
    for (Region.Ring ring : all.stream().anyMatch(WallRows::mayBeMember) ? surface.rings() : List.<Region.Ring>of()) {
      List<Vec2> p = ring.points();
      for (int k = 0; k < p.size(); k++) {
        rows.join(all, p.get(k), p.get((k + 1) % p.size()));
      }
    }
    return all;
  }

  private static boolean mayBeMember(Obstacle o) {
    return o instanceof Penetration p && !p.passage().service() && !p.round();
  }

  private void join(List<Obstacle> all, Vec2 a, Vec2 b) {
    Vec2 along = b.minus(a).times(1 / a.distance(b));
    List<Member> members = all.stream().filter(WallRows::mayBeMember).map(o -> member((Penetration) o, a, along))
        .filter(m -> isBeside(m, a.distance(b))).sorted(Comparator.comparingDouble(Member::from)).toList();
    List<Member> row = new ArrayList<>();
    for (Member m : members) {
      if (!row.isEmpty() && m.from() - row.stream().mapToDouble(Member::to).max().orElseThrow() > limits.rowSpacingM()) {
        replace(all, row, a, along);
        row.clear();
      }
      row.add(m);
    }
    replace(all, row, a, along);
  }

  private static Member member(Penetration p, Vec2 a, Vec2 along) {
    double from = Double.POSITIVE_INFINITY;
    double to = Double.NEGATIVE_INFINITY;
    double low = from;
    double high = to;
    for (Region.Ring ring : p.footprint().rings()) {
      for (Vec2 c : ring.points()) {
        double t = c.minus(a).dot(along);
        double s = c.minus(a).dot(along.left());
        from = Math.min(from, t);
        to = Math.max(to, t);
        low = Math.min(low, s);
        high = Math.max(high, s);
      }
    }
    return new Member(p, from, to, low, high);
  }

  /** Whether it is narrow across the edge, and stands on it or close beside it. */
  private boolean isBeside(Member m, double length) {
    double gap = tolerance.gapM();
    return m.high() - m.low() <= limits.rowWidthM() && m.low() <= gap && m.high() >= -gap && m.to() >= -gap && m.from() <= length + gap;
  }

  private void replace(List<Obstacle> all, List<Member> row, Vec2 a, Vec2 along) {
    boolean board = row.stream().anyMatch(m -> m.to() - m.from() > limits.boardRatio() * (m.high() - m.low()));
    if (row.isEmpty() || row.size() < limits.rowPosts() && !board) {
      return;
    }
    Vec2 left = along.left();
    double from = row.stream().mapToDouble(Member::from).min().orElseThrow();
    double to = row.stream().mapToDouble(Member::to).max().orElseThrow();
    double low = row.stream().mapToDouble(Member::low).min().orElseThrow();
    double high = row.stream().mapToDouble(Member::high).max().orElseThrow();
    Region strip = Region.polygon(List.of(a.plus(along.times(from)).plus(left.times(low)), a.plus(along.times(to)).plus(left.times(low)),
        a.plus(along.times(to)).plus(left.times(high)), a.plus(along.times(from)).plus(left.times(high))));
    Penetration first = row.stream().map(Member::what).min(Comparator.comparing(Penetration::globalId)).orElseThrow();
    double height = row.stream().mapToDouble(m -> m.what().heightM()).max().orElseThrow();
    int at = all.indexOf(row.get(0).what());
    all.set(at, new Wall(first.globalId(), first.ifcClass(), strip, height));
    row.forEach(m -> all.remove(m.what()));
  }
}
