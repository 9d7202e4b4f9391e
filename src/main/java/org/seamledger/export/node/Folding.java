package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.NodePart;

/** Gives a part its flats: on the roof's own slopes, with legs up walls and down edges. */
final class Folding {

  /** Where joints lie on a piece, from the node to its end. */
  private static final double JOINT = 0.85;
  /** Plates stand so far from the end of their line, metres. */
  private static final double BACK = 0.03;
  /** Sine of the turn from which on two lines make an outside corner. */
  private static final double OUTSIDE = 0.3;
  /** The part of a girth that stands up, or hangs down. */
  static final double LEG = 0.4;

  private final Vec3 at;
  private final NodePart part;
  private final List<List<Vec3>> flats = new ArrayList<>();
  private final List<List<Vec3>> joints = new ArrayList<>();

  Folding(Vec3 at, NodePart part) {
    this.at = at;
    this.part = part;
  }

  private Piece piece() {
    return new Piece(part, flats, joints);
  }

  /** A strip along each line: half its girth on either slope, or a flange on the roof and a leg. */
  Piece strip(List<Arm> along) {
    corners(along);
    for (Arm arm : along) {
      Vec3 end = at.plus(arm.way().times(part.lengthM()));
      Vec3 joint = at.plus(arm.way().times(JOINT * part.lengthM()));
      Vec3 leg = arm.leg();
      double width = part.girthM() * (leg == null ? 0.5 : 1 - LEG);
      for (Vec3 side : arm.sides()) {
        flat(at, end, end.plus(side.times(width)), at.plus(side.times(width)));
        joints.add(List.of(joint, joint.plus(side.times(width))));
      }
      if (leg != null) {
        Vec3 high = leg.times(part.girthM() * LEG);
        flat(at, end, end.plus(high), at.plus(high));
        joints.add(List.of(joint, joint.plus(high)));
      }
    }
    return piece();
  }

  /** What lies on the roof outside a corner, between the flanges of two lines that turn away from each other. */
  private void corners(List<Arm> along) {
    for (int i = 0; i < along.size(); i++) {
      for (int k = i + 1; k < along.size(); k++) {
        Arm a = along.get(i);
        Arm b = along.get(k);
        if (a.leg() != null && b.leg() != null && a.sides().size() == 1 && b.sides().size() == 1
            && a.sides().get(0).dot(b.way()) < -OUTSIDE && b.sides().get(0).dot(a.way()) < -OUTSIDE) {
          Vec3 out = a.sides().get(0).times(part.girthM() * (1 - LEG));
          Vec3 beside = b.sides().get(0).times(part.girthM() * (1 - LEG));
          flat(at, at.plus(out), at.plus(out).plus(beside), at.plus(beside));
        }
      }
    }
  }

  /** A plate across the end of each line, standing on both slopes. */
  Piece end(List<Arm> along) {
    for (Arm arm : along) {
      Vec3 foot = at.plus(arm.way().times(BACK));
      Vec3 up = Vec3.Z.times(part.girthM());
      double half = part.lengthM() / Math.max(1, arm.sides().size());
      for (Vec3 side : arm.sides()) {
        Vec3 out = foot.plus(side.times(half));
        flat(foot, out, out.plus(up), foot.plus(up));
        joints.add(List.of(foot, out));
      }
    }
    return piece();
  }

  /** A strip at the foot of a wall whose end turns off the wall, out over the edge. */
  Piece kickOut(List<Arm> along) {
    strip(along);
    joints.clear();
    for (Arm arm : along) {
      Vec3 up = Vec3.Z.times(part.girthM() * LEG);
      Vec3 joint = at.plus(arm.way().times(JOINT * part.lengthM()));
      for (Vec3 side : arm.sides()) {
        Vec3 turned = arm.way().negated().plus(side).unit().times(part.lengthM() / 2);
        Vec3 tip = at.plus(turned);
        flat(at, tip, tip.plus(up), at.plus(up));
        flat(at, tip, at.plus(side.times(part.girthM() * (1 - LEG))));
        joints.add(List.of(joint.plus(up), joint, joint.plus(side.times(part.girthM() * (1 - LEG)))));
      }
    }
    return piece();
  }

  /** What lies on the roof around the node; its joints cross the lines that it lies along. */
  Piece patch(List<Arm> along, List<List<Vec3>> around) {
    flats.addAll(around);
    for (Arm arm : along) {
      Vec3 joint = at.plus(arm.way().times(JOINT * part.lengthM()));
      double half = part.girthM() / 4;
      arm.sides().forEach(side -> joints.add(List.of(joint, joint.plus(side.times(half)))));
      if (arm.leg() != null && arm.line().sort().isEdge() && !arm.leg().equals(Vec3.Z.negated())) {
        Vec3 up = arm.leg().times(half);
        Vec3 end = at.plus(arm.way().times(part.lengthM()));
        flat(at, end, end.plus(up), at.plus(up));
      }
    }
    return piece();
  }

  private void flat(Vec3... corners) {
    flats.add(List.of(corners));
  }
}
