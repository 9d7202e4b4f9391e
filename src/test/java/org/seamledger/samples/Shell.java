package org.seamledger.samples;

import java.util.List;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/** A closed surface of flat faces; seen from outside, outer loops turn counter-clockwise and inner loops clockwise. */
public record Shell(List<Vec3> points, List<Face> faces) implements Body {

  /** Loops of indices into the shell's points. */
  public record Face(List<Integer> outer, List<List<Integer>> inner) {
  }

  @Override
  public Shell moved(Transform t) {
    return new Shell(points.stream().map(t::apply).toList(), faces);
  }

  @Override
  public Vec3 anchor() {
    return points.get(0);
  }
}
