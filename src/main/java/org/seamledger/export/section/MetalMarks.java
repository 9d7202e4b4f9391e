package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.FacePart;
import org.seamledger.detail.MetalPart;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;

/** The sheets of a detail, each part drawn in one group of its own and noted with its girth and what is counted of it. */
final class MetalMarks {

  private static final double[] SHARES = {0.5, 0.3, 0.7, 0.15, 0.85};

  private final SectionView view;
  private final SectionFigure figure;

  MetalMarks(SectionView view, SectionFigure figure) {
    this.view = view;
    this.figure = figure;
  }

  void draw(Svg svg) {
    for (MetalPart part : figure.detail().metal()) {
      String words = words(part);
      List<SectionScene.Shape> drawn = view.scene().shapes().stream().filter(s -> s.part().equals(part.id())).toList();
      if (drawn.isEmpty()) {
        figure.notes().unseen(words);
        continue;
      }
      svg.open("g", "class", "drawn", figure.attribute(), "metal " + part.id());
      drawn.forEach(s -> svg.polyline(s.type(), view.paper(s.points())));
      svg.close("g");
      List<Vec2> places = new ArrayList<>();
      for (SectionScene.Shape s : drawn) {
        for (double share : SHARES) {
          places.add(pointAlong(view.paper(s.points()), share));
        }
      }
      figure.notes().add(Keynotes.Group.METAL, words, places);
    }
  }

  /** What the detail has of the faces: each in a group of its own; its words are the scene's. */
  void faceParts(Svg svg) {
    for (FacePart part : figure.detail().withFaces()) {
      List<SectionScene.Shape> drawn = view.scene().shapes().stream().filter(s -> s.part().equals(part.id())).toList();
      if (drawn.isEmpty()) {
        figure.notes().unseen(part.words());
        continue;
      }
      svg.open("g", "class", "drawn", figure.attribute(), "face " + part.id());
      drawn.forEach(s -> svg.polyline(s.type(), view.paper(s.points())));
      svg.close("g");
    }
  }

  private String words(MetalPart part) {
    double girth = part.girthM() > 0 ? part.girthM() : figure.system().flashing().girth().value();
    String size = switch (part.run()) {
      case ONCE -> "made to measure";
      case AT_INTERVALS -> "one for each " + view.scene().units().length(figure.system().everyM(part));
      case BETWEEN_INTERVALS -> "at most " + view.scene().units().length(figure.system().everyM(part)) + " apart";
      default -> "girth " + view.scene().units().small(girth) + figure.counts().fold(part);
    };
    return part.part() + ", " + size + figure.counts().metal(part);
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
