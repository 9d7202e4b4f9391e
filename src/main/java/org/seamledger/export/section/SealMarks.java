package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.Measure;

/** Tape, sealant and beads where the detail has them. */
final class SealMarks {

  /** Of two legs as long as this, millimetres, neither shows a lap better; and what touching something else takes from it. */
  private static final double LONG = 120;
  private static final double TOUCHED = 35;
  /** Where on a leg a lap can be shown. */
  private static final double[] SHARES = {0.4, 0.6, 0.25, 0.75};

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
        if (seal.run() == Run.PER_LAP) {
          svg.line("lapping", points.get(3).towards(points.get(2), -0.25), points.get(3).towards(points.get(2), 1.25));
        }
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

  /** What lies in a part's laps lies beyond the cut: shown on the part where a lap would be, clear of all that is in the cut. */
  private List<List<List<Vec2>>> lapPlaces(Seal seal) {
    List<Vec2> part = view.scene().parts().get(seal.part());
    if (part == null) {
      return List.of();
    }
    List<Vec2> best = List.of();
    double most = -Double.MAX_VALUE;
    for (int i = 1; i < part.size(); i++) {
      double length = part.get(i - 1).distance(part.get(i));
      for (double share : SHARES) {
        List<Vec2> box = lap(part.get(i - 1), part.get(i), share);
        double score = Math.min(length, LONG) - TOUCHED * touched(box);
        if (score > most + 1e-9) {
          most = score;
          best = box;
        }
      }
    }
    return List.of(List.of(best));
  }

  /** A strip above a leg, a fifth of it long. */
  private List<Vec2> lap(Vec2 a, Vec2 b, double share) {
    double gap = view.scene().gap();
    Vec2 along = b.minus(a).times(1 / Math.max(1e-9, a.distance(b)));
    Vec2 up = along.left().v() >= 0 ? along.left() : along.left().times(-1);
    Vec2 from = a.plus(along.times(a.distance(b) * (share - 0.1))).plus(up.times(gap * 0.8));
    Vec2 to = a.plus(along.times(a.distance(b) * (share + 0.1))).plus(up.times(gap * 0.8));
    return List.of(from, to, to.plus(up.times(gap * 1.2)), from.plus(up.times(gap * 1.2)));
  }

  /** How many seals, fasteners and other sheets a place touches. */
  private long touched(List<Vec2> box) {
    SectionScene scene = view.scene();
    long seals =
        scene.sealPlaces().values().stream().flatMap(List::stream).flatMap(List::stream).filter(s -> PaperRoom.touch(s, box)).count();
    long screws = scene.screwPlaces().values().stream().flatMap(List::stream)
        .filter(s -> PaperRoom.touch(List.of(s.head(), s.point()), box)).count();
    long sheets = scene.shapes().stream().filter(s -> !s.area() && !s.type().equals("seam")).filter(s -> {
      for (int i = 1; i < s.points().size(); i++) {
        if (PaperRoom.touch(s.points().subList(i - 1, i + 1), box)) {
          return true;
        }
      }
      return false;
    }).count();
    return seals + screws + sheets;
  }

  private String words(Seal seal) {
    String lines = seal.lines() > 1 ? ", " + seal.lines() + " lines" : "";
    String role = ", " + seal.role().word() + (seal.exposure() == Seal.Exposure.EXPOSED ? ", EXPOSED" : "");
    return switch (seal.form()) {
      case TAPE -> "tape " + stated(figure.system().tape().thickness()) + " × " + stated(figure.system().tape().width()) + " "
          + seal.place() + lines + role;
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
