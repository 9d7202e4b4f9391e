package org.seamledger.export.section;

import java.util.List;
import org.seamledger.detail.FastenerType;
import org.seamledger.detail.Fastening;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;

/** Fasteners where the detail has them, those of one row in one group and with one note. Each type has a mark of its own. */
final class FastenerMarks {

  private final SectionView view;
  private final SectionFigure figure;

  FastenerMarks(SectionView view, SectionFigure figure) {
    this.view = view;
    this.figure = figure;
  }

  void draw(Svg svg) {
    for (Fastening f : figure.detail().fastenings()) {
      String words = "fasteners, " + f.place() + ": spacing at most " + view.scene().units().stated(figure.system().spacing(f.spacing()))
          + (f.throughTape() ? ", through the tape" : "") + (f.exposed() ? ", EXPOSED" : "") + figure.counts().fasteners(f);
      List<SectionScene.Screw> places = view.scene().screwPlaces().getOrDefault(f.id(), List.of());
      if (places.isEmpty()) {
        figure.notes().unseen(words);
        continue;
      }
      svg.open("g", "class", "drawn", figure.attribute(), "fastening " + f.id());
      FastenerType type = figure.counts().type(f);
      double length = figure.counts().drawnM(f) * 1000;
      places.forEach(s -> mark(type, length > 0 ? lengthened(s, length) : s, svg));
      svg.close("g");
      figure.notes().add(Keynotes.Group.FASTENERS, words, places.stream().map(s -> view.paper(s.head())).toList());
    }
  }

  /** As long as it is, and longer by the room that the drawing leaves between sheets. */
  private SectionScene.Screw lengthened(SectionScene.Screw s, double length) {
    double drawn = length + 3 * view.scene().gap();
    return new SectionScene.Screw(s.head(), s.head().plus(s.point().minus(s.head()).times(drawn / s.head().distance(s.point()))));
  }

  private void mark(FastenerType type, SectionScene.Screw place, Svg svg) {
    Vec2 head = view.paper(place.head());
    Vec2 tip = view.paper(place.point());
    Vec2 along = tip.minus(head).times(1 / Math.max(1e-9, head.distance(tip)));
    switch (type) {
      case WEDGE -> wedge(head, tip, svg);
      case RIVET -> rivet(head, tip, along, svg);
      case STITCH_SCREW, DECK_SCREW -> {
        washer(head, along, svg);
        shank(head, tip, along, svg);
        head(head.minus(along.times(0.45)), along, 1.2, 1.5, svg);
        thread(head, tip, along, svg);
      }
      case PANCAKE_SCREW -> {
        shank(head, tip, along, svg);
        head(head, along, 1.9, 0.55, svg);
        thread(head, tip, along, svg);
      }
      case WALL_ANCHOR -> {
        washer(head, along, svg);
        shank(head, tip, along, svg);
        head(head.minus(along.times(0.45)), along, 1.2, 1.5, svg);
        plug(head, tip, along, svg);
      }
    }
  }

  private static void shank(Vec2 head, Vec2 tip, Vec2 along, Svg svg) {
    svg.line("axis", head.minus(along.times(4.5)), tip.plus(along.times(2.5)));
    svg.line("shank", head, tip);
  }

  private static void head(Vec2 at, Vec2 along, double half, double high, Svg svg) {
    Vec2 side = along.left();
    Vec2 top = at.minus(along.times(high));
    svg.polygon("screw-head", List.of(at.plus(side.times(half)), at.minus(side.times(half)), top.minus(side.times(half * 0.6)),
        top.plus(side.times(half * 0.6))));
  }

  private static void washer(Vec2 head, Vec2 along, Svg svg) {
    Vec2 side = along.left().times(1.9);
    svg.line("washer", head.minus(along.times(0.2)).plus(side), head.minus(along.times(0.2)).minus(side));
  }

  private static void thread(Vec2 head, Vec2 tip, Vec2 along, Svg svg) {
    Vec2 side = along.left().times(0.7);
    double length = head.distance(tip);
    for (double at = 1.6; at < length - 0.4; at += 1.1) {
      Vec2 middle = head.plus(along.times(at));
      svg.line("thread", middle.plus(side), middle.minus(side).plus(along.times(0.5)));
    }
  }

  /** A domed head, and the bulb of its closed end beyond the last sheet. */
  private static void rivet(Vec2 head, Vec2 tip, Vec2 along, Svg svg) {
    Vec2 side = along.left();
    svg.line("axis", head.minus(along.times(4.5)), tip.plus(along.times(2.5)));
    svg.line("shank", head, tip);
    for (int end : new int[] {-1, 1}) {
      Vec2 at = end < 0 ? head : tip;
      double half = end < 0 ? 1.4 : 1;
      Vec2 out = along.times(end * 0.9);
      svg.polygon("screw-head", List.of(at.plus(side.times(half)), at.plus(side.times(half * 0.6)).plus(out.times(0.8)), at.plus(out),
          at.minus(side.times(half * 0.6)).plus(out.times(0.8)), at.minus(side.times(half))));
    }
  }

  /** The sleeve that holds an anchor in masonry. */
  private static void plug(Vec2 head, Vec2 tip, Vec2 along, Svg svg) {
    Vec2 side = along.left().times(1);
    Vec2 from = head.towards(tip, 0.3);
    svg.polygon("plug", List.of(from.plus(side), tip.plus(side), tip.minus(side), from.minus(side)));
  }

  /** Rolled metal driven into a slot: as wide as it is long, pointed, without a thread or an axis. */
  private static void wedge(Vec2 a, Vec2 b, Svg svg) {
    Vec2 side = b.minus(a).left().times(1 / Math.max(1e-9, a.distance(b)));
    double half = Math.max(1.6, a.distance(b) * 0.9);
    svg.polygon("wedge", List.of(a.plus(side.times(half)), a.minus(side.times(half * 0.8)), b.minus(side.times(half * 0.8))));
  }
}
