package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;

/** Dimensions and turned words of a section, each where its words are free of others and of break lines. */
final class DimensionMarks {

  private static final double SIZE = 2.5;
  private static final double[] SHIFTS = {0, 5, 10, -4, 15, 20, 26};

  private final SectionView view;
  private final PaperRoom room;
  private final Keynotes notes;

  DimensionMarks(SectionView view, PaperRoom room, Keynotes notes) {
    this.view = view;
    this.room = room;
    this.notes = notes;
  }

  /** Ends of a dimension line, and the foot and turn of its words. */
  private record Placed(Vec2 from, Vec2 to, Vec2 foot, double turn, double cost) {
  }

  void draw(Svg svg) {
    view.scene().dimensions().forEach(d -> dimension(d, svg));
    view.scene().notes().forEach(n -> note(n, svg));
  }

  private void dimension(SectionScene.Dimension d, Svg svg) {
    Vec2 a = view.paper(d.from());
    Vec2 b = view.paper(d.to());
    Vec2 along = b.minus(a).times(1 / Math.max(1e-9, a.distance(b)));
    Vec2 offset = view.paper(d.from().plus(d.offset())).minus(a);
    double length = offset.length();
    Vec2 side = length > 1e-6 ? offset.times(1 / length) : along.left();
    double first = length > 1e-6 ? Math.max(6, Math.min(14, length)) : 0;
    Placed best = null;
    for (double way : new double[] {1, -1}) {
      for (double shift : SHIFTS) {
        double away = way * Math.max(0, first + shift);
        for (Placed p : candidates(d.words(), a.plus(side.times(away)), b.plus(side.times(away)), Math.abs(away) + (way < 0 ? 4 : 0))) {
          best = best == null || p.cost < best.cost - 1e-9 ? p : best;
        }
      }
    }
    if (best == null) {
      notes.add(Keynotes.Group.REST, d.words(), List.of(a.towards(b, 0.5), a, b));
      return;
    }
    draw(d.words(), a, b, best, svg);
  }

  /** Words above the line's middle, or beyond one of its ends; those that are free. */
  private List<Placed> candidates(String words, Vec2 from, Vec2 to, double cost) {
    double turn = Math.toDegrees(Math.atan2(-(to.v() - from.v()), to.u() - from.u()));
    turn = turn > 90.001 ? turn - 180 : turn <= -89.999 ? turn + 180 : turn;
    double t = Math.toRadians(turn);
    Vec2 up = new Vec2(-Math.sin(t), -Math.cos(t));
    Vec2 along = to.minus(from).times(1 / Math.max(1e-9, from.distance(to)));
    double width = PaperRoom.width(words, SIZE);
    List<Placed> free = new ArrayList<>();
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
        free.add(new Placed(from, to, feet.get(i), turn, cost + i * 1.5 + 5 * room.crossed(strip) + 1.5 * room.crossed(line)));
      }
    }
    return free;
  }

  private void draw(String words, Vec2 a, Vec2 b, Placed at, Svg svg) {
    if (a.distance(at.from) > 0.5) {
      Vec2 out = at.from.minus(a).times(1 / a.distance(at.from));
      svg.line("dim", a.plus(out.times(1)), at.from.plus(out)).line("dim", b.plus(out.times(1)), at.to.plus(out));
    }
    svg.line("dim", at.from, at.to);
    Vec2 along = at.to.minus(at.from).times(1 / Math.max(1e-9, at.from.distance(at.to)));
    Vec2 tick = along.plus(along.left()).times(0.8);
    svg.line("dim", at.from.minus(tick), at.from.plus(tick)).line("dim", at.to.minus(tick), at.to.plus(tick));
    svg.turned("dim-text halo", at.foot, at.turn, words);
    room.close(PaperRoom.strip(at.foot, at.turn, PaperRoom.width(words, SIZE), SIZE));
    room.line(List.of(at.from, at.to));
    room.line(List.of(a, at.from));
    room.line(List.of(b, at.to));
  }

  private void note(SectionScene.Note n, Svg svg) {
    Vec2 at = view.paper(n.at());
    double t = Math.toRadians(n.degrees());
    Vec2 along = new Vec2(Math.cos(t), -Math.sin(t));
    Vec2 down = new Vec2(Math.sin(t), Math.cos(t));
    double width = PaperRoom.width(n.words(), SIZE);
    Vec2 best = null;
    double least = Double.MAX_VALUE;
    for (double beside : new double[] {0, -6, 6, -12, -18, 12, -26, -34}) {
      for (double below : new double[] {0, 3, 6, 10, 14, -30}) {
        Vec2 foot = at.plus(along.times(beside)).plus(down.times(below));
        List<Vec2> strip = PaperRoom.strip(foot, n.degrees(), width, SIZE);
        double cost = Math.abs(beside) + Math.abs(below) + 8 * room.crossed(strip);
        if (room.isFree(strip) && cost < least) {
          least = cost;
          best = foot;
        }
      }
    }
    if (best == null) {
      notes.add(Keynotes.Group.REST, n.words(), List.of(at));
      return;
    }
    svg.turned("dim-text halo", best, n.degrees(), n.words());
    room.close(PaperRoom.strip(best, n.degrees(), width, SIZE));
  }
}
