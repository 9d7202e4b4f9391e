package org.seamledger.roof;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.element.Category;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;

/** How high what is near a surface stands over a part of it, by its own body or by those that continue it. */
final class Standing {

  /** Square of a radius for an area of the disc, a fourth more than one over π. */
  private static final double ROUND_DISC = 0.4;

  private final Plane plane;
  private final Region window;
  private final List<Part> neighbours;
  private final List<Part> roofs;
  private final Tolerance tolerance;
  private final SurfaceLimits.Obstacles limits;
  private final Heights heights;

  /**
   * @param window part of the plane that matters
   * @param neighbours elements near the surface that are no roofs
   * @param roofs roof elements near it
   */
  Standing(Plane plane, Region window, List<Part> neighbours, List<Part> roofs, Tolerance tolerance, SurfaceLimits.Obstacles limits) {
    this.plane = plane;
    this.window = window;
    this.neighbours = neighbours;
    this.roofs = roofs;
    this.tolerance = tolerance;
    this.limits = limits;
    this.heights = new Heights(tolerance, limits);
  }

  List<Part> neighbours() {
    return neighbours;
  }

  /** Greatest height, metres, at which the body still stands over the contact; zero where it doesn't reach {@code needed}. */
  double height(Part part, Region contact, double needed) {
    // Where a disc as large as the limit lies in the contact and in a section, what they have in common need not be found.
    double radius = Math.sqrt(ROUND_DISC * limits.standingM2());
    Vec2[] disc = {contact.isEmpty() ? null : contact.interiorPoint()};
    return heights.greatest(needed, h -> {
      // A little less than the height itself, so that what is exactly as high as the limit reaches it.
      Region section = heights.section(part.solid(), plane, h - 2 * tolerance.coincidenceM(), window);
      if (disc[0] != null && section.holdsDisc(disc[0], radius) && contact.holdsDisc(disc[0], radius)) {
        return true;
      }
      if (section.surelySharesMoreThan(limits.standingM2(), contact)) {
        return true;
      }
      Region common = section.intersect(contact);
      boolean reaches = common.area() > limits.standingM2();
      disc[0] = reaches ? common.interiorPoint() : disc[0];
      return reaches;
    });
  }

  /** A pipe that ends at the surface goes on in the next segment or fitting, which stands over most of it. */
  double heightOfNextPart(Part part, Region contact) {
    double most = 0;
    double low = tolerance.upstandM() / 2;
    for (Part other : neighbours) {
      if (isAt(other, part) && other.element().category() == Category.SERVICE) {
        Region above = heights.section(other.solid(), plane, low, window);
        if (above.filled().sharesMoreThan(contact.area() / 2, contact)) {
          most = Math.max(most, height(other, contact, low));
        }
      }
    }
    return most;
  }

  /** A wall that ends low goes on in whatever sits on it, roofs included. */
  double heightOfWhatSitsOn(Part part, Region contact) {
    double most = 0;
    List<Part> others = new ArrayList<>(neighbours);
    others.addAll(roofs);
    for (Part other : others) {
      if (isAt(other, part)) {
        most = Math.max(most, height(other, contact, tolerance.upstandM()));
      }
    }
    return most;
  }

  private boolean isAt(Part other, Part part) {
    return other != part && other.box().overlaps(part.box().grown(tolerance.gapM()));
  }
}
