package org.seamledger.export.section;

import java.util.List;
import org.seamledger.detail.FastenerType;
import org.seamledger.detail.Fastening;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;

/** Fasteners where the detail has them, those of one row in one group and with one note. A wedge is drawn as a wedge. */
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
      for (SectionScene.Screw s : places) {
        if (f.type() == FastenerType.WEDGE) {
          wedge(s, svg);
        } else {
          screw(s, svg);
        }
      }
      svg.close("g");
      figure.notes().add(Keynotes.Group.FASTENERS, words, places.stream().map(s -> view.paper(s.head())).toList());
    }
  }

  private void screw(SectionScene.Screw screw, Svg svg) {
    Vec2 head = view.paper(screw.head());
    Vec2 tip = view.paper(screw.point());
    Vec2 along = tip.minus(head).times(1 / Math.max(1e-9, head.distance(tip)));
    Vec2 side = along.left();
    Vec2 top = head.minus(along.times(1.5));
    svg.line("axis", top.minus(along.times(3)), tip.plus(along.times(2.5)));
    svg.line("shank", head, tip);
    svg.polygon("screw-head",
        List.of(head.plus(side.times(1.5)), head.minus(side.times(1.5)), top.minus(side.times(0.8)), top.plus(side.times(0.8))));
  }

  /** Rolled metal driven into a slot: as wide as it is long, pointed, without a thread or an axis. */
  private void wedge(SectionScene.Screw wedge, Svg svg) {
    Vec2 a = view.paper(wedge.head());
    Vec2 b = view.paper(wedge.point());
    Vec2 side = b.minus(a).left().times(1 / Math.max(1e-9, a.distance(b)));
    double half = Math.max(1.6, a.distance(b) * 0.9);
    svg.polygon("wedge", List.of(a.plus(side.times(half)), a.minus(side.times(half * 0.8)), b.minus(side.times(half * 0.8))));
  }
}
