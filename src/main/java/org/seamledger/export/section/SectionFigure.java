package org.seamledger.export.section;

import java.util.List;
import org.seamledger.detail.Detail;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.RoofSystem;

/** The section itself on paper: ground, seals, screws, sheets, dimensions and labels of a scene. Lengths in millimetres on paper. */
public final class SectionFigure {

  private SectionFigure() {
  }

  /** Adds the figure to the drawing; gives what the detail has and the figure can't show, in words. */
  public static List<String> draw(SectionView view, RoofSystem system, Detail detail, List<FastenerRow> rows, Svg svg) {
    SectionLabels labels = new SectionLabels(view);
    svg.open("g", "class", "cut", "data-view", view.extent());
    ground(view, svg);
    new SealMarks(view, system, detail, labels).draw(svg);
    new FastenerMarks(view, system, detail, rows, labels).draw(svg);
    new MetalMarks(view, system, detail, labels).draw(svg);
    view.scene().labels().forEach(l -> labels.add(l.words(), l.at()));
    view.scene().dimensions().forEach(d -> dimension(d, view, svg));
    view.scene().notes().forEach(n -> svg.turned("halo", view.paper(n.at()), n.degrees(), n.words()));
    labels.draw(svg);
    svg.close("g");
    return labels.unseen();
  }

  private static void ground(SectionView view, Svg svg) {
    for (SectionScene.Shape s : view.scene().shapes()) {
      if (s.area()) {
        svg.polygon(s.type(), view.paper(s.points()));
      }
    }
    for (SectionScene.Shape s : view.scene().shapes()) {
      if (!s.area() && !s.type().startsWith("metal")) {
        svg.polyline(s.type(), view.paper(s.points()));
      }
    }
  }

  private static void dimension(SectionScene.Dimension d, SectionView view, Svg svg) {
    Vec2 a = view.paper(d.from());
    Vec2 b = view.paper(d.to());
    Vec2 from = view.paper(d.from().plus(d.offset()));
    Vec2 to = view.paper(d.to().plus(d.offset()));
    if (d.offset().length() > 0) {
      svg.line("dim", a, from).line("dim", b, to);
    }
    svg.line("dim", from, to);
    Vec2 along = to.minus(from).times(1 / Math.max(1e-9, from.distance(to)));
    Vec2 tick = along.plus(along.left()).times(0.8);
    svg.line("dim", from.minus(tick), from.plus(tick)).line("dim", to.minus(tick), to.plus(tick));
    double turn = Math.toDegrees(Math.atan2(-along.v(), along.u()));
    turn = turn > 90.001 ? turn - 180 : turn <= -89.999 ? turn + 180 : turn;
    double t = Math.toRadians(turn);
    svg.turned("dim-text halo", from.towards(to, 0.5).plus(new Vec2(-Math.sin(t), -Math.cos(t)).times(0.9)), turn, d.words());
  }
}
