package org.seamledger.export.section;

import java.util.List;
import org.seamledger.detail.Detail;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Run;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.RoofSystem;

/** The sheets of a detail, each labelled with its girth. */
final class MetalMarks {

  private final SectionView view;
  private final RoofSystem system;
  private final Detail detail;
  private final SectionLabels labels;

  MetalMarks(SectionView view, RoofSystem system, Detail detail, SectionLabels labels) {
    this.view = view;
    this.system = system;
    this.detail = detail;
    this.labels = labels;
  }

  void draw(Svg svg) {
    for (SectionScene.Shape s : view.scene().shapes()) {
      if (!s.area() && s.type().startsWith("metal")) {
        svg.polyline(s.type(), view.paper(s.points()));
      }
    }
    for (MetalPart part : detail.metal()) {
      String girth = part.run() == Run.ONCE ? ", made to measure"
          : ", girth " + both(part.girthM() > 0 ? part.girthM() : system.flashing().girth().value());
      List<Vec2> drawn = view.scene().parts().get(part.id());
      if (drawn == null) {
        labels.unseen(part.part() + girth);
      } else {
        labels.add(part.part() + girth, pointAlong(drawn, 0.5));
      }
    }
  }

  private static String both(double metres) {
    return MeasureFormat.formatMillimetres(metres) + " (" + MeasureFormat.formatInches(metres) + ")";
  }

  /** A place on a line by its share of the line's length. */
  private static Vec2 pointAlong(List<Vec2> line, double share) {
    double length = 0;
    for (int i = 1; i < line.size(); i++) {
      length += line.get(i - 1).distance(line.get(i));
    }
    double left = length * share;
    for (int i = 1; i < line.size(); i++) {
      double step = line.get(i - 1).distance(line.get(i));
      if (left <= step && step > 0) {
        return line.get(i - 1).towards(line.get(i), left / step);
      }
      left -= step;
    }
    return line.get(line.size() - 1);
  }
}
