package org.seamledger.drainage;

import java.util.List;
import java.util.Set;
import org.seamledger.drainage.Node.Landing;
import org.seamledger.drainage.Node.Target;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Contact;

/** Where water goes on that runs out at the end of a line: down the steepest way that begins there, or off the roof. */
final class Release {

  /** Metres that a way must lead on for to be one, in terms of how near its begin is looked for. */
  private static final double LEADS_ON = 2;
  /** A line is taken rather than the facet beside it where it is as steep, tan of the angle. */
  private static final double AS_STEEP = 1e-3;

  private final RoofWater water;
  private final Set<String> caught;
  private final double[] reaches;

  /** @param caught junctions with a gutter: what comes over them drops no further */
  Release(RoofWater water, Set<String> caught) {
    this.water = water;
    this.caught = caught;
    this.reaches = new double[] {water.roof.tolerance().coincidenceM(), water.roof.tolerance().gapM()};
  }

  /** The end of a line, with the plan direction in which its water comes. */
  record End(int edge, Vec3 at, Vec3 direction) {
  }

  /** @return null where no way leads on but level lines, if any */
  Landing downFrom(End end) {
    for (double reach : reaches) {
      Landing found = outlet(end, reach);
      found = found != null ? found : downhill(end, reach);
      found = found != null ? found : pool(end, reach);
      found = found != null ? found : off(end, reach);
      if (found != null) {
        return found;
      }
    }
    return null;
  }

  private Landing outlet(End end, double reach) {
    return water.edgesAt(end.at, reach).stream().filter(water::isOutlet).findFirst()
        .map(e -> new Landing(Target.leaving(water.junctionOfEdge.get(e)), 0)).orElse(null);
  }

  private Landing downhill(End end, double reach) {
    Landing best = null;
    String line = "";
    double steepest = 0;
    Vec3 p = end.at;
    for (int e : water.edgesAt(p, reach)) {
      double fall = p.z() - water.lowEnd(e).z();
      double run = water.highEnd(e).minus(water.lowEnd(e)).planLength();
      if (e != end.edge && water.lines.get(e) != null && !water.isLevel(e) && water.highEnd(e).distance(p) <= reach && fall > 1e-6
          && water.lowEnd(e).distance(p) > reach && fall / run + AS_STEEP > steepest) {
        steepest = fall / run + AS_STEEP;
        line = water.junctionOfEdge.get(e);
        best = new Landing(Target.to(water.lines.get(e)), water.highEnd(e).equals(water.edge(e).from()) ? 0 : water.edge(e).lengthM());
      }
    }
    for (int f : water.facetsNear(Box3.of(List.of(p)), reach)) {
      FacetCells facet = water.facets.get(f);
      Vec2 at = facet.under(p);
      double slope = Math.tan(Math.toRadians(facet.plane.slopeDegrees()));
      if (facet.pool == null && slope > steepest && Math.abs(facet.plane.at(at.u(), at.v()).z() - p.z()) <= 2 * reach) {
        Cell cell = below(facet, at, reach);
        // A cell that only leads back to the line is none: round things have many short edges.
        if (cell != null && (line.isEmpty() || !line.equals(water.junctionOfEdge.get(cell.low())))) {
          steepest = slope;
          best = new Landing(Target.to(cell.node()), Math.max(cell.node().from, Math.min(cell.node().to, at.u())));
        }
      }
    }
    return best;
  }

  /** The cell of a facet in which the point lies with most of the slope still below it. */
  private static Cell below(FacetCells facet, Vec2 p, double reach) {
    Cell best = null;
    double most = LEADS_ON * reach;
    for (Cell c : facet.near(p.u(), reach)) {
      double run = p.v() - c.lowAt(p.u());
      if (run > most && p.v() <= c.highAt(p.u()) + LEADS_ON * reach) {
        most = run;
        best = c;
      }
    }
    return best;
  }

  private Landing pool(End end, double reach) {
    for (int f : water.facetsNear(Box3.of(List.of(end.at)), reach)) {
      FacetCells facet = water.facets.get(f);
      if (facet.pool != null && Math.abs(facet.plane.height(end.at)) <= 2 * reach
          && water.roof.facets().get(f).area().distance(facet.under(end.at)) <= reach) {
        return new Landing(Target.to(facet.pool), 0);
      }
    }
    return null;
  }

  private Landing off(End end, double reach) {
    Vec3 out = end.direction;
    String over = "";
    boolean gutter = false;
    for (int e : water.edgesAt(end.at, reach)) {
      if (water.edge(e).contact() instanceof Contact.Free) {
        Vec3 d = water.edge(e).to().minus(water.edge(e).from());
        out = d.planLength() < 1e-9 ? out : out.plus(new Vec3(d.y(), -d.x(), 0).times(1 / d.planLength()));
        over = over.isEmpty() ? water.junctionOfEdge.get(e) : over;
        gutter |= caught.contains(water.junctionOfEdge.get(e));
      }
    }
    if (over.isEmpty()) {
      return null;
    }
    String line = end.edge < 0 ? "" : water.junctionOfEdge.get(end.edge);
    String junction = line.isEmpty() ? over : line;
    if (!gutter && out.planLength() > 1e-9) {
      Vec3 p = end.at.plus(out.times(Landings.BEYOND / out.planLength()));
      FacetCells below = water.below(p, Landings.LEAST_DROP, water.facetsNear(Box3.of(List.of(p)), 0));
      if (below != null) {
        return drop(below, p, junction);
      }
    }
    return new Landing(Target.leaving(junction), 0);
  }

  private static Landing drop(FacetCells facet, Vec3 p, String junction) {
    if (facet.pool != null) {
      return new Landing(Target.to(facet.pool).from(junction), 0);
    }
    Vec2 at = facet.under(p);
    return new Landing(Target.to(facet.at(at).node()).from(junction), at.u());
  }
}
