package org.seamledger.samples;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * A flat outline with holes, swept along a straight line that may be oblique to it.
 *
 * @param outline corners in one plane, either way round, the first not repeated
 * @param holes likewise, in the same plane
 */
public record Extrusion(List<Vec3> outline, List<List<Vec3>> holes, Vec3 sweep) implements Body {

  public Extrusion {
    outline = List.copyOf(outline);
    holes = holes.stream().map(List::copyOf).toList();
  }

  /** A prism on a plan outline. */
  static Extrusion upright(List<Vec2> plan, double bottom, double top) {
    return new Extrusion(plan.stream().map(p -> new Vec3(p.u(), p.v(), bottom)).toList(), List.of(), new Vec3(0, 0, top - bottom));
  }

  @Override
  public Extrusion moved(Transform t) {
    return new Extrusion(outline.stream().map(t::apply).toList(),
        holes.stream().map(h -> h.stream().map(t::apply).toList()).toList(), t.applyDirection(sweep));
  }

  @Override
  public Vec3 anchor() {
    return outline.get(0);
  }

  /** Unit normal of the outline's plane on the side that the sweep leads away from. */
  Vec3 normal() {
    Vec3 n = newell(outline);
    return n.dot(sweep) > 0 ? n.negated() : n;
  }

  /** The outline, counter-clockwise as seen against {@link #normal()}. */
  List<Vec3> ring() {
    return turning(outline, normal());
  }

  /** The holes, clockwise as seen against {@link #normal()}. */
  List<List<Vec3>> holeRings() {
    return holes.stream().map(h -> turning(h, normal().negated())).toList();
  }

  Shell shell() {
    List<Vec3> points = new ArrayList<>();
    List<Shell.Face> faces = new ArrayList<>();
    List<Integer> near = add(points, ring());
    List<List<Integer>> nearHoles = holeRings().stream().map(h -> add(points, h)).toList();
    int n = points.size();
    for (int i = 0; i < n; i++) {
      points.add(points.get(i).plus(sweep));
    }
    faces.add(new Shell.Face(near, nearHoles));
    faces.add(new Shell.Face(opposite(near, n), nearHoles.stream().map(h -> opposite(h, n)).toList()));
    sides(near, n, faces);
    nearHoles.forEach(h -> sides(h, n, faces));
    return new Shell(List.copyOf(points), List.copyOf(faces));
  }

  private static List<Integer> add(List<Vec3> points, List<Vec3> ring) {
    List<Integer> indices = new ArrayList<>();
    for (Vec3 p : ring) {
      indices.add(points.size());
      points.add(p);
    }
    return indices;
  }

  private static List<Integer> opposite(List<Integer> ring, int shift) {
    List<Integer> other = new ArrayList<>(ring.stream().map(i -> i + shift).toList());
    Collections.reverse(other);
    return other;
  }

  private static void sides(List<Integer> ring, int shift, List<Shell.Face> faces) {
    for (int k = 0; k < ring.size(); k++) {
      int i = ring.get(k);
      int j = ring.get((k + 1) % ring.size());
      faces.add(new Shell.Face(List.of(i, i + shift, j + shift, j), List.of()));
    }
  }

  private static List<Vec3> turning(List<Vec3> ring, Vec3 against) {
    if (newell(ring).dot(against) > 0) {
      return ring;
    }
    List<Vec3> other = new ArrayList<>(ring);
    Collections.reverse(other);
    return other;
  }

  /**
   * Unit normal by Newell's sum, which corners in a straight line don't disturb; relative to a corner, so that far places keep precision.
   */
  private static Vec3 newell(List<Vec3> ring) {
    Vec3 sum = Vec3.ZERO;
    Vec3 o = ring.get(0);
    for (int i = 1; i + 1 < ring.size(); i++) {
      sum = sum.plus(ring.get(i).minus(o).cross(ring.get(i + 1).minus(o)));
    }
    return sum.unit();
  }
}
