package org.seamledger.roof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;

/** Takes from every surface what other roof elements cover or pierce, and keeps where they do. */
final class Covering {

  /** A body that floats above a plane is looked for at a quarter, a half and the whole of the gap. */
  private static final int STEPS = 4;

  /** More than coordinates are moved on to the grid by, metres. */
  private static final double ROUNDING = 1e-6;

  private final PlanIndex<Part> index;
  private final OwnSurface own;
  private final Thickness thickness;
  private final Tolerance tolerance;
  private final SurfaceLimits.Tops limits;

  Covering(List<Part> parts, OwnSurface own, Thickness thickness, Tolerance tolerance, SurfaceLimits.Tops limits) {
    this.index = new PlanIndex<>(parts, Part::box);
    this.own = own;
    this.thickness = thickness;
    this.tolerance = tolerance;
    this.limits = limits;
  }

  /** The surfaces of each element, in their order. */
  static Map<Part, List<TopSurface>> carriers(List<TopSurface> tops) {
    Map<Part, List<TopSurface>> byPart = new HashMap<>();
    for (TopSurface top : tops) {
      top.pieces().forEach(p -> byPart.computeIfAbsent(p.part(), k -> new ArrayList<>()).add(top));
    }
    return byPart;
  }

  /** The surfaces with what other elements leave free of them; one that has nothing free goes. */
  List<TopSurface> freed(List<TopSurface> tops, Progress progress) {
    Map<Part, List<TopSurface>> carriers = carriers(tops);
    List<TopSurface> free = new ArrayList<>();
    for (int i = 0; i < tops.size(); i++) {
      TopSurface freed = freed(tops.get(i), carriers, progress.part(i, tops.size()));
      if (!freed.free().isEmpty()) {
        free.add(freed);
      }
    }
    return List.copyOf(free);
  }

  private TopSurface freed(TopSurface top, Map<Part, List<TopSurface>> carriers, Progress ofTop) {
    boolean meshed = own.isMeshed(top);
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
        // What is next to a curve's facets is known, and where it rises above one by a trace it covers nothing.
        free = meshed && isOwner(part, top) ? free : free.minus(above);
      }
    }
    return new TopSurface(top.plane(), top.own(), meshed ? free : own.withoutSpecks(free), top.pieces(), crossing);
  }

  private static boolean isOwner(Part part, TopSurface top) {
    return top.pieces().stream().anyMatch(p -> p.part() == part);
  }

  /** The section just above; that of a body that floats above the plane by no more than the gap, where it meets the plane nowhere. */
  private Region covering(Part part, TopSurface top, Box3 box) {
    Region window = TopSurface.window(top.plane(), box);
    Region above = part.solid().section(top.plane(), tolerance.coincidenceM(), SectionSide.ABOVE, window);
    if (!isApart(above, top.own()) || isOwner(part, top)) {
      return above;
    }
    for (double lift = tolerance.gapM() / STEPS; lift <= tolerance.gapM(); lift *= 2) {
      Region floating = part.solid().section(top.plane().moved(lift), tolerance.coincidenceM(), SectionSide.BELOW, window);
      if (!isApart(floating, top.own())) {
        return floating;
      }
    }
    return above;
  }

  /**
   * The section that a slab cut plumb would have: where the other surface lies above the plane by no more than its slab is thick. A slab
   * cut
   * square, or a sheet, leaves a slit there that is no way out of the building.
   */
  private Region asIfCutPlumb(Part part, TopSurface other, TopSurface top) {
    if (other == top || other.plane().normal().cross(top.plane().normal()).length() < Math.sin(Math.toRadians(limits.parallelDegrees()))) {
      return Region.EMPTY;
    }
    if (isNowhereAbove(part, other, top)) {
      return Region.EMPTY;
    }
    double slab = thickness.below(part, other.plane(), other.of(part));
    double depth = slab == 0 ? limits.sheetDepthM() : Math.max(tolerance.upstandM(), slab / other.plane().normal().z());
    // Height of the other surface over the point (u, v) of the plane, times its normal's z: linear in u and v.
    Vec3 n = other.plane().normal();
    double a = n.dot(top.plane().u());
    double b = n.dot(top.plane().v());
    double c = -other.plane().height(top.plane().origin());
    return own.withoutSpecks(other.of(part).projected(other.plane(), top.plane(), Vec3.Z).cut(a, b, c).cut(-a, -b, n.z() * depth - c));
  }

  /**
   * Whether what of the other surface lies above the plane is surely narrower than a speck: it is no wider than its highest corner lies
   * above the plane, over the sine of the angle between the two.
   */
  private boolean isNowhereAbove(Part part, TopSurface other, TopSurface top) {
    Vec3 n = other.plane().normal();
    double highest = Double.NEGATIVE_INFINITY;
    for (Region.Ring ring : other.of(part).rings()) {
      for (Vec2 corner : ring.points()) {
        highest = Math.max(highest, top.plane().height(TopSurface.at(other.plane(), corner)));
      }
    }
    double above = highest * n.z() / top.plane().normal().z();
    return above + ROUNDING < Math.hypot(n.dot(top.plane().u()), n.dot(top.plane().v())) * limits.speckWidthM() / 4;
  }

  /** Whether they have less in common than a speck. */
  private boolean isApart(Region above, Region own) {
    return !above.sharesMoreThan(Math.nextDown(limits.speckM2()), own);
  }
}
