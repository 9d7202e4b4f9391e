package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.NodePart;

/**
 * One folded piece in its place.
 *
 * @param flats its flat parts, each a polygon in local coordinates, metres
 * @param joints where it is sealed to what it laps: lines that seals and fasteners follow
 */
record Piece(NodePart part, List<List<Vec3>> flats, List<List<Vec3>> joints) {

  Piece {
    flats = List.copyOf(flats);
    joints = List.copyOf(joints);
  }

  /** The middle of its corners. */
  Vec3 middle() {
    List<Vec3> all = new ArrayList<>();
    flats.forEach(all::addAll);
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
