package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.Measure;

/** Tape, sealant and beads where the detail has them. */
final class SealMarks {

  private final SectionView view;
  private final SectionFigure figure;

  SealMarks(SectionView view, SectionFigure figure) {
    this.view = view;
    this.figure = figure;
  }

  void draw(Svg svg) {
    for (Seal seal : figure.detail().seals()) {
      List<List<List<Vec2>>> places =
          seal.run() == Run.PER_LAP ? lapPlaces(seal) : view.scene().sealPlaces().getOrDefault(seal.id(), List.of());
      String words = words(seal) + figure.counts().seal(seal);
      if (places.isEmpty()) {
        figure.notes().unseen(words);
      } else {
        figure.notes().add(Keynotes.Group.SEALS, words, draw(seal, places, svg));
      }
    }
  }

  /** Gives the places that the note may point to. */
  private List<Vec2> draw(Seal seal, List<List<List<Vec2>>> places, Svg svg) {
    List<Vec2> middles = new ArrayList<>();
    svg.open("g", "class", "drawn", figure.attribute(), "seal " + seal.id() + (seal.run() == Run.PER_LAP ? " of " + seal.part() : ""));
    for (List<List<Vec2>> face : places) {
      for (List<Vec2> place : face.subList(0, Math.min(seal.lines(), face.size()))) {
        List<Vec2> points = view.paper(place);
        svg.polygon(type(seal.form()), points);
        Vec2 c = middle(points);
        if (seal.exposure() == Seal.Exposure.EXPOSED) {
          svg.empty("circle", "class", "exposed", "cx", Svg.number(c.u()), "cy", Svg.number(c.v()), "r", "4");
        }
        middles.add(c);
        middles.add(c.towards(points.get(0), 0.6));
        middles.add(c.towards(points.get(points.size() / 2), 0.6));
      }
    }
    svg.close("g");
    return middles;
  }

  private static String type(Seal.Form form) {
    return switch (form) {
      case TAPE -> "tape";
      case IN_SEAM -> "soft";
      case BEAD -> "bead";
    };
  }

  /** What lies in a part's laps lies beyond the cut: shown on the part, where a lap would be. */
  private List<List<List<Vec2>>> lapPlaces(Seal seal) {
    List<Vec2> part = view.scene().parts().get(seal.part());
    if (part == null) {
      return List.of();
    }
    List<List<Vec2>> places = new ArrayList<>();
    int longest = 1;
    for (int i = 2; i < part.size(); i++) {
      longest = part.get(i - 1).distance(part.get(i)) > part.get(longest - 1).distance(part.get(longest)) ? i : longest;
    }
    Vec2 a = part.get(longest - 1);
    Vec2 b = part.get(longest);
    Vec2 along = b.minus(a).times(1 / Math.max(1e-9, a.distance(b)));
    Vec2 up = along.left().v() >= 0 ? along.left() : along.left().times(-1);
    Vec2 from = a.plus(along.times(a.distance(b) * 0.3)).plus(up.times(view.scene().gap() * 0.8));
    Vec2 to = a.plus(along.times(a.distance(b) * 0.5)).plus(up.times(view.scene().gap() * 0.8));
    places.add(List.of(from, to, to.plus(up.times(view.scene().gap() * 1.2)), from.plus(up.times(view.scene().gap() * 1.2))));
    return List.of(places);
  }

  private String words(Seal seal) {
    String lines = seal.lines() > 1 ? ", " + seal.lines() + " lines" : "";
    String role = ", " + seal.role().word() + (seal.exposure() == Seal.Exposure.EXPOSED ? ", EXPOSED" : "");
    return switch (seal.form()) {
      case TAPE -> "tape " + stated(figure.system().tape().thickness()) + " × " + stated(figure.system().tape().width()) + " " + seal.place() + lines + role;
      case IN_SEAM -> "non-curing sealant " + seal.place() + lines + role + (seal.run() == Run.PER_LAP ? " (at laps, beyond the cut)" : "");
      case BEAD -> "bead " + size(seal) + " " + seal.place() + lines + role;
    };
  }

  private String size(Seal seal) {
    return switch (seal.size()) {
      case "bead.receiverSize" -> stated(figure.system().bead().receiverSize());
      case "bead.clampSize" -> stated(figure.system().bead().clampSize());
      default -> stated(figure.system().bead().size());
    };
  }

  private String stated(Measure length) {
    return view.scene().units().stated(length);
  }

  static Vec2 middle(List<Vec2> points) {
    Vec2 sum = new Vec2(0, 0);
    for (Vec2 p : points) {
      sum = sum.plus(p);
    }
    return sum.times(1.0 / points.size());
  }
}
