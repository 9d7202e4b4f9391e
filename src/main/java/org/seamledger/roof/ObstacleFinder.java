package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.element.Category;
import org.seamledger.element.Opening;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Side;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Tolerance;
import org.seamledger.progress.Headway;

/**
 * Finds what stands in or at one top surface.
 *
 * <p>The footprint of a neighbour is its section just above the surface's plane. A connected piece of it counts where the section with
 * the plane lifted by the upstand limit reaches it too: the neighbour's own, or that of whatever sits on it. What ends below the
 * surface has no section above it and vanishes by itself.
 */
final class ObstacleFinder {

  /** A thing through the roof counts from this height on, in metres; a lower one is slack of the model. */
  private static final double LOWEST_PENETRATION = 0.02;
  private static final double SPECK_AREA = 1e-5;

  private final PlanIndex<Part> neighbours;
  private final PlanIndex<Part> roofs;
  private final Tolerance tolerance;

  ObstacleFinder(PlanIndex<Part> neighbours, PlanIndex<Part> roofs, Tolerance tolerance) {
    this.neighbours = neighbours;
    this.roofs = roofs;
    this.tolerance = tolerance;
  }

  List<Obstacle> find(TopSurface top, Headway headway) {
    Box3 box = TopSurface.box(top.plane(), top.own());
    Box3 around = new Box3(box.minX() - 0.2, box.minY() - 0.2, box.minZ() - 0.2, box.maxX() + 0.2, box.maxY() + 0.2,
        box.maxZ() + Heights.HIGHEST);
    Region window = TopSurface.window(top.plane(), box.grown(0.3));
    Region reach = top.own().grown(tolerance.gapM()).filled();
    Region filled = top.own().filled();
    List<Part> near = neighbours.overlapping(around);
    List<Obstacle> found = new ArrayList<>();
    for (Part part : headway.over(near)) {
      Region footprint = part.solid().section(top.plane(), tolerance.coincidenceM(), Side.ABOVE, window);
      for (Region piece : footprint.parts()) {
        if (piece.area() > SPECK_AREA && piece.touches(reach)) {
          consider(part, piece, top, filled, reach, window, around, found);
        }
      }
    }
    Region material = top.own();
    Region holes = filled.minus(material).union(openings(top, window));
    List<Obstacle> things = new ArrayList<>(Bundles.joined(found));
    things.replaceAll(o -> o.kind() != Obstacle.Kind.PENETRATION ? o
        : o.with(Passage.of(o.passage().service(), o.footprint(), material, holes)));
    addOpenings(top, window, things);
    return things;
  }

  private void consider(Part part, Region piece, TopSurface top, Region filled, Region reach, Region window, Box3 around,
      List<Obstacle> found) {
    boolean wall = part.element().category() == Category.WALL;
    Region contact = piece.intersect(reach);
    boolean inside = contact.intersect(filled).area() > SPECK_AREA;
    double needed = wall || !inside ? tolerance.upstandM() : LOWEST_PENETRATION;
    double height = reached(part.solid(), top.plane(), contact, needed, window);
    boolean service = part.element().category() == Category.SERVICE;
    if (height == 0 && wall) {
      height = heightOfWhatSitsOn(part, top.plane(), contact, window, around);
    } else if (height == 0 && service && inside) {
      height = heightOfNextPart(part, top.plane(), contact, window, around);
    }
    if (height > 0) {
      Region outline = wall ? piece : piece.filled();
      found.add(new Obstacle(wall ? Obstacle.Kind.WALL : Obstacle.Kind.PENETRATION, part.id(), part.element().ifcClass(), outline,
          height, !wall && RoundOutline.of(outline).isRound(), new Passage(service, Passage.Hole.NOT_ASKED)));
    }
  }

  /** A pipe that ends at the surface goes on in the next segment or fitting, which stands over most of it. */
  private double heightOfNextPart(Part part, Plane plane, Region contact, Region window, Box3 around) {
    double most = 0;
    for (Part other : neighbours.overlapping(around)) {
      if (other != part && other.element().category() == Category.SERVICE && other.box().overlaps(part.box().grown(tolerance.gapM()))) {
        Region above = Heights.section(other.solid(), plane, tolerance.upstandM() / 2, tolerance, window);
        if (above.filled().intersect(contact).area() > contact.area() / 2) {
          most = Math.max(most, reached(other.solid(), plane, contact, tolerance.upstandM() / 2, window));
        }
      }
    }
    return most;
  }

  private double heightOfWhatSitsOn(Part part, Plane plane, Region contact, Region window, Box3 around) {
    double most = 0;
    List<Part> others = new ArrayList<>(neighbours.overlapping(around));
    others.addAll(roofs.overlapping(around));
    for (Part other : others) {
      if (other != part && other.box().overlaps(part.box().grown(tolerance.gapM()))) {
        most = Math.max(most, reached(other.solid(), plane, contact, tolerance.upstandM(), window));
      }
    }
    return most;
  }

  /** Greatest height at which the solid still stands over the contact; zero where it doesn't reach {@code needed}. */
  private double reached(Solid solid, Plane plane, Region contact, double needed, Region window) {
    // A little less than the height itself, so that what is exactly as high as the limit reaches it.
    return Heights.greatest(needed, h -> Heights.section(solid, plane, h - 2 * tolerance.coincidenceM(), tolerance, window)
        .intersect(contact).area() > SPECK_AREA / 10);
  }

  private Region openings(TopSurface top, Region window) {
    List<Region> holes = new ArrayList<>();
    for (TopSurface.Piece piece : top.pieces()) {
      for (Opening opening : piece.part().element().openings()) {
        opening.body().forEach(b -> holes.add(b.section(top.plane(), tolerance.coincidenceM(), Side.BELOW, window)));
      }
    }
    return Region.unionOf(holes);
  }

  private void addOpenings(TopSurface top, Region window, List<Obstacle> found) {
    for (TopSurface.Piece piece : top.pieces()) {
      for (Opening opening : piece.part().element().openings()) {
        Region hole = Region.unionOf(opening.body().stream()
            .map(b -> b.section(top.plane(), tolerance.coincidenceM(), Side.BELOW, window)).toList());
        for (Region part : hole.parts()) {
          if (part.area() > SPECK_AREA && part.touches(top.own())) {
            found.add(holeObstacle(opening, part, found, top.plane()));
          }
        }
      }
    }
  }

  /** A hole that something stands in is that thing's; a filled one is its filling's; else it is a hole. */
  private static Obstacle holeObstacle(Opening opening, Region hole, List<Obstacle> found, Plane plane) {
    boolean round = RoundOutline.of(hole).isRound();
    for (Obstacle o : found) {
      if (o.kind() == Obstacle.Kind.PENETRATION && o.footprint().intersect(hole).area() > 0.5 * o.footprint().area()) {
        return new Obstacle(Obstacle.Kind.PENETRATION, o.globalId(), o.ifcClass(), hole, o.heightM(), round, o.passage());
      }
    }
    return opening.isFilled()
        ? new Obstacle(Obstacle.Kind.PENETRATION, opening.filling(), opening.fillingClass(), hole, 0, round,
            new Passage(false, Passage.Hole.WHOLE))
        : new Obstacle(Obstacle.Kind.OPENING, opening.globalId(), "IfcOpeningElement", hole, 0, round, Passage.NONE);
  }

}
