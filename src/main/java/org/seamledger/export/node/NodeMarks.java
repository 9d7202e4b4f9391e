package org.seamledger.export.node;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.seamledger.export.sheet.DimensionLine;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.LeaderRing;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/** What is read in a view of a node: names of the lines, dimensions, falls, and numbers that the list beside explains; none on another. */
final class NodeMarks {

  private static final double SIZE = 2.6;
  /** Half of the square that a number takes. */
  private static final double HALF = 3.3;
  private static final double SHORTEST = 2.5;
  private static final double FIRST = 9;

  private final NodeFigure figure;
  private final NodeView view;
  private final PaperRoom room;
  private final DrawingUnits units;

  NodeMarks(NodeFigure figure, PaperRoom room, DrawingUnits units) {
    this.figure = figure;
    this.view = figure.view();
    this.room = room;
    this.units = units;
  }

  void draw(Svg svg) {
    figure.scene().arms().forEach(arm -> name(arm, svg));
    dimensions(svg);
    if (!view.oblique()) {
      figure.scene().falls().forEach(fall -> fall(fall, svg));
    }
    balloons(svg);
  }

  private void name(Arm arm, Svg svg) {
    String words = LineWords.of(arm.line());
    Vec2 end = view.paper(figure.reached(arm, 1));
    Vec2 way = end.minus(view.paper(figure.scene().at()));
    Vec2 out = way.length() < 1e-6 ? new Vec2(1, 0) : way.times(1 / way.length());
    double width = PaperRoom.width(words, SIZE);
    Vec2 best = null;
    double least = Double.MAX_VALUE;
    for (double away = 1.5; away < 30; away += 2.5) {
      for (int turn = -5; turn <= 5; turn++) {
        double t = StrictMath.atan2(out.v(), out.u()) + turn * Math.PI / 10;
        Vec2 to = new Vec2(StrictMath.cos(t), StrictMath.sin(t));
        // The foot of the words' middle, so that their nearest edge is that far away.
        Vec2 foot = end.plus(to.times(away)).plus(new Vec2(to.u() * width / 2, to.v() * SIZE / 2 + SIZE / 3));
        List<Vec2> strip = PaperRoom.strip(foot, 0, width, SIZE);
        double cost = away + Math.abs(turn) * 1.2 + 4 * room.crossed(strip) + (isOnPiece(strip) ? 12 : 0);
        if (cost < least && room.isFree(strip)) {
          least = cost;
          best = foot;
        }
      }
    }
    if (best != null) {
      svg.turned("arm-name halo", best, 0, words);
      room.close(PaperRoom.strip(best, 0, width, SIZE));
    }
  }

  /** Each length of each part once. */
  private void dimensions(Svg svg) {
    Set<String> drawn = new HashSet<>();
    for (Piece piece : figure.pieces()) {
      List<Piece.Measured> measures = piece.measures().stream().filter(m -> m.inPlan() != view.oblique())
          .sorted(Comparator.comparingDouble(m -> -view.paper(m.from()).distance(view.paper(m.to())))).toList();
      for (Piece.Measured m : measures) {
        String words = units.small(m.lengthM());
        if (!drawn.contains(piece.part().id() + words) && dimension(m, words, figure.lift(piece), svg)) {
          drawn.add(piece.part().id() + words);
        }
      }
    }
  }

  private boolean dimension(Piece.Measured m, String words, double lift, Svg svg) {
    Vec2 a = view.paper(m.from(), lift);
    Vec2 b = view.paper(m.to(), lift);
    if (a.distance(b) < SHORTEST) {
      return false;
    }
    Vec2 across = b.minus(a).left().times(1 / a.distance(b));
    Vec2 off = view.paper(m.from().plus(m.off()), lift).minus(a);
    Vec2 side = across.dot(off) < 0 ? across.times(-1) : across;
    return DimensionLine.place(words, a, b, side, FIRST, room).map(d -> {
      d.draw(room, svg);
      return true;
    }).orElse(false);
  }

  /** An arrow down a face with its slope, where there is room beside the pieces. */
  private void fall(NodeScene.Fall fall, Svg svg) {
    Vec3 at = figure.scene().at();
    double reach = figure.scene().reach();
    Vec3 way = fall.from().minus(at);
    double least = Double.MAX_VALUE;
    Vec2 best = null;
    for (double share = 0.6; share <= 1.7; share += 0.1) {
      for (double beside = -0.4; beside <= 0.41; beside += 0.1) {
        Vec3 middle = at.plus(way.times(share)).plus(new Vec3(-way.y(), way.x(), 0).times(beside));
        Vec2 head = view.paper(middle.plus(fall.down().times(reach / 10)));
        Vec2 tail = view.paper(middle.minus(fall.down().times(reach / 10)));
        double cost =
            Math.abs(share - 1) + Math.abs(beside) + 2.0 * room.crossed(List.of(head, tail)) + (isOnPiece(List.of(head, tail)) ? 1.5 : 0);
        if (cost < least && middle.minus(at).length() < reach * 0.9 && room.isFree(List.of(head, tail))) {
          least = cost;
          best = view.paper(middle);
        }
      }
    }
    if (best != null) {
      arrow(best, new Vec2(fall.down().x(), -fall.down().y()), view.perMetre() * reach / 5, units.slope(fall.degrees()), svg);
    }
  }

  private boolean isOnPiece(List<Vec2> area) {
    return figure.pieces().stream().anyMatch(p -> p.flats().stream()
        .anyMatch(f -> PaperRoom.touch(area, view.paper(f.corners(), figure.lift(p)))));
  }

  private void arrow(Vec2 middle, Vec2 down, double length, String words, Svg svg) {
    Vec2 tip = middle.plus(down.times(length / 2));
    Vec2 tail = middle.minus(down.times(length / 2));
    Vec2 neck = tip.minus(down.times(2.2));
    svg.line("fall", tail, neck);
    svg.polygon("fall-head", List.of(tip, neck.plus(down.left().times(0.8)), neck.minus(down.left().times(0.8))));
    room.close(List.of(tail, tip));
    double width = PaperRoom.width(words, SIZE);
    List<Vec2> best = List.of();
    double least = Double.MAX_VALUE;
    for (double beside : new double[] {1, -1, 0}) {
      for (double below : new double[] {1, -3, 5, -length / 2 - 1.5, length / 2 + 3.5}) {
        Vec2 foot = middle.plus(new Vec2(beside * (width / 2 + 1.5 + Math.abs(down.u()) * length / 2), below));
        List<Vec2> strip = PaperRoom.strip(foot, 0, width, SIZE);
        double cost = Math.abs(below) + 4 * room.crossed(strip) + (isOnPiece(strip) ? 8 : 0);
        if (cost < least && room.isFree(strip)) {
          least = cost;
          best = List.of(foot);
        }
      }
    }
    best.forEach(foot -> {
      svg.turned("arm-name halo", foot, 0, words);
      room.close(PaperRoom.strip(foot, 0, width, SIZE));
    });
  }

  private void balloons(Svg svg) {
    for (Piece piece : figure.pieces()) {
      List<Vec2> places = new ArrayList<>();
      for (Piece.Flat flat : piece.flats()) {
        if (view.oblique() || !flat.stands() || piece.flats().stream().allMatch(Piece.Flat::stands)) {
          places.add(view.paper(flat.middle(), figure.lift(piece)));
          places.add(view.paper(flat.middle().towards(flat.corners().get(flat.corners().size() - 1), 0.5), figure.lift(piece)));
        }
      }
      LeaderRing.find(places, HALF, room).ifPresent(ring -> {
        ring.draw(Integer.toString(figure.order(piece) + 1), "balloon", "balloon-text", svg);
        ring.close(room);
      });
    }
  }
}
