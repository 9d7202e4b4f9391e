package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.seamledger.geometry.Vec2;

/** Compositions of junctions between two faces. */
final class FaceSections extends SectionComposer {

  /** A cover's run to the crossing of two slopes, where nearly parallel slopes would cross too far away. */
  private static final double FARTHEST = 130;

  /** Height of a valley's centre rib: 1 in (Copper flashings: a manual, 1920s). */
  private static final double RIB = 25.4;

  FaceSections(SectionComposer of) {
    super(of);
  }

  void ridge(boolean pair) {
    SlopeLine left = left(0);
    SlopeLine right = right(pair ? 1 : 0);
    String cap = scene.part("cap");
    double cover = parts.coverHeight();
    Vec2 apex = left.meet(cover, right, cover);
    double leg = parts.girth(cap) / 2 - SectionParts.EDGES;
    double to = leg + 78;
    double head = parts.setback(scene.has("vented-closure") ? SectionParts.mm(system.ridge().slot()) : 0);
    List<Vec2> line = new ArrayList<>(parts.closedEdge(left, left.s(apex) + leg, slope(0), to, head));
    line.add(apex);
    List<Vec2> other = new ArrayList<>(parts.closedEdge(right, right.s(apex) + leg, slope(1), to, head));
    Collections.reverse(other);
    line.addAll(other);
    scene.metal(cap, line);
    scene.dimension(apex, right.at(right.s(apex) + leg, cover), right.up().times(18), "leg " + parts.length(leg));
    parts.setbackDimension(left, head);
    if (!scene.has("vented-closure")) {
      parts.decks(left, right, to, 2 * g);
      return;
    }
    double slot = SectionParts.mm(system.ridge().slot());
    parts.deck(left, slot, to, 2 * g);
    parts.deck(right, slot, to, 2 * g);
    scene.dimension(right.at(0, -2 * g), right.at(slot, -2 * g), right.up().times(-46), "slot " + parts.stated(system.ridge().slot()));
  }

  void valley(boolean pair) {
    SlopeLine left = left(0);
    SlopeLine right = right(pair ? 1 : 0);
    String pan = scene.part("pan");
    double below = parts.cleatDepth();
    Vec2 bottom = left.meet(-below, right, -below);
    double leg = parts.girth(pan) / 2 - 14 - RIB;
    double to = leg + 70;
    double half = Math.max(1.2 * g, 2);
    scene.metal(pan,
        List.of(left.at(leg - 14, -below + g), left.at(leg, -below + g), left.at(leg, -below), left.at(half, -below),
            bottom.plus(p(-half * 0.4, RIB)), bottom.plus(p(half * 0.4, RIB)), right.at(half, -below), right.at(leg, -below),
            right.at(leg, -below + g), right.at(leg - 14, -below + g)));
    scene.dimension(bottom, bottom.plus(p(0, RIB)), p(-3 * half - 8, 0), "rib " + parts.length(RIB));
    parts.panCleat(left, leg, below);
    parts.panCleat(right, leg, below);
    double nose = SectionParts.mm(system.valley().cleatOffset());
    cleatsOnBoth(left, right, nose, to);
    parts.decks(left, right, to, below + g);
    scene.dimension(left.at(0, 0), left.at(nose, 0), left.up().times(66), "cleat at " + parts.stated(system.valley().cleatOffset()));
  }

  private void cleatsOnBoth(SlopeLine left, SlopeLine right, double nose, double to) {
    String cleat = scene.part("cleat");
    parts.cleat(cleat, left, nose, to, slope(0));
    parts.cleat(cleat, right, nose, to, slope(1));
  }

  void gutter(boolean pair) {
    SlopeLine left = left(0);
    SlopeLine right = right(pair ? 1 : 0);
    double nose = SectionParts.mm(system.valley().cleatOffset());
    double below = parts.cleatDepth();
    String lining = scene.part("lining", "pan");
    double rim = nose * 0.72;
    double floor = -90;
    double half = rim * 0.85;
    Vec2 leftRim = left.at(rim, -below);
    Vec2 rightRim = right.at(rim, -below);
    double depth = leftRim.distance(p(-half, floor));
    double flange = parts.girth(lining) / 2 - half - depth - SectionParts.HEM;
    double leg = rim + Math.max(120, flange);
    double to = leg + 70;
    scene.metal(lining,
        List.of(left.at(leg - 14, -below + g), left.at(leg, -below + g), left.at(leg, -below), leftRim, p(-half, floor), p(half, floor),
            rightRim,
            right.at(leg, -below), right.at(leg, -below + g), right.at(leg - 14, -below + g)));
    scene.line("axis", p(0, floor - 50), p(0, Math.max(left.at(nose, 0).v(), right.at(nose, 0).v()) + 30));
    scene.dimension(p(-half, floor), p(half, floor), p(0, -64), "floor " + parts.length(2 * half));
    scene.dimension(p(half, floor), p(half, rightRim.v()), p(26, 0), "depth " + parts.length(rightRim.v() - floor));
    gutterParts(half, floor);
    cleatsOnBoth(left, right, nose, to);
    double under = below + g;
    parts.deck(left, rim, to, under);
    parts.deck(right, rim, to, under);
    scene.area("deck", List.of(p(-half - g, floor - g), p(half + g, floor - g), p(half + g, floor - SectionParts.DECK),
        p(-half - g, floor - SectionParts.DECK)));
    scene.dimension(left.at(0, 0), left.at(nose, 0), left.up().times(66), "cleat at " + parts.stated(system.valley().cleatOffset()));
  }

  /** Outlet, overflow and joint of a gutter's lining. */
  private void gutterParts(double half, double floor) {
    if (scene.has("outlet")) {
      scene.metal("outlet", List.of(p(-half * 0.7, floor + g), p(-half * 0.5, floor + g), p(-half * 0.5, floor - 44)));
      scene.metal("outlet", List.of(p(half * 0.1, floor + g), p(-half * 0.1, floor + g), p(-half * 0.1, floor - 44)));
    }
    if (scene.has("overflow")) {
      scene.metal("overflow", List.of(p(half * 0.35, floor - 44), p(half * 0.35, floor + 50)));
      scene.metal("overflow", List.of(p(half * 0.6, floor - 44), p(half * 0.6, floor + 50)));
    }
    if (scene.has("joint")) {
      scene.metal("joint", List.of(p(-half * 0.95, floor + 2 * g), p(-half * 0.95, floor + 30), p(-half * 0.75, floor + 30),
          p(-half * 0.75, floor + 2 * g)));
    }
    scene.screwPlace("rivets", p(half * 0.8, floor), p(half * 0.8, floor - 8));
  }

  void transition(boolean pair) {
    SlopeLine lower = left(0);
    SlopeLine upper = right(pair ? 1 : 0);
    double cover = parts.coverHeight();
    double below = parts.cleatDepth();
    double fold = Math.abs(rise(0) + rise(pair ? 1 : 0));
    double reach = (cover + below) / Math.max(1e-6, Math.sin(Math.toRadians(fold)));
    double furring = 0;
    if (reach > FARTHEST) {
      double kept = fold < 2 ? 0 : FARTHEST * 0.7 * Math.sin(Math.toRadians(fold));
      furring = cover + below - kept;
      upper = upper.lifted(furring);
    }
    Vec2 knee = fold < 2 ? upper.at(0, -below) : lower.meet(cover, upper, -below);
    String flashing = scene.part("flashing");
    double leg = Math.max(parts.girth(flashing) * 0.42, 110);
    double edge = Math.max(lower.s(knee) + leg, 96);
    double behind = parts.girth(flashing) - (edge - lower.s(knee)) - 2 * SectionParts.HEM;
    double end = upper.s(knee) + Math.max(behind, 70);
    double nose = Math.max(upper.s(knee), 0) + 16;
    double to = Math.max(edge, end) + 110;
    List<Vec2> line = new ArrayList<>(parts.closedEdge(lower, edge, slope(0), to));
    line.add(knee);
    line.add(upper.at(Math.max(end, nose + 60), -below));
    scene.metal(flashing, line);
    parts.cleat(scene.part("cleat"), upper, nose, to, slope(1));
    parts.decks(lower, right(pair ? 1 : 0), to, 2 * g);
    parts.deck(upper, Math.min(upper.s(knee), -2), to, below + g);
    if (furring > 0) {
      furring(lower, right(pair ? 1 : 0), upper, upper.at(Math.min(upper.s(knee), -2), -below - g - SectionParts.DECK), to);
      scene.label("furring: the upper deck stands " + parts.length(furring) + " higher, so that the flashing clears the closures",
          upper.at(to * 0.5, -below - SectionParts.DECK));
    }
  }

  /** What fills the room between the decks of two faces and an upper deck that stands higher, whose foot begins at {@code nosing}. */
  private void furring(SlopeLine lower, SlopeLine under, SlopeLine upper, Vec2 nosing, double to) {
    double board = nosing.minus(upper.start()).dot(upper.up());
    List<Vec2> filled = new ArrayList<>(List.of(lower.meet(-2 * g, under, -2 * g), under.at(to, -2 * g), upper.at(to, board), nosing));
    if (nosing.u() < -2) {
      filled.add(SectionParts.plumb(nosing.u(), lower, -2 * g));
    }
    scene.area("furring", filled);
  }
}
