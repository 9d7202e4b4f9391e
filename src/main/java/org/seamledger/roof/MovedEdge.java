package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Vec2;

/**
 * A stretch of an edge with the line that it should lie on: {@code point + t · direction} in the facet's plane.
 *
 * @param moved whether that is another line than its own
 */
record MovedEdge(Vec2 from, Vec2 to, Vec2 point, Vec2 direction, boolean moved) {

  /** An edge that stays. */
  static MovedEdge still(Vec2 a, Vec2 b) {
    Vec2 d = b.minus(a);
    return new MovedEdge(a, b, a, d.times(1 / d.length()), false);
  }

  /** The edge parted where lines begin and end, each part on the first line that has it. */
  List<MovedEdge> onto(List<FoldLine> lines) {
    List<FoldLine> ordered = new ArrayList<>(lines);
    ordered.sort(Comparator.comparingDouble(FoldLine::from).thenComparingDouble(t -> -t.to()));
    List<MovedEdge> pieces = new ArrayList<>();
    double done = 0;
    for (FoldLine line : ordered) {
      double begin = Math.max(done, line.from());
      if (line.to() <= begin) {
        continue;
      }
      if (begin > done) {
        pieces.add(part(done, begin, point, direction, false));
      }
      pieces.add(part(begin, line.to(), line.point(), line.direction(), true));
      done = line.to();
    }
    if (lines.isEmpty()) {
      pieces.add(this);
    } else if (done < 1) {
      pieces.add(part(done, 1, point, direction, false));
    }
    return pieces;
  }

  private MovedEdge part(double begin, double end, Vec2 at, Vec2 along, boolean moves) {
    return new MovedEdge(from.towards(to, begin), from.towards(to, end), at, along, moves);
  }

  /** The closed line through the stretches: neighbours meet where their lines cross, or are joined square where that is far off. */
  static List<Vec2> rejoined(List<MovedEdge> edges, SurfaceLimits.Folds limits) {
    List<Vec2> ring = new ArrayList<>();
    for (int k = 0; k < edges.size(); k++) {
      MovedEdge before = edges.get((k + edges.size() - 1) % edges.size());
      MovedEdge here = edges.get(k);
      Vec2 corner = here.from();
      if (!before.moved() && !here.moved()) {
        ring.add(corner);
        continue;
      }
      Vec2 cross = before.crossing(here, limits);
      if (cross != null && cross.distance(corner) < limits.cornerM()) {
        ring.add(cross);
      } else {
        ring.add(before.nearest(corner));
        ring.add(here.nearest(corner));
      }
    }
    return ring;
  }

  /** Where the lines cross; null where they run too nearly alike. */
  private Vec2 crossing(MovedEdge o, SurfaceLimits.Folds limits) {
    double sine = direction.cross(o.direction);
    if (Math.abs(sine) <= limits.cornerSine()) {
      return null;
    }
    double t = o.point.minus(point).cross(o.direction) / sine;
    return point.plus(direction.times(t));
  }

  private Vec2 nearest(Vec2 p) {
    return point.plus(direction.times(p.minus(point).dot(direction)));
  }
}
