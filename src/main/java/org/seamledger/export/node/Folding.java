package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.NodePart;

/**
 * Gives a part its flats: on the roof's own slopes, with legs up walls and down edges, mitred where two lines meet, hemmed where an edge
 * stays free. Flats and hems of a strip add up to the width of its sheet.
 */
final class Folding {

  /** Of free edges: common practice, no source. */
  static final double HEM = 0.01;
  /** The part of a sheet, less its hem, that stands up or hangs down. */
  static final double LEG = 0.4;
  /** Where joints lie on a piece, from the node to its end. */
  private static final double JOINT = 0.85;
  /** Plates stand so far from the end of their line, metres. */
  private static final double BACK = 0.03;
  /** Sine of the turn from which on two lines make an outside corner. */
  private static final double OUTSIDE = 0.3;

  private final Vec3 at;
  private final NodePart part;
  private final List<Arm> arms;
  private final List<Piece.Flat> flats = new ArrayList<>();
  private final List<List<Vec3>> joints = new ArrayList<>();
  private final List<List<Vec3>> hems = new ArrayList<>();
  private final List<Piece.Measured> measures = new ArrayList<>();

  /** @param arms all lines at the node */
  Folding(Vec3 at, NodePart part, List<Arm> arms) {
    this.at = at;
    this.part = part;
    this.arms = arms;
  }

  private Piece piece() {
    return new Piece(part, flats, joints, hems, measures);
  }

  /** Width of a strip's part on the roof on one side of its line, metres. */
  static double flangeM(NodePart part, boolean legged) {
    return legged ? (part.girthM() - HEM) * (1 - LEG) : part.girthM() / 2 - HEM;
  }

  /** Height of a strip's part up a wall or down over an edge, metres. */
  static double legM(NodePart part) {
    return (part.girthM() - HEM) * LEG;
  }

  /** A strip along each line: half its girth on either slope, or a flange on the roof and a leg. */
  Piece strip(List<Arm> along) {
    corners(along);
    along.forEach(arm -> {
      onRoof(arm, along);
      leg(arm);
      measures.add(new Piece.Measured(at, at.plus(arm.way().times(part.lengthM())),
          arm.sides().size() == 1 ? arm.sides().get(0).negated() : arm.way().cross(Vec3.Z), true));
    });
    return piece();
  }

  private void onRoof(Arm arm, List<Arm> along) {
    Vec3 end = at.plus(arm.way().times(part.lengthM()));
    Vec3 joint = at.plus(arm.way().times(JOINT * part.lengthM()));
    double width = flangeM(part, arm.leg() != null);
    boolean hemmed = !Vec3.Z.negated().equals(arm.leg());
    for (int i = 0; i < arm.sides().size(); i++) {
      Vec3 side = arm.sides().get(i);
      List<Vec3> flat = List.of(at, end, end.plus(side.times(width)), at.plus(side.times(width)));
      List<Vec3> hem = List.of(at.plus(side.times(width - HEM)), end.plus(side.times(width - HEM)));
      for (Vec3 cut : cuts(arm, i, along)) {
        flat = clipped(flat, cut);
        hem = clipped(hem, cut);
      }
      flat(flat, up(side.cross(arm.way())), false);
      if (hemmed && hem.size() > 1) {
        hems.add(hem.subList(0, 2));
      }
      joints.add(List.of(joint, joint.plus(side.times(room(arm, i, along, width)))));
      measures.add(new Piece.Measured(end, end.plus(side.times(width)), arm.way(), true));
    }
  }

  private static Vec3 up(Vec3 normal) {
    return normal.z() < 0 ? normal.negated() : normal;
  }

  private void leg(Arm arm) {
    if (arm.leg() == null) {
      return;
    }
    Vec3 end = at.plus(arm.way().times(part.lengthM()));
    Vec3 joint = at.plus(arm.way().times(JOINT * part.lengthM()));
    Vec3 high = arm.leg().times(legM(part));
    boolean isUp = arm.leg().equals(Vec3.Z);
    flat(List.of(at, end, end.plus(high), at.plus(high)), arm.sides().isEmpty() ? null
        : isUp ? arm.sides().get(0) : arm.sides().get(0).negated(), true);
    if (!isUp) {
      Vec3 hem = arm.leg().times(legM(part) - HEM);
      hems.add(List.of(at.plus(hem), end.plus(hem)));
    }
    joints.add(List.of(joint, joint.plus(high)));
    measures.add(new Piece.Measured(end, end.plus(high), arm.way(), false));
  }

  /**
   * Where a flange of a line ends at the other lines of its face: halfway to a line that the piece lies on, too, else at the line itself.
   * Each is a direction: what remains is where it is not negative.
   */
  private List<Vec3> cuts(Arm arm, int face, List<Arm> along) {
    List<Vec3> cuts = new ArrayList<>();
    for (Arm other : arms) {
      int same = other == arm ? -1 : other.faces().indexOf(arm.faces().get(face));
      if (same >= 0 && other.way().dot(arm.sides().get(face)) > 0.02) {
        cuts.add(along.contains(other) ? arm.way().minus(other.way()) : other.sides().get(same));
      }
    }
    return cuts;
  }

  /** How far a joint reaches into a face, at most {@code wanted}: no farther than the other lines of the face leave to this one. */
  private double room(Arm arm, int face, List<Arm> along, double wanted) {
    double most = wanted;
    for (Arm other : arms) {
      double across = other.way().dot(arm.sides().get(face));
      double with = other.way().dot(arm.way());
      if (other != arm && other.faces().contains(arm.faces().get(face)) && across > 0.02 && (along.contains(other) || with > 0)) {
        // Half the angle to a line of the same piece, all of it to another.
        most = Math.min(most, JOINT * part.lengthM() * across / (along.contains(other) ? 1 + with : with));
      }
    }
    return most;
  }

  /** The part of a polygon, or of a line, on the positive side of a plane through the node. */
  private List<Vec3> clipped(List<Vec3> ring, Vec3 positive) {
    List<Vec3> kept = new ArrayList<>();
    for (int i = 0; i < ring.size(); i++) {
      Vec3 a = ring.get(i);
      Vec3 b = ring.get((i + 1) % ring.size());
      double da = a.minus(at).dot(positive);
      double db = b.minus(at).dot(positive);
      if (da >= -1e-9) {
        kept.add(a);
      }
      if (da < -1e-9 && db > 1e-9 || da > 1e-9 && db < -1e-9) {
        kept.add(a.towards(b, da / (da - db)));
      }
    }
    return kept;
  }

  /** What lies on the roof outside a corner, between the flanges of two lines that turn away from each other. */
  private void corners(List<Arm> along) {
    double width = flangeM(part, true);
    for (int i = 0; i < along.size(); i++) {
      for (int k = i + 1; k < along.size(); k++) {
        Arm a = along.get(i);
        Arm b = along.get(k);
        if (a.leg() != null && b.leg() != null && a.sides().size() == 1 && b.sides().size() == 1
            && a.sides().get(0).dot(b.way()) < -OUTSIDE && b.sides().get(0).dot(a.way()) < -OUTSIDE) {
          Vec3 out = a.sides().get(0).times(width);
          Vec3 beside = b.sides().get(0).times(width);
          flat(List.of(at, at.plus(out), at.plus(out).plus(beside), at.plus(beside)), Vec3.Z, false);
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
        flat(List.of(foot, out, out.plus(up), foot.plus(up)), null, true);
        joints.add(List.of(foot, out));
        measures.add(new Piece.Measured(foot, out, arm.way().negated(), true));
        measures.add(new Piece.Measured(out, out.plus(up), side, false));
      }
    }
    return piece();
  }

  /** A strip at the foot of a wall whose end turns off the wall, out over the edge. */
  Piece kickOut(List<Arm> along) {
    strip(along);
    joints.clear();
    for (Arm arm : along) {
      Vec3 up = Vec3.Z.times(legM(part));
      double width = flangeM(part, true);
      Vec3 joint = at.plus(arm.way().times(JOINT * part.lengthM()));
      for (Vec3 side : arm.sides()) {
        Vec3 turned = arm.way().negated().plus(side).unit().times(part.lengthM() / 2);
        Vec3 tip = at.plus(turned);
        flat(List.of(at, tip, at.plus(side.times(width))), up(side.cross(arm.way())), false);
        flat(List.of(at, tip, tip.plus(up), at.plus(up)), side, true);
        joints.add(List.of(joint.plus(up), joint, joint.plus(side.times(width))));
        measures.add(new Piece.Measured(at, tip, side.negated().minus(arm.way()).unit(), true));
      }
    }
    return piece();
  }

  /** What lies on the roof around the node; its joints cross the lines that it lies along. */
  Piece patch(List<Arm> along, List<List<Vec3>> around) {
    around.forEach(ring -> flat(ring, Vec3.Z, false));
    for (Arm arm : along) {
      Vec3 joint = at.plus(arm.way().times(JOINT * part.lengthM()));
      double half = Math.min(part.girthM() / 4, part.lengthM() * 0.55);
      for (int i = 0; i < arm.sides().size(); i++) {
        joints.add(List.of(joint, joint.plus(arm.sides().get(i).times(room(arm, i, along, half)))));
      }
      Vec3 end = at.plus(arm.way().times(part.lengthM()));
      measures.add(new Piece.Measured(at, end, arm.sides().size() == 1 ? arm.sides().get(0).negated() : arm.way().cross(Vec3.Z), true));
      if (arm.line().sort().isEdge() && Vec3.Z.equals(arm.leg())) {
        Vec3 up = arm.leg().times(half);
        flat(List.of(at, end, end.plus(up), at.plus(up)), arm.sides().isEmpty() ? null : arm.sides().get(0), true);
        measures.add(new Piece.Measured(end, end.plus(up), arm.way(), false));
      }
    }
    return piece();
  }

  private void flat(List<Vec3> corners, Vec3 front, boolean stands) {
    if (corners.size() > 2) {
      flats.add(new Piece.Flat(List.copyOf(corners), front, stands));
    }
  }
}
