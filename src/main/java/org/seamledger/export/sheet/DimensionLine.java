package org.seamledger.export.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.geometry.Vec2;

/**
 * A dimension line on paper with its words, where both are free of other words and of leaders.
 *
 * @param measured the two places between which it measures
 * @param from where its line begins, beside the first of them
 * @param foot the middle of its words' foot
 * @param turn of its words, degrees counter-clockwise
 * @param cost how far away it is and what it crosses
 */
public record DimensionLine(String words, List<Vec2> measured, Vec2 from, Vec2 to, Vec2 foot, double turn, double cost) {

  public static final double SIZE = 2.5;
  private static final double[] SHIFTS = {0, 5, 10, -4, 15, 20, 26};

  /**
   * The best place of a dimension; empty where none is free.
   *
   * @param side unit vector to the side on which it had better stand
   * @param first how far away it had better stand, millimetres
   */
  public static Optional<DimensionLine> place(String words, Vec2 a, Vec2 b, Vec2 side, double first, PaperRoom room) {
    DimensionLine best = null;
    for (double way : new double[] {1, -1}) {
      for (double shift : SHIFTS) {
        double away = way * Math.max(0, first + shift);
        double cost = Math.abs(away) + (way < 0 ? 4 : 0);
        for (DimensionLine p : candidates(words, a, b, side.times(away), cost, room)) {
          best = best == null || p.cost < best.cost - 1e-9 ? p : best;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /** Words above the line's middle, or beyond one of its ends; those that are free. */
  private static List<DimensionLine> candidates(String words, Vec2 a, Vec2 b, Vec2 offset, double cost, PaperRoom room) {
    Vec2 from = a.plus(offset);
    Vec2 to = b.plus(offset);
    double turn = Math.toDegrees(StrictMath.atan2(-(to.v() - from.v()), to.u() - from.u()));
    turn = turn > 90.001 ? turn - 180 : turn <= -89.999 ? turn + 180 : turn;
    double t = Math.toRadians(turn);
    Vec2 up = new Vec2(-StrictMath.sin(t), -StrictMath.cos(t));
    Vec2 along = to.minus(from).times(1 / Math.max(1e-9, from.distance(to)));
    double width = PaperRoom.width(words, SIZE);
    List<DimensionLine> free = new ArrayList<>();
    List<Vec2> feet = new ArrayList<>();
    if (from.distance(to) > width * 0.6) {
      feet.add(from.towards(to, 0.5).plus(up.times(0.9)));
    }
    feet.add(to.plus(along.times(width / 2 + 2)).minus(up.times(0.9)));
    feet.add(from.minus(along.times(width / 2 + 2)).minus(up.times(0.9)));
    for (int i = 0; i < feet.size(); i++) {
      List<Vec2> strip = PaperRoom.strip(feet.get(i), turn, width, SIZE);
      List<Vec2> line = List.of(from, to);
      if (room.isFree(strip) && room.isFree(line)) {
        free.add(new DimensionLine(words, List.of(a, b), from, to, feet.get(i), turn,
            cost + i * 1.5 + 5 * room.crossed(strip) + 1.5 * room.crossed(line)));
      }
    }
    return free;
  }

  /** Draws it and takes its room. */
  public void draw(PaperRoom room, Svg svg) {
    Vec2 a = measured.get(0);
    Vec2 b = measured.get(1);
    if (a.distance(from) > 0.5) {
      Vec2 out = from.minus(a).times(1 / a.distance(from));
      svg.line("dim", a.plus(out.times(1)), from.plus(out)).line("dim", b.plus(out.times(1)), to.plus(out));
    }
    svg.line("dim", from, to);
    Vec2 along = to.minus(from).times(1 / Math.max(1e-9, from.distance(to)));
    Vec2 tick = along.plus(along.left()).times(0.8);
    svg.line("dim", from.minus(tick), from.plus(tick)).line("dim", to.minus(tick), to.plus(tick));
    svg.turned("dim-text halo", foot, turn, words);
    room.close(PaperRoom.strip(foot, turn, PaperRoom.width(words, SIZE), SIZE));
    room.line(List.of(from, to));
    room.line(List.of(a, from));
    room.line(List.of(b, to));
  }
}
