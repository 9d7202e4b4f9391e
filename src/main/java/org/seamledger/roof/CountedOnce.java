package org.seamledger.roof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;

/**
 * Settles which plane has an area that two planes carry which turn so little against each other that they lie together over more than a
 * strip, as facets of a
 * twisted surface do: the larger keeps it. Without this such an area would count twice.
 */
final class CountedOnce {

  private final List<TopSurface> tops;
  private final Tolerance tolerance;
  private final double parallel;

  private CountedOnce(List<TopSurface> tops, Tolerance tolerance, SurfaceLimits.Tops limits) {
    this.tops = new ArrayList<>(tops);
    this.tolerance = tolerance;
    this.parallel = Math.sin(Math.toRadians(limits.parallelDegrees()));
  }

  /** In the same order; what has nothing left is dropped. */
  static List<TopSurface> of(List<TopSurface> tops, Tolerance tolerance, SurfaceLimits.Tops limits) {
    return new CountedOnce(tops, tolerance, limits).run();
  }

  private List<TopSurface> run() {
    List<Box3> boxes = tops.stream().map(t -> TopSurface.box(t.plane(), t.own())).toList();
    List<Integer> bySize = new ArrayList<>();
    for (int i = 0; i < tops.size(); i++) {
      bySize.add(i);
    }
    PlanIndex<Integer> near = new PlanIndex<>(List.copyOf(bySize), boxes::get);
    bySize.sort(Comparator.comparingDouble((Integer i) -> -SurfacePlanes.wholeMm2(tops.get(i).own().area())).thenComparing(i -> i));
    int[] rank = new int[tops.size()];
    for (int r = 0; r < rank.length; r++) {
      rank[bySize.get(r)] = r;
    }
    for (int i : bySize) {
      near.overlapping(boxes.get(i).grown(tolerance.coincidenceM())).stream().filter(o -> rank[o] < rank[i])
          .sorted(Comparator.comparing(o -> rank[o]))
          .forEach(o -> tops.set(i, without(tops.get(i), tops.get(o))));
    }
    return tops.stream().filter(t -> !t.own().isEmpty()).toList();
  }

  private TopSurface without(TopSurface top, TopSurface larger) {
    if (top.own().isEmpty() || larger.plane().normal().cross(top.plane().normal()).length() >= parallel) {
      return top;
    }
    Region twice = Region.unionOf(together(larger, top.plane()).intersect(top.own()).parts().stream()
        .filter(r -> !r.isNarrowerThan(tolerance.gapM())).toList());
    if (twice.isEmpty()) {
      return top;
    }
    List<TopSurface.Piece> pieces = top.pieces().stream()
        .map(p -> new TopSurface.Piece(p.part(), rest(p.region(), twice))).filter(p -> !p.region().isEmpty()).toList();
    Region rest = rest(top.own(), twice);
    return new TopSurface(top.plane(), rest, rest, pieces, List.of());
  }

  /** Slivers beside the line where one facet hands over to the other go with it: edges meet across their width. */
  private Region rest(Region region, Region taken) {
    return Region.unionOf(region.minus(taken).parts().stream().filter(r -> !r.isNarrowerThan(tolerance.gapM() / 2)).toList());
  }

  /** Where a surface lies no farther from the plane than coincident planes may, in the plane's coordinates. */
  private Region together(TopSurface larger, Plane plane) {
    Vec3 n = larger.plane().normal();
    double a = n.dot(plane.u());
    double b = n.dot(plane.v());
    double c = larger.plane().height(plane.origin());
    double reach = tolerance.coincidenceM();
    return larger.own().projected(larger.plane(), plane, plane.normal()).cut(a, b, reach - c).cut(-a, -b, reach + c);
  }
}
