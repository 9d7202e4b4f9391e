package org.seamledger.export.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.layout.Seam;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/** The roof, or a part of it, on a sheet: faces, seams, junction lines, and words or numbers for each. */
final class PlanFigure {

  private static final double LEVEL_DEGREES = 0.05;
  private static final double LABEL = 2.4;
  private static final double SLOPE = 2.7;
  /** More numbers than these no sheet can hold legibly: the schedule then gives the field alone. */
  private static final int MOST_TAGS = 700;
  /** From a joint of panels to words that would lie on it. */
  private static final double BESIDE_JOINT = 5;
  private static final double[] SHARES = {0.5, 0.3, 0.7};
  private static final double[] AWAY = {3.6, 5.5, 8, 11, 15, 20, 27};

  private final Takeoff takeoff;
  private final PlanView view;
  private final PlanNames names;
  private final DrawingUnits units;
  private final PaperBox shown;
  private final PaperRoom room;
  private final Svg words = new Svg();
  private final Set<String> labelled = new HashSet<>();
  private final TreeSet<String> unlabelledFaces = new TreeSet<>();

  PlanFigure(Takeoff takeoff, PlanView view, PlanNames names, DrawingUnits units, PaperBox place) {
    this.takeoff = takeoff;
    this.view = view;
    this.names = names;
    this.units = units;
    this.shown = view.isWhole() ? place : view.window().inset(-5);
    this.room = new PaperRoom(place);
    for (DetailedJunction j : takeoff.lines()) {
      room.line(j.junction().junction().path().stream().map(view::paper).toList());
    }
    takeoff.faces().forEach(this::fall);
    List<DetailedJunction> longestFirst = new ArrayList<>(takeoff.lines());
    longestFirst.sort(Comparator.comparingDouble(j -> -j.junction().junction().lengthM()));
    longestFirst.forEach(j -> label(j.junction().junction()));
  }

  /** Ids of the junctions whose words stand on the line itself. */
  Set<String> labelled() {
    return labelled;
  }

  Set<String> unlabelledFaces() {
    return unlabelledFaces;
  }

  /** Where a junction lies on the sheet; empty where it lies outside what is shown. */
  List<Vec2> stretch(Junction junction) {
    return view.longestStretch(junction.path(), view.isWhole() ? shown : view.window());
  }

  /** The whole figure, with numbers for the lines that have one. */
  Svg draw() {
    List<Junction> tagged = takeoff.lines().stream().map(d -> d.junction().junction())
        .filter(j -> names.tag(j.id()) > 0 && !labelled.contains(j.id()) && !stretch(j).isEmpty()).limit(MOST_TAGS).toList();
    Svg tags = new Svg();
    tagged.forEach(j -> tag(j, tags));
    Svg svg = new Svg();
    String clip = "window-" + view.column() + "-" + view.row();
    svg.open("defs").open("clipPath", "id", clip);
    svg.empty("rect", "x", Svg.number(shown.left()), "y", Svg.number(shown.top()), "width", Svg.number(shown.width()), "height",
        Svg.number(shown.height()));
    svg.close("clipPath").close("defs");
    svg.open("g", "clip-path", "url(#" + clip + ")");
    faces(svg);
    svg.add(PlanWater.draw(takeoff, view));
    lines(svg);
    svg.close("g");
    return svg.add(words).add(tags);
  }

  private boolean isSeen(List<Vec2> points) {
    double minU = points.stream().mapToDouble(Vec2::u).min().orElse(0);
    double maxU = points.stream().mapToDouble(Vec2::u).max().orElse(0);
    double minV = points.stream().mapToDouble(Vec2::v).min().orElse(0);
    double maxV = points.stream().mapToDouble(Vec2::v).max().orElse(0);
    return maxU >= shown.left() && minU <= shown.right() && maxV >= shown.top() && minV <= shown.bottom();
  }

  private void faces(Svg svg) {
    int number = 0;
    for (RoofFace face : takeoff.faces()) {
      number++;
      for (Facet facet : face.facets()) {
        StringBuilder path = new StringBuilder();
        List<Vec2> all = new ArrayList<>();
        for (Region.Ring ring : facet.area().rings()) {
          List<Vec2> points = ring.points().stream().map(p -> view.paper(facet.plane().at(p.u(), p.v()))).toList();
          all.addAll(points);
          path.append('M').append(Svg.points(points)).append("Z ");
        }
        if (isSeen(all)) {
          svg.empty("path", "class", number % 2 == 0 ? "face face-2" : "face", "d", path.toString().strip());
        }
      }
      for (Seam seam : takeoff.quantities().layout().face(face.id()).seams()) {
        seam.stretches().stream().map(s -> List.of(view.paper(s.low()), view.paper(s.high()))).filter(this::isSeen)
            .forEach(s -> svg.line("seam", s.get(0), s.get(1)));
      }
    }
  }

  private void lines(Svg svg) {
    for (DetailedJunction d : takeoff.lines()) {
      Junction junction = d.junction().junction();
      List<Vec2> path = junction.path().stream().map(view::paper).toList();
      if (isSeen(path)) {
        svg.empty("polyline", "class", "junction " + d.junction().type().line().word() + " seal-" + SealClass.of(d), "data-id",
            junction.id(), "points", Svg.points(path));
      }
    }
  }

  /** An arrow down the fall and the slope; where a face is too narrow for the words, its id alone. */
  private void fall(RoofFace face) {
    Facet facet = face.facets().get(face.facets().size() / 2);
    Vec2 inside = facet.area().interiorPoint();
    double azimuth = Math.toRadians(face.fallAzimuthDegrees());
    Vec2 down = new Vec2(Math.sin(azimuth), -Math.cos(azimuth));
    double aside = isOnJoint(face, view.paper(facet.plane().at(inside.u(), inside.v()))) ? BESIDE_JOINT : 0;
    Vec2 at = view.paper(facet.plane().at(inside.u(), inside.v())).plus(down.times(aside));
    if (!shown.has(at)) {
      return;
    }
    boolean level = face.slopeDegrees() < LEVEL_DEGREES;
    String all = face.id() + " · " + (level ? "level" : units.slope(face.slopeDegrees()));
    // Distances in the face shrink along the fall when they are projected; the cosine keeps the arrow inside.
    double space = facet.area().boundaryDistance(inside) * 1000 / view.denominator() * facet.plane().normal().z() - aside;
    for (String shownWords : List.of(all, face.id())) {
      double half = PaperRoom.width(shownWords, SLOPE) / 2;
      List<Vec2> strip = PaperRoom.strip(at, 0, 2 * half, SLOPE);
      if (half <= space && room.isFree(strip)) {
        room.close(strip);
        words.turned("slope halo", at, 0, shownWords);
        double clear = Math.abs(down.u()) * half + Math.abs(down.v()) * 2.5 + 1;
        if (!level && clear + 3 <= space) {
          arrow(at.plus(down.times(clear)).plus(new Vec2(0, -1)), down, Math.min(9, space * 0.95 - clear - 2));
        }
        unlabelledFaces.addAll(shownWords.equals(all) ? List.of() : List.of(all));
        return;
      }
    }
    unlabelledFaces.add(all);
  }

  /** Whether a place lies so near to a joint of the face's panels that words there would lie on its line. */
  private boolean isOnJoint(RoofFace face, Vec2 at) {
    return takeoff.joints().stream().map(j -> j.junction().junction()).filter(j -> j.faces().contains(face.id()))
        .map(j -> j.path().stream().map(view::paper).toList())
        .anyMatch(p -> Math.abs(p.get(1).minus(p.get(0)).left().dot(at.minus(p.get(0)))) < BESIDE_JOINT * p.get(0).distance(p.get(1)));
  }

  private void arrow(Vec2 from, Vec2 down, double length) {
    Vec2 to = from.plus(down.times(Math.max(0.8, length)));
    Vec2 side = down.left().times(0.9);
    List<Vec2> head = List.of(to.plus(down.times(2)), to.plus(side), to.minus(side));
    words.line("fall", from, to);
    words.polygon("fall-head", head);
    room.close(List.of(from, to));
    room.close(head);
  }

  /** Words along a line that is long enough for them. */
  private void label(Junction junction) {
    List<Vec2> at = stretch(junction);
    if (at.isEmpty()) {
      return;
    }
    Vec2 a = at.get(0);
    Vec2 b = at.get(1);
    String all = names.name(junction.id()) + " · " + units.length(junction.lengthM());
    double width = PaperRoom.width(all, LABEL);
    if (a.distance(b) < width * 0.95) {
      return;
    }
    double turn = Math.toDegrees(Math.atan2(a.v() - b.v(), b.u() - a.u()));
    turn = turn > 90.001 ? turn - 180 : turn <= -89.999 ? turn + 180 : turn;
    double t = Math.toRadians(turn);
    Vec2 up = new Vec2(-Math.sin(t), -Math.cos(t));
    Vec2 best = null;
    int least = Integer.MAX_VALUE;
    for (double share : SHARES) {
      for (double above : new double[] {1.3, -3.1}) {
        double from = Math.min(Math.max(share, width / 2 / a.distance(b)), 1 - width / 2 / a.distance(b));
        Vec2 foot = a.towards(b, a.distance(b) < width ? 0.5 : from).plus(up.times(above));
        List<Vec2> strip = PaperRoom.strip(foot, turn, width, LABEL);
        int crossed = room.isFree(strip) ? room.crossed(strip) : Integer.MAX_VALUE;
        best = crossed < least ? foot : best;
        least = Math.min(least, crossed);
      }
    }
    if (best != null) {
      room.close(PaperRoom.strip(best, turn, width, LABEL));
      words.turned("label halo", best, turn, all);
      labelled.add(junction.id());
    }
  }

  /** A number beside a line, with a leader to it, where nothing else is. */
  private void tag(Junction junction, Svg svg) {
    List<Vec2> at = stretch(junction);
    String number = Integer.toString(names.tag(junction.id()));
    double half = Math.max(1.7, PaperRoom.width(number, 2.1) / 2 + 0.5);
    Vec2 best = null;
    Vec2 bestFoot = null;
    double least = Double.MAX_VALUE;
    for (double away : AWAY) {
      for (int i = 0; i < 48; i++) {
        Vec2 foot = at.get(0).towards(at.get(1), SHARES[i % 3]);
        double turn = Math.PI * (i / 3) / 8 + 0.3;
        Vec2 middle = foot.plus(new Vec2(Math.cos(turn), Math.sin(turn)).times(away));
        Vec2 edge = middle.towards(foot, Math.min(1, 1.75 / away));
        if (!room.isFree(PaperRoom.square(middle, half)) || !room.isFree(List.of(edge, foot))) {
          continue;
        }
        double cost = away + 2.5 * (room.crossed(PaperRoom.square(middle, half)) + room.crossed(List.of(edge, foot)));
        if (cost < least - 1e-9) {
          least = cost;
          best = middle;
          bestFoot = foot;
        }
      }
      if (least < away * 1.3) {
        break;
      }
    }
    if (best != null) {
      drawTag(svg, number, best, bestFoot, half, junction.id());
    }
  }

  private void drawTag(Svg svg, String number, Vec2 middle, Vec2 foot, double half, String id) {
    Vec2 edge = middle.towards(foot, Math.min(1, 1.75 / middle.distance(foot)));
    room.close(PaperRoom.square(middle, half));
    room.close(List.of(edge, foot));
    svg.open("g", "class", "tag", "data-id", id);
    svg.line("tag-line", edge, foot);
    svg.empty("rect", "class", "tag-ring", "x", Svg.number(middle.u() - half), "y", Svg.number(middle.v() - 1.7), "width",
        Svg.number(2 * half), "height", "3.4", "rx", "1.7");
    svg.turned("tag-number", middle.plus(new Vec2(0, 0.75)), 0, number);
    svg.close("g");
  }
}
