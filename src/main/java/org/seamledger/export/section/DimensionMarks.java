package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamledger.export.sheet.DimensionLine;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;

/** Dimensions and turned words of a section, each where its words are free of others and of break lines. */
final class DimensionMarks {

  private static final double SIZE = DimensionLine.SIZE;

  private final SectionView view;
  private final PaperRoom room;
  private final Keynotes notes;

  DimensionMarks(SectionView view, PaperRoom room, Keynotes notes) {
    this.view = view;
    this.room = room;
    this.notes = notes;
  }

  void draw(Svg svg) {
    Map<String, List<SectionScene.Dimension>> same = new LinkedHashMap<>();
    view.scene().dimensions().forEach(d -> same.computeIfAbsent(d.words(), w -> new ArrayList<>()).add(d));
    same.values().forEach(d -> dimension(d, svg));
    view.scene().notes().forEach(n -> note(n, svg));
  }

  /** What measures the same on both sides is written once, where it has the better place. */
  private void dimension(List<SectionScene.Dimension> same, Svg svg) {
    Optional<DimensionLine> best = same.stream().flatMap(d -> place(d).stream()).min(Comparator.comparingDouble(DimensionLine::cost));
    best.ifPresentOrElse(p -> p.draw(room, svg), () -> {
      SectionScene.Dimension d = same.get(0);
      Vec2 a = view.paper(d.from());
      Vec2 b = view.paper(d.to());
      notes.add(Keynotes.Group.REST, d.words(), List.of(a.towards(b, 0.5), a, b));
    });
  }

  private Optional<DimensionLine> place(SectionScene.Dimension d) {
    Vec2 a = view.paper(d.from());
    Vec2 b = view.paper(d.to());
    Vec2 along = b.minus(a).times(1 / Math.max(1e-9, a.distance(b)));
    Vec2 offset = view.paper(d.from().plus(d.offset())).minus(a);
    double length = offset.length();
    Vec2 side = length > 1e-6 ? offset.times(1 / length) : along.left();
    return DimensionLine.place(d.words(), a, b, side, length > 1e-6 ? Math.max(6, Math.min(14, length)) : 0, room);
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
