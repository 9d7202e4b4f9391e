package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.seamledger.detail.Kind;
import org.seamledger.detail.KindedJunction;
import org.seamledger.export.plan.PlanLabels;
import org.seamledger.export.plan.PlanStyle;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.wording.ScopeText;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.layout.Seam;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/** The roof from above, to scale, as SVG: faces with slope and fall, seams, every junction line by kind with its length. */
public final class PlanDrawing {

  /** Paper for the plan itself, millimetres. */
  private static final double LEFT = 14;
  private static final double TOP = 28;
  private static final double PLAN_WIDTH = 306;
  private static final double PLAN_HEIGHT = 205;
  private static final double LEGEND = 334;
  private static final double TABLE = 246;
  private static final double PITCH = 3.6;

  private static final double[] SCALES =
      {5, 10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 2000, 5000, 10_000, 50_000};
  private static final double LEVEL_DEGREES = 0.05;
  /** Width of a character of labels, as a share of their height, generous for a sans serif. */
  private static final double CHARACTER = 0.6;
  private static final double LABEL = 2.4;
  /** What stands after the id of a junction whose kind or detail a person chose. */
  private static final String BY_HAND = "*";

  private static final String STYLE = """
      .face { fill: #eef2f4; stroke: none; fill-rule: evenodd; }
      .face-2 { fill: #e3eaee; }
      .seam { stroke: #9fb0bb; stroke-width: 0.13; }
      .fall { stroke: #44525f; stroke-width: 0.3; fill: none; }
      .fall-head { fill: #44525f; }
      .label { font-size: 2.4px; }
      .slope { font-size: 2.7px; fill: #2c3944; }
      """;

  private final Takeoff takeoff;
  private final double denominator;
  private final Vec2 low;
  private final Vec2 shift;
  private final PlanLabels labels = new PlanLabels();
  private final List<String> unlabelled = new ArrayList<>();

  /** Ids of the junctions whose kind or detail a person chose. */
  private final Set<String> byHand;
  private final TreeSet<String> ids = new TreeSet<>();

  private PlanDrawing(Takeoff takeoff) {
    this.takeoff = takeoff;
    takeoff.junctions().forEach(j -> ids.add(j.junction().id()));
    this.byHand = takeoff.decided().stream().map(j -> j.junction().junction().id()).collect(Collectors.toSet());
    List<Vec3> all = points(takeoff);
    double minX = all.stream().mapToDouble(Vec3::x).min().orElse(0);
    double minY = all.stream().mapToDouble(Vec3::y).min().orElse(0);
    double width = all.stream().mapToDouble(Vec3::x).max().orElse(1) - minX;
    double depth = all.stream().mapToDouble(Vec3::y).max().orElse(1) - minY;
    double n = SCALES[SCALES.length - 1];
    for (int i = SCALES.length - 1; i >= 0; i--) {
      boolean fits = width * 1000 / SCALES[i] <= PLAN_WIDTH - 8 && depth * 1000 / SCALES[i] <= PLAN_HEIGHT - 8;
      n = fits ? SCALES[i] : n;
    }
    denominator = n;
    low = new Vec2(minX, minY);
    shift = new Vec2(LEFT + (PLAN_WIDTH - width * 1000 / n) / 2, TOP + (PLAN_HEIGHT + depth * 1000 / n) / 2);
  }

  /** The drawing as SVG text; the same takeoff gives the same text. */
  public static String svg(Takeoff takeoff) {
    return new PlanDrawing(takeoff).drawn();
  }

  /** Writes the drawing as UTF-8 and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    out.write(svg(takeoff).getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private static List<Vec3> points(Takeoff takeoff) {
    Stream<Vec3> lines = takeoff.junctions().stream().flatMap(j -> j.junction().path().stream());
    return Stream.concat(lines, takeoff.faces().stream().flatMap(f -> f.facets().stream()).flatMap(PlanDrawing::corners)).toList();
  }

  private static Stream<Vec3> corners(Facet facet) {
    return facet.area().rings().stream().flatMap(r -> r.points().stream()).map(p -> facet.plane().at(p.u(), p.v()));
  }

  private Vec2 paper(Vec3 p) {
    return new Vec2(shift.u() + (p.x() - low.u()) * 1000 / denominator, shift.v() - (p.y() - low.v()) * 1000 / denominator);
  }

  private String drawn() {
    StringBuilder body = new StringBuilder();
    body.append(faces()).append(lines()).append(words());
    double rows = Math.ceil(unlabelled.size() / 4.0);
    double height = Math.max(Sheet.HEIGHT, TABLE + 8 + rows * PITCH + 22);
    StringBuilder css = new StringBuilder(STYLE);
    PlanStyle.ALL.forEach(s -> css.append(s.css()));
    String title = "Roof plan: " + Sheet.models(takeoff);
    Svg svg =
        Sheet.begin(height, denominator, title, "Faces, falls, seams and junction lines of the roof, seen from above.", css.toString());
    svg.text("title", new Vec2(LEFT, 15), title);
    svg.text("subtitle", new Vec2(LEFT, 21), takeoff.system().name() + " · " + takeoff.faces().size() + " faces · "
        + takeoff.junctions().size() + " junctions · seamledger " + takeoff.version());
    return svg + body.toString() + surround(height) + "</svg>\n";
  }

  // ---- the roof

  private Svg faces() {
    Svg svg = new Svg();
    int number = 0;
    for (RoofFace face : takeoff.faces()) {
      number++;
      for (Facet facet : face.facets()) {
        StringBuilder path = new StringBuilder();
        for (Region.Ring ring : facet.area().rings()) {
          path.append('M').append(Svg.points(ring.points().stream().map(p -> paper(facet.plane().at(p.u(), p.v()))).toList())).append("Z ");
        }
        svg.empty("path", "class", number % 2 == 0 ? "face face-2" : "face", "d", path.toString().strip());
      }
      for (Seam seam : takeoff.quantities().layout().face(face.id()).seams()) {
        seam.stretches().forEach(s -> svg.line("seam", paper(s.low()), paper(s.high())));
      }
    }
    return svg;
  }

  private Svg lines() {
    Svg svg = new Svg();
    for (KindedJunction j : takeoff.junctions()) {
      List<Vec2> path = j.junction().path().stream().map(this::paper).toList();
      svg.empty("polyline", "class", "junction " + j.type().line().word(), "data-id", j.junction().id(), "points", Svg.points(path));
    }
    return svg;
  }

  private Svg words() {
    Svg svg = new Svg();
    takeoff.faces().forEach(face -> fall(svg, face));
    List<KindedJunction> longestFirst = new ArrayList<>(takeoff.junctions());
    longestFirst.sort((a, b) -> Double.compare(b.junction().lengthM(), a.junction().lengthM()));
    longestFirst.forEach(j -> label(svg, j));
    return svg;
  }

  /** An arrow down the fall and the slope; where a face is too narrow for the words, its id alone, and the words are listed. */
  private void fall(Svg svg, RoofFace face) {
    Facet facet = face.facets().get(face.facets().size() / 2);
    Vec2 inside = facet.area().interiorPoint();
    Vec2 at = paper(facet.plane().at(inside.u(), inside.v()));
    boolean level = face.slopeDegrees() < LEVEL_DEGREES;
    String words = face.id() + " · " + (level ? "level"
        : MeasureFormat.fixed(face.slopeDegrees(), 1) + "° · " + MeasureFormat.plain(face.risePer12(), 2) + ":12");
    double azimuth = Math.toRadians(face.fallAzimuthDegrees());
    Vec2 down = new Vec2(Math.sin(azimuth), -Math.cos(azimuth));
    // Distances in the face shrink along the fall when they are projected; the cosine keeps the arrow inside.
    double room = facet.area().boundaryDistance(inside) * 1000 / denominator * facet.plane().normal().z();
    double half = halfWidth(words);
    double clear = Math.abs(down.u()) * half + Math.abs(down.v()) * 2.5 + 1;
    boolean roomy = half <= room && clear + 4 <= room;
    String shown = roomy ? words : face.id();
    Vec2 place = roomy ? at : at.minus(down.times(Math.min(3, room * 0.4)));
    if (!roomy) {
      unlabelled.add(words);
      clear = Math.abs(down.u()) * halfWidth(shown) + Math.abs(down.v()) * 2 + 0.4;
    }
    if (room < 3.5 || !labels.take(place, 0, halfWidth(shown), roomy ? 3 : 1.6)) {
      if (roomy) {
        unlabelled.add(words);
      }
      return;
    }
    svg.turned("slope halo", place, 0, shown);
    if (!level) {
      arrow(svg, place.plus(down.times(clear)).plus(new Vec2(0, -1)), down, Math.min(9, room * 0.95 - clear + at.distance(place) - 2));
    }
  }

  private static double halfWidth(String words) {
    return words.length() * 2.7 * CHARACTER / 2;
  }

  private void arrow(Svg svg, Vec2 from, Vec2 down, double length) {
    Vec2 to = from.plus(down.times(Math.max(0.8, length)));
    svg.line("fall", from, to);
    Vec2 side = down.left().times(0.9);
    svg.polygon("fall-head", List.of(to.plus(down.times(2)), to.plus(side), to.minus(side)));
    labels.take(from.towards(to, 0.5), Math.toDegrees(Math.atan2(-down.v(), down.u())), from.distance(to) / 2 + 1, 1);
  }

  private void label(Svg svg, KindedJunction j) {
    Junction junction = j.junction();
    String length = MeasureFormat.formatMetres(junction.lengthM()) + " · " + MeasureFormat.formatFeetInches(junction.lengthM());
    String name = shortId(junction.id()) + (byHand.contains(junction.id()) ? BY_HAND : "");
    String words = name + " · " + length;
    int longest = 1;
    for (int i = 2; i < junction.path().size(); i++) {
      longest = paperLength(junction, i) > paperLength(junction, longest) ? i : longest;
    }
    Vec2 a = paper(junction.path().get(longest - 1));
    Vec2 b = paper(junction.path().get(longest));
    double half = words.length() * LABEL * CHARACTER / 2;
    double turn = Math.toDegrees(Math.atan2(a.v() - b.v(), b.u() - a.u()));
    turn = turn > 90.001 ? turn - 180 : turn <= -89.999 ? turn + 180 : turn;
    double t = Math.toRadians(turn);
    Vec2 middle = a.towards(b, 0.5).plus(new Vec2(-Math.sin(t), -Math.cos(t)).times(1.4));
    if (a.distance(b) < 2 * half * 0.95 || !labels.take(middle, turn, half, 1.6)) {
      unlabelled.add(name + " · " + j.type().label() + " · " + length);
      return;
    }
    svg.turned("label halo", middle, turn, words);
  }

  private double paperLength(Junction junction, int i) {
    return paper(junction.path().get(i - 1)).distance(paper(junction.path().get(i)));
  }

  /** The beginning of an id that no other junction shares, of four characters or more. */
  private String shortId(String id) {
    int length = Math.min(4, id.length());
    while (length < id.length() && startsAnother(id, id.substring(0, length))) {
      length++;
    }
    return id.substring(0, length);
  }

  private boolean startsAnother(String id, String start) {
    String next = ids.ceiling(start);
    String other = id.equals(next) ? ids.higher(id) : next;
    return other != null && other.startsWith(start);
  }

  // ---- around it

  private Svg surround(double height) {
    Svg svg = new Svg();
    legend(svg);
    north(svg, new Vec2(LEGEND + 8, TOP + 132));
    Sheet.scaleBars(svg, new Vec2(LEGEND, TOP + 160), denominator);
    svg.line("rule", new Vec2(LEFT, TABLE - 7), new Vec2(Sheet.WIDTH - LEFT, TABLE - 7));
    if (!unlabelled.isEmpty()) {
      svg.text("head", new Vec2(LEFT, TABLE - 2), "Without room for words on the plan at this scale");
      int rows = (int) Math.ceil(unlabelled.size() / 4.0);
      for (int i = 0; i < unlabelled.size(); i++) {
        svg.text("small", new Vec2(LEFT + i / rows * 98.0, TABLE + 2.5 + i % rows * PITCH), unlabelled.get(i));
      }
    }
    Sheet.paragraph(svg, "fine", new Vec2(LEFT, height - 15), 3.2, 250, ScopeText.SCOPE);
    return svg;
  }

  private void legend(Svg svg) {
    svg.text("head", new Vec2(LEGEND, TOP + 4), "Junction lines");
    double y = TOP + 10;
    for (PlanStyle style : PlanStyle.ALL) {
      List<KindedJunction> lines = takeoff.junctions().stream().filter(j -> j.type().line() == style.line()).toList();
      if (lines.isEmpty()) {
        continue;
      }
      double length = lines.stream().mapToDouble(j -> j.junction().lengthM()).sum();
      svg.line(style.word(), new Vec2(LEGEND, y - 1), new Vec2(LEGEND + 20, y - 1));
      double below = Sheet.paragraph(svg, "", new Vec2(LEGEND + 23, y), 3.4, 34, labels(lines));
      svg.text("fine", new Vec2(LEGEND + 23, below), MeasureFormat.formatBoth(length));
      y = below + 5.6;
    }
    svg.line("seam", new Vec2(LEGEND, y - 1), new Vec2(LEGEND + 20, y - 1));
    svg.text("", new Vec2(LEGEND + 23, y), "seam, spacing " + takeoff.system().panel().coverage());
    svg.line("fall", new Vec2(LEGEND, y + 5), new Vec2(LEGEND + 16, y + 5));
    svg.polygon("fall-head", List.of(new Vec2(LEGEND + 19, y + 5), new Vec2(LEGEND + 16, y + 4), new Vec2(LEGEND + 16, y + 6)));
    svg.text("", new Vec2(LEGEND + 23, y + 6), "slope of the face, downwards");
    Sheet.paragraph(svg, "fine", new Vec2(LEGEND, y + 13), 3.2, 54, "Lengths are true lengths in space; the plan shows them projected."
        + " A junction's id works by its beginning: section MODEL JUNCTION."
        + (byHand.isEmpty() ? "" : " A star after an id: manual override of kind or detail."));
  }

  /** What the kinds of lines are called, in their order. */
  private static String labels(List<KindedJunction> lines) {
    return lines.stream().map(KindedJunction::type).distinct().sorted().map(Kind::label).collect(Collectors.joining("; "));
  }

  private static void north(Svg svg, Vec2 at) {
    svg.polygon("bar-full", List.of(at.plus(new Vec2(0, -11)), at.plus(new Vec2(-3.5, 3)), at));
    svg.polygon("bar", List.of(at.plus(new Vec2(0, -11)), at.plus(new Vec2(3.5, 3)), at));
    svg.text("head", at.plus(new Vec2(7, -5)), "N");
    svg.text("fine", at.plus(new Vec2(7, -1)), "model north, +Y of the model");
    svg.text("fine", at.plus(new Vec2(7, 2.4)), "(not surveyed north)");
  }
}
