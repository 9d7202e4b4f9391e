package org.seamledger.samples;

import java.util.List;
import org.seamledger.geometry.Vec3;

/** A closed surface of flat faces; seen from outside, outer loops turn counter-clockwise and inner loops clockwise. */
record Shell(List<Vec3> points, List<Face> faces) {

  /** Loops of indices into the shell's points. */
  record Face(List<Integer> outer, List<List<Integer>> inner) {
  }
}
