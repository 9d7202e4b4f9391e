package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.seamledger.detail.KindedJunction;
import org.seamledger.export.plan.PlanCaption;
import org.seamledger.export.plan.PlanLabels;
import org.seamledger.export.plan.PlanStyle;
import org.seamledger.export.plan.PlanView;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.layout.Seam;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/** The roof from above, to scale, as SVG: faces with slope and fall, seams, every junction line by kind with its length. */
public final class PlanDrawing {

  /** Millimetres on paper. */
  private static final double LEFT = 14;

  private static final double LEVEL_DEGREES = 0.05;
  /** Width of a character of labels, as a share of their height, generous for a sans serif. */
  private static final double CHARACTER = 0.6;
  private static final double LABEL = 2.4;
  /** What stands after the id of a junction with a manual override. */
  private static final String OVERRIDDEN = "*";

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
  private final PlanView view;
  private final PlanLabels labels = new PlanLabels();
  private final List<String> unlabelled = new ArrayList<>();

  /** Ids of the junctions with a manual override. */
  private final Set<String> overridden;
  private final TreeSet<String> ids = new TreeSet<>();

  private PlanDrawing(Takeoff takeoff) {
    this.takeoff = takeoff;
    takeoff.junctions().forEach(j -> ids.add(j.junction().id()));
    this.overridden = takeoff.decided().stream().map(j -> j.junction().junction().id()).collect(Collectors.toSet());
    view = PlanView.fit(takeoff);
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

  private String drawn() {
    StringBuilder body = new StringBuilder();
    body.append(faces()).append(lines()).append(words());
    double height = PlanCaption.height(unlabelled.size());
    StringBuilder css = new StringBuilder(STYLE);
    PlanStyle.ALL.forEach(s -> css.append(s.css()));
    String title = "Roof plan: " + Sheet.models(takeoff);
    Svg svg =
        Sheet.begin(height, view.denominator(), title, "Faces, falls, seams and junction lines of the roof, seen from above.",
            css.toString());
    svg.text("title", new Vec2(LEFT, 15), title);
    svg.text("subtitle", new Vec2(LEFT, 21), takeoff.system().name() + " · " + takeoff.faces().size() + " faces · "
        + takeoff.junctions().size() + " junctions · seamledger " + takeoff.version());
    return svg + body.toString() + PlanCaption.of(takeoff, unlabelled, view.denominator(), height) + "</svg>\n";
  }

  private Svg faces() {
    Svg svg = new Svg();
    int number = 0;
    for (RoofFace face : takeoff.faces()) {
      number++;
      for (Facet facet : face.facets()) {
        StringBuilder path = new StringBuilder();
        for (Region.Ring ring : facet.area().rings()) {
          path.append('M').append(Svg.points(ring.points().stream().map(p -> view.paper(facet.plane().at(p.u(), p.v()))).toList()))
              .append("Z ");
        }
        svg.empty("path", "class", number % 2 == 0 ? "face face-2" : "face", "d", path.toString().strip());
      }
      for (Seam seam : takeoff.quantities().layout().face(face.id()).seams()) {
        seam.stretches().forEach(s -> svg.line("seam", view.paper(s.low()), view.paper(s.high())));
      }
    }
    return svg;
  }

  private Svg lines() {
    Svg svg = new Svg();
    for (KindedJunction j : takeoff.junctions()) {
      List<Vec2> path = j.junction().path().stream().map(view::paper).toList();
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
    Vec2 at = view.paper(facet.plane().at(inside.u(), inside.v()));
    boolean level = face.slopeDegrees() < LEVEL_DEGREES;
    String words = face.id() + " · " + (level ? "level"
        : MeasureFormat.fixed(face.slopeDegrees(), 1) + "° · " + MeasureFormat.plain(face.risePer12(), 2) + ":12");
    double azimuth = Math.toRadians(face.fallAzimuthDegrees());
    Vec2 down = new Vec2(Math.sin(azimuth), -Math.cos(azimuth));
    // Distances in the face shrink along the fall when they are projected; the cosine keeps the arrow inside.
    double room = facet.area().boundaryDistance(inside) * 1000 / view.denominator() * facet.plane().normal().z();
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
    String name = shortId(junction.id()) + (overridden.contains(junction.id()) ? OVERRIDDEN : "");
    String words = name + " · " + length;
    int longest = 1;
    for (int i = 2; i < junction.path().size(); i++) {
      longest = paperLength(junction, i) > paperLength(junction, longest) ? i : longest;
    }
    Vec2 a = view.paper(junction.path().get(longest - 1));
    Vec2 b = view.paper(junction.path().get(longest));
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
    return view.paper(junction.path().get(i - 1)).distance(view.paper(junction.path().get(i)));
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
}
