package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;

/** A small picture of a folded part, its longest leg level, with the length of each leg beside it; closed hems as a second sheet. */
final class FoldedPicture {

  private static final double SIZE = 2.3;
  /** Around the part for its words. */
  private static final double MARGIN = 9;
  /** A hem is drawn this far from its leg. */
  private static final double APART = 1.1;
  /** Shorter legs are drawn this long, so that they can be seen. */
  private static final double SHORTEST = 2.6;

  private final FoldedPart part;
  private final PaperBox place;
  private final DrawingUnits units;

  FoldedPicture(FoldedPart part, PaperBox place, DrawingUnits units) {
    this.part = part;
    this.place = place;
    this.units = units;
  }

  void draw(Svg svg) {
    List<Vec2> outline = level(part.outline());
    double minU = outline.stream().mapToDouble(Vec2::u).min().orElse(0);
    double maxU = outline.stream().mapToDouble(Vec2::u).max().orElse(1);
    double minV = outline.stream().mapToDouble(Vec2::v).min().orElse(0);
    double maxV = outline.stream().mapToDouble(Vec2::v).max().orElse(1);
    double scale = Math.min((place.width() - 2 * MARGIN) / Math.max(1e-6, maxU - minU),
        (place.height() - 2 * MARGIN) / Math.max(1e-6, maxV - minV));
    Vec2 middle = new Vec2((minU + maxU) / 2, (minV + maxV) / 2);
    List<Vec2> points = new ArrayList<>();
    outline.forEach(p -> points.add(place.middle().plus(new Vec2((p.u() - middle.u()) * scale, -(p.v() - middle.v()) * scale))));
    hems(points);
    svg.polyline("fold", points);
    words(points, svg);
  }

  /** Turned so that its longest leg is level. */
  private static List<Vec2> level(List<Vec2> outline) {
    Vec2 longest = new Vec2(0, 0);
    for (int i = 1; i < outline.size(); i++) {
      Vec2 leg = outline.get(i).minus(outline.get(i - 1));
      longest = leg.length() > longest.length() + 1e-9 ? leg : longest;
    }
    double t = -StrictMath.atan2(longest.v(), longest.u());
    double cos = StrictMath.cos(t);
    double sin = StrictMath.sin(t);
    return outline.stream().map(p -> new Vec2(p.u() * cos - p.v() * sin, p.u() * sin + p.v() * cos)).toList();
  }

  /** Lays the hems at both ends beside the legs that they are folded on. */
  private void hems(List<Vec2> points) {
    List<FoldedPart.Leg> legs = part.legs();
    int last = legs.size() - 1;
    if (last > 0 && Math.abs(legs.get(0).bendDegrees()) > 179) {
      points.set(0, hem(points.get(0), points.get(1), points.get(2)));
      points.add(1, points.get(1).plus(points.get(0).minus(foot(points.get(0), points.get(1), points.get(2)))));
    }
    if (last > 0 && Math.abs(legs.get(last - 1).bendDegrees()) > 179) {
      int n = points.size();
      Vec2 end = hem(points.get(n - 1), points.get(n - 2), points.get(n - 3));
      Vec2 apart = end.minus(foot(end, points.get(n - 2), points.get(n - 3)));
      points.set(n - 1, points.get(n - 2).plus(apart));
      points.add(end);
    }
  }

  /** The free end of a hem whose bend is at {@code bend} of the leg towards {@code other}. */
  private static Vec2 hem(Vec2 free, Vec2 bend, Vec2 other) {
    Vec2 along = other.minus(bend).times(1 / Math.max(1e-9, other.distance(bend)));
    double side = along.cross(free.minus(bend)) < 0 ? -1 : 1;
    return bend.plus(along.times(Math.max(SHORTEST, free.distance(bend)))).plus(along.left().times(side * APART));
  }

  private static Vec2 foot(Vec2 p, Vec2 a, Vec2 b) {
    Vec2 along = b.minus(a).times(1 / Math.max(1e-9, a.distance(b)));
    return a.plus(along.times(p.minus(a).dot(along)));
  }

  /** The length of each leg, in order, where it is free. */
  private void words(List<Vec2> points, Svg svg) {
    PaperRoom room = new PaperRoom(place);
    for (int i = 1; i < points.size(); i++) {
      room.close(points.subList(i - 1, i + 1));
    }
    int segment = 0;
    for (int i = 0; i < part.legs().size(); i++) {
      // The fold of a hem is a segment of its own.
      boolean isHem = Math.abs(part.legs().get(i).bendDegrees()) > 179 && i == 0;
      boolean isLast = i == part.legs().size() - 1 && i > 0 && Math.abs(part.legs().get(i - 1).bendDegrees()) > 179;
      segment += isLast ? 1 : 0;
      word(points.get(segment), points.get(segment + 1), length(part.legs().get(i).lengthM()), room, svg);
      segment += isHem ? 2 : 1;
    }
  }

  private String length(double metres) {
    return units == DrawingUnits.US ? MeasureFormat.formatInches(metres) : MeasureFormat.plain(metres * 1000, 0);
  }

  private static void word(Vec2 a, Vec2 b, String words, PaperRoom room, Svg svg) {
    double width = PaperRoom.width(words, SIZE);
    Vec2 middle = a.towards(b, 0.5);
    for (double away = 1.2; away < 14; away += 0.8) {
      for (int i = 0; i < 16; i++) {
        double t = Math.PI * (i * 5 % 16) / 8 + StrictMath.atan2(b.v() - a.v(), b.u() - a.u()) + Math.PI / 2;
        Vec2 to = new Vec2(StrictMath.cos(t), StrictMath.sin(t));
        Vec2 foot = middle.plus(to.times(away)).plus(new Vec2(to.u() * width / 2, to.v() * SIZE / 2 + SIZE / 3));
        List<Vec2> strip = PaperRoom.strip(foot, 0, width, SIZE);
        if (room.isFree(strip)) {
          svg.turned("leg", foot, 0, words);
          room.close(strip);
          return;
        }
      }
    }
  }
}
