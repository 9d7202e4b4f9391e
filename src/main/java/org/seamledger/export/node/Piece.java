package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.NodePart;

/**
 * One folded piece in its place.
 *
 * @param flats its flat parts
 * @param joints where it is sealed to what it laps: lines in local coordinates, metres, that seals and fasteners follow
 * @param hems where the folded-back edge ends that a hem hides
 * @param measures what a shop needs to lay it out
 */
record Piece(NodePart part, List<Flat> flats, List<List<Vec3>> joints, List<List<Vec3>> hems, List<Measured> measures) {

  Piece {
    flats = List.copyOf(flats);
    joints = List.copyOf(joints);
    hems = List.copyOf(hems);
    measures = List.copyOf(measures);
  }

  /**
   * A flat part, a polygon in local coordinates, metres.
   *
   * @param front unit vector out of the side that is to be seen; null where either will do
   * @param stands whether it stands up or hangs down from the roof
   */
  record Flat(List<Vec3> corners, Vec3 front, boolean stands) {

    Vec3 middle() {
      return corners.stream().reduce(Vec3.ZERO, Vec3::plus).times(1.0 / corners.size());
    }

    /** Square metres: half of the sum of the cross products (Newell). */
    double area() {
      Vec3 sum = Vec3.ZERO;
      for (int i = 0; i < corners.size(); i++) {
        sum = sum.plus(corners.get(i).minus(corners.get(0)).cross(corners.get((i + 1) % corners.size()).minus(corners.get(0))));
      }
      return sum.length() / 2;
    }
  }

  /**
   * A true length between two places.
   *
   * @param off to which side its dimension stands
   * @param inPlan whether a plan shows it; else it stands upright
   */
  record Measured(Vec3 from, Vec3 to, Vec3 off, boolean inPlan) {

    double lengthM() {
      return from.distance(to);
    }
  }

  /** The middle of its corners. */
  Vec3 middle() {
    List<Vec3> all = new ArrayList<>();
    flats.forEach(f -> all.addAll(f.corners()));
    return all.stream().reduce(Vec3.ZERO, Vec3::plus).times(1.0 / Math.max(1, all.size()));
  }

  /** A number of places spread evenly over its joints. */
  List<Vec3> spread(int count) {
    List<Vec3> places = new ArrayList<>();
    double whole = joints.stream().mapToDouble(Piece::length).sum();
    for (int i = 0; i < count; i++) {
      places.add(at(whole * (i + 0.5) / count));
    }
    return places;
  }

  private Vec3 at(double way) {
    double left = way;
    for (List<Vec3> joint : joints) {
      for (int i = 1; i < joint.size(); i++) {
        double step = joint.get(i - 1).distance(joint.get(i));
        if (left <= step && step > 0) {
          return joint.get(i - 1).towards(joint.get(i), left / step);
        }
        left -= step;
      }
    }
    return joints.isEmpty() ? middle() : joints.get(joints.size() - 1).get(joints.get(joints.size() - 1).size() - 1);
  }

  private static double length(List<Vec3> line) {
    double sum = 0;
    for (int i = 1; i < line.size(); i++) {
      sum += line.get(i - 1).distance(line.get(i));
    }
    return sum;
  }
}
