package org.seamledger.roof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Side;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Headway;

/**
 * Finds the top surface of a group of roof elements.
 *
 * <ol>
 * <li>In every plane that any of them has, the section just below less the section just above is top surface.
 * <li>What is modelled in relief gets its main plane.
 * <li>What two planes claim that all but lie together, the larger keeps.
 * <li>Cut edges and reveals (within the thickness of a larger face of the same element, and steep against it) are none.
 * <li>Of parallel layers on top of each other only the outermost counts.
 * <li>What other elements cover or pierce is not free.
 * </ol>
 */
final class TopSurfaceFinder {

  /** Smaller pieces than this (square metres), or narrower (metres), are left over by rounding. */
  private static final double SPECK_AREA = 1e-3;
  private static final double SPECK_WIDTH = 0.004;
  /** Layers of one roof build-up lie within this distance (metres), and turn against each other by less (radians). */
  private static final double BUILD_UP = 0.6;
  private static final double PARALLEL = Thickness.PARALLEL;
  /** A layer that is covered to this share is an inner one. */
  private static final double COVERED = 0.6;
  /** A surface without thickness stands for a build-up that is this deep (metres, vertically). */
  private static final double SHEET_DEPTH = 0.3;

  private final List<Part> parts;
  private final PlanIndex<Part> index;
  private final Tolerance tolerance;
  private final Headway headway;
  private final Thickness thickness;

  private TopSurfaceFinder(List<Part> parts, Thickness thickness, Tolerance tolerance, Headway headway) {
    this.headway = headway;
    this.parts = parts;
    this.index = new PlanIndex<>(parts, Part::box);
    this.thickness = thickness;
    this.tolerance = tolerance;
  }

  /**
   * @param tops the roof's top surface, by plane
   * @param all the same with cut edges and inner layers: everything that can cover what is below it
   */
  record Found(List<TopSurface> tops, List<TopSurface> all) {
  }

  static Found find(List<Part> group, Thickness thickness, Tolerance tolerance, Headway headway) {
    return new TopSurfaceFinder(group, thickness, tolerance, headway).run();
  }

  private Found run() {
    List<TopSurface> tops = new ArrayList<>();
    List<SurfacePlanes.Carried> planes = List.copyOf(SurfacePlanes.of(parts, tolerance));
    for (int i = 0; i < planes.size(); i++) {
      ownSurface(planes.get(i), headway.part(0, 0.3).part(i, planes.size()), tops);
    }
    List<TopSurface> outer = outermost(withoutCutEdges(ClaimedOnce.of(Relief.flattened(tops), tolerance)));
    Map<Part, List<TopSurface>> carriers = carriers(outer);
    List<TopSurface> free = new ArrayList<>();
    for (int i = 0; i < outer.size(); i++) {
      TopSurface freed = freed(outer.get(i), carriers, headway.part(0.5, 1).part(i, outer.size()));
      if (!freed.free().isEmpty()) {
        free.add(freed);
      }
    }
    return new Found(List.copyOf(free), tops);
  }

  private void ownSurface(SurfacePlanes.Carried carried, Headway ofPlane, List<TopSurface> tops) {
    Plane plane = carried.plane();
    List<TopSurface.Piece> pieces = new ArrayList<>();
    for (Part part : ofPlane.over(carried.carriers())) {
      Region window = TopSurface.window(plane, part.box());
      Region below = part.solid().section(plane, tolerance.coincidenceM(), Side.BELOW, window);
      Region top = below.isEmpty() ? below
          : clean(below.minus(part.solid().section(plane, tolerance.coincidenceM(), Side.ABOVE, window)));
      if (!top.isEmpty()) {
        pieces.add(new TopSurface.Piece(part, top));
      }
    }
    Region own = Region.unionOf(pieces.stream().map(TopSurface.Piece::region).toList());
    if (!own.isEmpty()) {
      tops.add(new TopSurface(plane, bridged(own), own, pieces, List.of()));
    }
  }

  private static Region clean(Region region) {
    List<Region> kept = region.parts().stream().filter(p -> p.area() > SPECK_AREA && !p.isNarrowerThan(SPECK_WIDTH)).toList();
    return Region.unionOf(kept);
  }

  /** Pieces of one plane that touch across a small gap are one. */
  private Region bridged(Region region) {
    List<Region> pieces = region.parts();
    if (pieces.size() < 2) {
      return region;
    }
    Region closed = region.grown(tolerance.gapM() / 2).grown(-tolerance.gapM() / 2);
    return closed.parts().size() < pieces.size() ? closed.union(region) : region;
  }

  // ---- cut edges

  private List<TopSurface> withoutCutEdges(List<TopSurface> tops) {
    Map<Part, List<TopSurface>> byPart = carriers(tops);
    List<TopSurface> kept = new ArrayList<>();
    for (TopSurface top : headway.part(0.3, 0.4).over(tops)) {
      List<TopSurface.Piece> pieces = new ArrayList<>();
      for (TopSurface.Piece piece : top.pieces()) {
        Region rest = Region.unionOf(piece.region().parts().stream()
            .filter(r -> byPart.get(piece.part()).stream().noneMatch(main -> isCutEdge(r, top.plane(), main, piece.part()))).toList());
        if (!rest.isEmpty()) {
          pieces.add(new TopSurface.Piece(piece.part(), rest));
        }
      }
      if (!pieces.isEmpty()) {
        Region own = bridged(Region.unionOf(pieces.stream().map(TopSurface.Piece::region).toList()));
        kept.add(new TopSurface(top.plane(), own, own, pieces, List.of()));
      }
    }
    return kept;
  }

  private boolean isCutEdge(Region region, Plane plane, TopSurface main, Part part) {
    Vec3 n = main.plane().normal();
    if (Math.abs(n.dot(plane.normal())) > Math.cos(Math.toRadians(30))) {
      return false;
    }
    Region mainRegion = Region.unionOf(
        main.pieces().stream().filter(p -> p.part() == part).map(TopSurface.Piece::region).toList());
    if (mainRegion.area() <= region.area()) {
      return false;
    }
    double depth = thickness.below(part, main.plane());
    if (depth == 0) {
      return false;
    }
    for (Region.Ring ring : region.rings()) {
      for (Vec2 p : ring.points()) {
        double h = main.plane().height(TopSurface.at(plane, p));
        if (h > 0.005 || h < -1.05 * depth - 0.005) {
          return false;
        }
      }
    }
    return true;
  }

  // ---- layers

  private List<TopSurface> outermost(List<TopSurface> tops) {
    List<Box3> boxes = tops.stream().map(t -> TopSurface.box(t.plane(), t.own())).toList();
    List<Integer> numbers = new ArrayList<>();
    for (int i = 0; i < tops.size(); i++) {
      numbers.add(i);
    }
    PlanIndex<Integer> near = new PlanIndex<>(numbers, boxes::get);
    List<TopSurface> kept = new ArrayList<>();
    for (int i = 0; i < tops.size(); i++) {
      headway.part(0.4, 0.5).at(i / (double) tops.size());
      TopSurface top = tops.get(i);
      List<TopSurface> others = near.overlapping(boxes.get(i).grown(BUILD_UP)).stream().map(tops::get).filter(o -> o != top
          && o.plane().normal().cross(top.plane().normal()).length() < PARALLEL).toList();
      if (others.isEmpty()) {
        kept.add(top);
        continue;
      }
      List<TopSurface.Piece> pieces = new ArrayList<>();
      for (TopSurface.Piece piece : top.pieces()) {
        Region rest = Region.unionOf(
            piece.region().parts().stream().filter(r -> coveredShare(r, top.plane(), others) < COVERED).toList());
        if (!rest.isEmpty()) {
          pieces.add(new TopSurface.Piece(piece.part(), rest));
        }
      }
      if (!pieces.isEmpty()) {
        Region own = bridged(Region.unionOf(pieces.stream().map(TopSurface.Piece::region).toList()));
        kept.add(new TopSurface(top.plane(), own, own, pieces, List.of()));
      }
    }
    return kept;
  }

  private double coveredShare(Region region, Plane plane, List<TopSurface> others) {
    Region covered = Region.EMPTY;
    Vec3 middle = TopSurface.at(plane, region.centroid());
    for (TopSurface o : others) {
      double above = -o.plane().height(middle);
      if (above > tolerance.coincidenceM() && above <= BUILD_UP) {
        covered = covered.union(o.own().projected(o.plane(), plane, plane.normal()).intersect(region));
      }
    }
    return covered.area() / region.area();
  }

  // ---- what other elements cover or pierce

  private static Map<Part, List<TopSurface>> carriers(List<TopSurface> tops) {
    Map<Part, List<TopSurface>> byPart = new HashMap<>();
    for (TopSurface top : tops) {
      top.pieces().forEach(p -> byPart.computeIfAbsent(p.part(), k -> new ArrayList<>()).add(top));
    }
    return byPart;
  }

  private TopSurface freed(TopSurface top, Map<Part, List<TopSurface>> carriers, Headway ofTop) {
    Region free = top.own();
    List<TopSurface.Piece> crossing = new ArrayList<>();
    Box3 box = TopSurface.box(top.plane(), top.own()).grown(tolerance.gapM());
    for (Part part : ofTop.over(index.overlapping(box))) {
      Region above = covering(part, top, box);
      for (TopSurface other : carriers.getOrDefault(part, List.of())) {
        above = above.union(asIfCutPlumb(part, other, top));
      }
      if (!above.isEmpty() && above.distance(top.own()) <= tolerance.gapM()) {
        crossing.add(new TopSurface.Piece(part, above));
        free = free.minus(above);
      }
    }
    return new TopSurface(top.plane(), top.own(), clean(free), top.pieces(), crossing);
  }

  /** The section just above; that of a body that floats above the plane by no more than the gap, where it meets the plane nowhere. */
  private Region covering(Part part, TopSurface top, Box3 box) {
    Region window = TopSurface.window(top.plane(), box);
    Region above = part.solid().section(top.plane(), tolerance.coincidenceM(), Side.ABOVE, window);
    if (!isApart(above, top.own()) || top.pieces().stream().anyMatch(p -> p.part() == part)) {
      return above;
    }
    for (double lift = tolerance.gapM() / 4; lift <= tolerance.gapM(); lift *= 2) {
      Region floating = part.solid().section(top.plane().moved(lift), tolerance.coincidenceM(), Side.BELOW, window);
      if (!isApart(floating, top.own())) {
        return floating;
      }
    }
    return above;
  }

  /**
   * The section that a slab cut plumb would have: where the other surface lies above the plane by no more than its slab is thick. A slab cut
   * square, or a sheet, leaves a slit there that is no way out of the building.
   */
  private Region asIfCutPlumb(Part part, TopSurface other, TopSurface top) {
    if (other == top || other.plane().normal().cross(top.plane().normal()).length() < Math.sin(PARALLEL)) {
      return Region.EMPTY;
    }
    double slab = thickness.below(part, other.plane());
    double depth = slab == 0 ? SHEET_DEPTH : Math.max(tolerance.upstandM(), slab / other.plane().normal().z());
    Region own = Region.unionOf(other.pieces().stream().filter(p -> p.part() == part).map(TopSurface.Piece::region).toList());
    // Height of the other surface over the point (u, v) of the plane, times its normal's z: linear in u and v.
    Vec3 n = other.plane().normal();
    double a = n.dot(top.plane().u());
    double b = n.dot(top.plane().v());
    double c = -other.plane().height(top.plane().origin());
    return clean(own.projected(other.plane(), top.plane(), Vec3.Z).cut(a, b, c).cut(-a, -b, n.z() * depth - c));
  }

  private static boolean isApart(Region above, Region own) {
    return above.intersect(own).area() < SPECK_AREA;
  }
}
