package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.element.Category;
import org.seamledger.element.Opening;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Tolerance;
import org.seamledger.progress.Progress;
import org.seamledger.roof.Obstacle.OpenHole;
import org.seamledger.roof.Obstacle.Penetration;
import org.seamledger.roof.Obstacle.Wall;

/**
 * Finds what stands in or at a top surface.
 *
 * <p>The footprint of a neighbour is its section just above the surface's plane. A connected piece of it counts where the section with
 * the plane lifted by the upstand limit reaches it too: the neighbour's own, or that of whatever sits on it. What ends below the
 * surface has no section above it and vanishes by itself.
 */
final class ObstacleFinder {

  private final PlanIndex<Part> neighbours;
  private final PlanIndex<Part> roofs;
  private final Tolerance tolerance;
  private final SurfaceLimits.Obstacles limits;
  private final SurfaceLimits.Penetrating penetrating;
  private final double exactM;

  ObstacleFinder(PlanIndex<Part> neighbours, PlanIndex<Part> roofs, Tolerance tolerance, SurfaceLimits limits) {
    this.neighbours = neighbours;
    this.roofs = roofs;
    this.tolerance = tolerance;
    this.limits = limits.obstacles();
    this.penetrating = limits.penetrations();
    this.exactM = limits.faces().simplifyM();
  }

  /** Walls and penetrations in the order of the neighbours, then holes. */
  List<Obstacle> find(TopSurface top, Progress progress) {
    Box3 box = TopSurface.box(top.plane(), top.own());
    Box3 near = box.grown(limits.aroundM());
    Box3 around = new Box3(near.minX(), near.minY(), near.minZ(), near.maxX(), near.maxY(), box.maxZ() + limits.highestM());
    Region window = TopSurface.window(top.plane(), box.grown(limits.windowM()));
    Standing standing = new Standing(top.plane(), window, neighbours.overlapping(around), roofs.overlapping(around), tolerance,
        limits);
    Region filled = top.own().filled();
    Reach reach = new Reach(top.own());
    List<Obstacle> found = new ArrayList<>();
    for (Part part : progress.over(standing.neighbours())) {
      Region footprint = part.solid().section(top.plane(), tolerance.coincidenceM(), SectionSide.ABOVE, window);
      for (Region piece : footprint.parts()) {
        Region within = reach.of(part);
        if (piece.area() > limits.speckM2() && piece.touches(within)) {
          consider(part, piece, filled, within, standing, found);
        }
      }
    }
    List<Opening> openings = top.pieces().stream().flatMap(p -> p.part().element().openings().stream()).toList();
    List<Region> holes = openings.stream().map(o -> hole(o, top, window)).toList();
    if (found.isEmpty() && holes.isEmpty()) {
      return found;
    }
    // Where overlays left a corner in the middle of a straight edge, the row goes on beyond it.
    Region straight = filled.simplified(exactM);
    List<Obstacle> all = new ArrayList<>(WallRows.joined(Bundles.joined(found, penetrating), straight, tolerance, limits));
    Region allHoles = filled.minus(top.own()).union(Region.unionOf(holes));
    all.replaceAll(o -> o instanceof Penetration p
        ? p.with(Passage.of(p.passage().service(), p.footprint(), top.own(), allHoles, penetrating)) : o);
    for (int i = 0; i < holes.size(); i++) {
      for (Region part : holes.get(i).parts()) {
        if (part.area() > limits.speckM2() && part.distance(top.own()) <= tolerance.coincidenceM()) {
          all.add(holeObstacle(openings.get(i), part, all));
        }
      }
    }
    return all;
  }

  /** How far round a surface things stand at it, found for the first that may; around most surfaces nothing stands. */
  private final class Reach {
    private final Region own;
    private Region ofWalls;
    private Region ofOthers;

    Reach(Region own) {
      this.own = own;
    }

    Region of(Part part) {
      if (part.element().category() == Category.WALL) {
        ofWalls = ofWalls == null ? own.grown(limits.wallGapM()).filled() : ofWalls;
        return ofWalls;
      }
      ofOthers = ofOthers == null ? own.grown(tolerance.gapM()).filled() : ofOthers;
      return ofOthers;
    }
  }

  /** Adds the neighbour where it stands high enough over the part of its footprint that is in reach of the surface. */
  private void consider(Part part, Region piece, Region filled, Region reach, Standing standing, List<Obstacle> found) {
    boolean wall = part.element().category() == Category.WALL;
    Region contact = piece.intersect(reach);
    boolean inside = contact.sharesMoreThan(limits.speckM2(), filled);
    double height = standing.height(part, contact, wall || !inside ? tolerance.upstandM() : penetrating.lowestM());
    boolean service = part.element().category() == Category.SERVICE;
    if (height == 0 && wall) {
      height = standing.heightOfWhatSitsOn(part, contact);
    } else if (height == 0 && service && inside) {
      height = standing.heightOfNextPart(part, contact);
    }
    if (height > 0 && wall) {
      found.add(new Wall(part.id(), part.element().ifcClass(), piece, height));
    } else if (height > 0) {
      Region outline = piece.filled();
      found.add(new Penetration(part.id(), part.element().ifcClass(), outline, height, RoundOutline.isRound(outline, penetrating),
          new Passage(service, Passage.Hole.UNKNOWN)));
    }
  }

  private Region hole(Opening opening, TopSurface top, Region window) {
    return Region
        .unionOf(opening.body().stream().map(b -> b.section(top.plane(), tolerance.coincidenceM(), SectionSide.BELOW, window)).toList());
  }

  /** A hole that something stands in is that thing's; a filled one is its filling's; else it is a hole. */
  private Obstacle holeObstacle(Opening opening, Region hole, List<Obstacle> found) {
    boolean round = RoundOutline.isRound(hole, penetrating);
    for (Obstacle o : found) {
      if (o instanceof Penetration p && p.footprint().sharesMoreThan(penetrating.inHoleShare() * p.footprint().area(), hole)) {
        return p.in(hole, round);
      }
    }
    return opening.isFilled()
        ? new Penetration(opening.filling(), opening.fillingClass(), hole, 0, round, new Passage(false, Passage.Hole.WHOLE))
        : new OpenHole(opening.globalId(), "IfcOpeningElement", hole, round);
  }
}
