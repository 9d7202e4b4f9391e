package org.seamledger.samples;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * One slab of a roof.
 *
 * @param slope its top surface
 * @param outline plan of the top surface, the first corner not repeated
 * @param holes plans of holes left in the outline itself
 * @param depth from the top to the underside, measured along the cut of its edges
 * @param openings holes as elements of their own
 */
public record RoofPlane(String name, Slope slope, List<Vec2> outline, List<List<Vec2>> holes, double depth, List<Hole> openings) {

  /** How the edges of a slab are cut. */
  public enum Cut {
    /** Vertical sides. */
    PLUMB,
    /** Sides at a right angle to the surface. */
    SQUARE
  }

  /**
   * A hole through the slab as an element of its own.
   *
   * @param filling what fills it, or null
   */
  public record Hole(String name, Extrusion body, Thing filling) {
    Hole moved(Transform t) {
      return new Hole(name, body.moved(t), filling == null ? null : filling.moved(t));
    }
  }

  public RoofPlane {
    outline = List.copyOf(outline);
    holes = holes.stream().map(List::copyOf).toList();
    openings = List.copyOf(openings);
  }

  /** The top surface's outline in space. */
  List<Vec3> top() {
    return outline.stream().map(slope::at).toList();
  }

  Extrusion body(Cut cut) {
    Vec3 sweep = cut == Cut.PLUMB ? new Vec3(0, 0, -depth) : slope.normal().times(-depth);
    return new Extrusion(top(), holes.stream().map(h -> h.stream().map(slope::at).toList()).toList(), sweep);
  }

  RoofPlane withHole(List<Vec2> hole) {
    List<List<Vec2>> more = new ArrayList<>(holes);
    more.add(hole);
    return new RoofPlane(name, slope, outline, more, depth, openings);
  }

  RoofPlane withOpening(Hole opening) {
    List<Hole> more = new ArrayList<>(openings);
    more.add(opening);
    return new RoofPlane(name, slope, outline, holes, depth, more);
  }

  RoofPlane named(String other) {
    return new RoofPlane(other, slope, outline, holes, depth, openings);
  }

  /** After a turn about the vertical and a shift. */
  RoofPlane moved(Transform t) {
    return new RoofPlane(name, slope.moved(t), plan(outline, t), holes.stream().map(h -> plan(h, t)).toList(), depth,
        openings.stream().map(o -> o.moved(t)).toList());
  }

  private static List<Vec2> plan(List<Vec2> points, Transform t) {
    return points.stream().map(p -> t.apply(new Vec3(p.u(), p.v(), 0))).map(p -> new Vec2(p.x(), p.y())).toList();
  }
}
