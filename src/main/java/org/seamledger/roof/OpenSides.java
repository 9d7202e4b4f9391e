package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * Tells whether surface that lies under other roof surface is closed in, or out in the open as below a canopy: whether from a little above
 * it a level way leads to the open sky, between the bodies of roofs, walls and all that stands there.
 */
final class OpenSides {

  /** The way is looked for this far above the surface (metres), and no higher than half of what is clear there. */
  private static final double ABOVE = 0.3;
  /** Room round what is looked at, metres. */
  private static final double ROUND = 1;
  /** So many times what is looked at grows by the roofs that reach into it. */
  private static final int GROWTHS = 2;

  private final PlanIndex<Part> bodies;
  private final PlanIndex<UpwardArea.Patch> covers;
  private final Tolerance tolerance;
  private final double leastM2;

  /** @param leastM2 less open sky than this, square metres, is none */
  OpenSides(PlanIndex<Part> bodies, PlanIndex<UpwardArea.Patch> covers, Tolerance tolerance, double leastM2) {
    this.bodies = bodies;
    this.covers = covers;
    this.tolerance = tolerance;
    this.leastM2 = leastM2;
  }

  /** Whether the connected piece of surface is out in the open. */
  boolean isOpen(Plane plane, Region piece) {
    Vec3 on = TopSurface.at(plane, piece.interiorPoint());
    Vec3 at = new Vec3(on.x(), on.y(), on.z() + Math.min(ABOVE, clearance(on) / 2));
    Plane level = Plane.through(at, Vec3.Z);
    Vec2 start = new Vec2(level.u(at), level.v(at));
    Box3 box = around(TopSurface.box(plane, piece).with(at));
    Region window = TopSurface.window(level, box);
    List<Region> sections = new ArrayList<>();
    for (Part part : bodies.overlapping(box.intersection(level(box, at.z())))) {
      sections.add(part.solid().section(level, tolerance.coincidenceM(), SectionSide.BELOW, window));
    }
    Region free = window.minus(Region.unionOf(sections).grown(tolerance.coincidenceM()));
    for (Region part : free.parts()) {
      if (part.contains(start)) {
        return part.minus(shadow(level, box)).area() > leastM2;
      }
    }
    return false;
  }

  private static Box3 level(Box3 box, double z) {
    return new Box3(box.minX(), box.minY(), z, box.maxX(), box.maxY(), z);
  }

  /** How far above a point the next upward surface lies, metres; infinite where there is none. */
  private double clearance(Vec3 p) {
    double least = Double.POSITIVE_INFINITY;
    for (UpwardArea.Patch cover : covers.overlappingInPlan(Box3.of(List.of(p)))) {
      double above = cover.plane().elevation(p.x(), p.y()) - p.z();
      Vec3 there = new Vec3(p.x(), p.y(), p.z() + above);
      if (above > tolerance.coincidenceM() && cover.region().contains(new Vec2(cover.plane().u(there), cover.plane().v(there)))) {
        least = Math.min(least, above);
      }
    }
    return least;
  }

  private Box3 around(Box3 piece) {
    Box3 box = piece;
    for (int i = 0; i < GROWTHS; i++) {
      for (UpwardArea.Patch cover : covers.overlappingInPlan(box)) {
        box = box.union(cover.box());
      }
    }
    return box.grown(ROUND);
  }

  /** What of the level lies under roof surface. */
  private Region shadow(Plane level, Box3 box) {
    List<Region> over = new ArrayList<>();
    for (UpwardArea.Patch cover : covers.overlappingInPlan(box)) {
      over.add(CoverageCheck.between(cover.plane(), cover.region(), level, 0, Double.POSITIVE_INFINITY));
    }
    return Region.unionOf(over);
  }
}
