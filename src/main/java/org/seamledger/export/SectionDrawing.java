package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Fastening;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.export.section.SectionCut;
import org.seamledger.export.section.SectionFamilies;
import org.seamledger.export.section.SectionScene;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.export.wording.OverrideText;
import org.seamledger.export.wording.ScopeText;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.takeoff.Takeoff;

/**
 * A section square to a junction's line, through its detail, to scale, as SVG. Every number comes from the roof system in force and the
 * model; what is drawn is what the detail has.
 */
public final class SectionDrawing {

  private static final double[] SCALES = {1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20, 50};
  /** Paper for the section itself, millimetres. */
  private static final Vec2 MIDDLE = new Vec2(210, 126);
  private static final double ROOM_WIDTH = 226;
  private static final double ROOM_HEIGHT = 172;
  private static final double LEFT_LABELS = 12;
  private static final double RIGHT_LABELS = 334;
  private static final double LABEL_TOP = 36;
  private static final double LABEL_BOTTOM = 222;
  private static final double LINE = 3.6;
  private static final int COLUMNS = 42;
  /** Room between sheets that touch, millimetres on paper. */
  private static final double GAP = 0.75;

  private static final String STYLE = """
      .metal { fill: none; stroke: #14202b; stroke-width: 0.75; stroke-linejoin: round; stroke-linecap: round; }
      .vented { stroke-dasharray: 1.6 1.3; }
      .panel { fill: none; stroke: #2f5d86; stroke-width: 0.55; stroke-linejoin: round; }
      .seam { fill: none; stroke: #2f5d86; stroke-width: 0.3; stroke-dasharray: 2.4 1.2; }
      .deck { fill: url(#ground); stroke: #9a9182; stroke-width: 0.2; }
      .wall { fill: url(#masonry); stroke: none; }
      .furring { fill: url(#wood); stroke: #9a9182; stroke-width: 0.2; }
      .slot { fill: #ffffff; stroke: #6f6a60; stroke-width: 0.25; }
      .edge { stroke: #6f6a60; stroke-width: 0.35; fill: none; }
      .pipe { fill: #f1f3f5; fill-opacity: 0.85; stroke: #55606a; stroke-width: 0.4; }
      .axis { fill: none; stroke: #55606a; stroke-width: 0.18; stroke-dasharray: 5 1 1 1; }
      .break { fill: none; stroke: #55606a; stroke-width: 0.2; }
      .tape { fill: url(#tape); stroke: #8f3a08; stroke-width: 0.25; }
      .soft { fill: url(#soft); stroke: #05563f; stroke-width: 0.25; }
      .bead { fill: url(#bead); stroke: #3d2f86; stroke-width: 0.25; }
      .exposed { fill: none; stroke: #3d2f86; stroke-width: 0.35; stroke-dasharray: 0.9 0.7; }
      .shank { fill: none; stroke: #14202b; stroke-width: 0.5; }
      .screw-head { fill: #14202b; }
      .leader { fill: none; stroke: #55606a; stroke-width: 0.16; }
      .dot { fill: #55606a; }
      .dim { fill: none; stroke: #14202b; stroke-width: 0.16; }
      .dim-text { font-size: 2.5px; }
      .label { font-size: 2.8px; }
      .long { font-size: 4.2px; }
      .mark { fill: none; stroke: #8f3a08; stroke-width: 0.5; }
      .mark-text { font-size: 2.9px; font-weight: 600; fill: #8f3a08; }
      """;

  /** A label's lines and the place in the section that it points to. */
  private record Pointed(List<String> words, Vec2 at) {
  }

  private final Takeoff takeoff;
  private final DetailedJunction detailed;
  private final Detail detail;
  private final RoofSystem system;
  private SectionScene scene;
  private double denominator;
  private Vec2 centre;
  private final Svg svg = new Svg();
  private final List<Pointed> labels = new ArrayList<>();
  private final List<String> unseen = new ArrayList<>();

  private SectionDrawing(Takeoff takeoff, DetailedJunction detailed) {
    this.takeoff = takeoff;
    this.detailed = detailed;
    this.detail = detailed.detail();
    this.system = takeoff.system();
  }

  /**
   * The drawing as SVG text; the same takeoff gives the same text.
   *
   * @throws IllegalArgumentException where there is no junction of that id
   */
  public static String svg(Takeoff takeoff, String junctionId) {
    DetailedJunction found = takeoff.detailed().stream().filter(j -> j.junction().junction().id().equals(junctionId)).findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no junction has the id " + junctionId));
    return new SectionDrawing(takeoff, found).drawn();
  }

  /** Writes the drawing as UTF-8 and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, String junctionId, OutputStream out) throws IOException {
    out.write(svg(takeoff, junctionId).getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private String drawn() {
    compose();
    String id = detailed.junction().junction().id();
    String title = "Section at " + id + ": " + detail.title();
    Svg sheet = Sheet.begin(Sheet.HEIGHT, denominator, title,
        "Section square to the line of junction " + id + ", " + detailed.junction().type().label(), STYLE);
    hatches(sheet);
    svg.open("g", "class", "cut", "data-view", view());
    ground();
    seals();
    fastenings();
    metals();
    scene.labels().forEach(l -> labels.add(new Pointed(Sheet.wrapped(l.words(), COLUMNS), l.at())));
    scene.dimensions().forEach(this::dimension);
    scene.notes().forEach(n -> svg.turned("halo", paper(n.at()), n.degrees(), n.words()));
    leaders();
    svg.close("g");
    titleBlock(id);
    legend();
    return sheet.toString() + svg + "</svg>\n";
  }

  /** The greatest scale at which the section has room; sheets that touch are drawn apart by the same width on paper at every scale. */
  private void compose() {
    SectionCut cut = SectionCut.of(takeoff, detailed);
    for (double n : SCALES) {
      denominator = n;
      scene = SectionFamilies.compose(system, detailed, cut, GAP * n);
      List<Vec2> all = scene.shapes().stream().flatMap(s -> s.points().stream()).toList();
      double minX = all.stream().mapToDouble(Vec2::u).min().orElse(0);
      double maxX = all.stream().mapToDouble(Vec2::u).max().orElse(0);
      double minY = all.stream().mapToDouble(Vec2::v).min().orElse(0);
      double maxY = all.stream().mapToDouble(Vec2::v).max().orElse(0);
      centre = new Vec2((minX + maxX) / 2, (minY + maxY) / 2);
      if (maxX - minX <= ROOM_WIDTH * n && maxY - minY <= ROOM_HEIGHT * n) {
        return;
      }
    }
  }

  /** Where on the sheet the section itself lies: left, top, width, height. */
  private String view() {
    List<Vec2> all = scene.shapes().stream().flatMap(s -> s.points().stream()).map(this::paper).toList();
    double left = all.stream().mapToDouble(Vec2::u).min().orElse(0);
    double top = all.stream().mapToDouble(Vec2::v).min().orElse(0);
    double right = all.stream().mapToDouble(Vec2::u).max().orElse(Sheet.WIDTH);
    double bottom = all.stream().mapToDouble(Vec2::v).max().orElse(Sheet.HEIGHT);
    return Svg.number(left) + " " + Svg.number(top) + " " + Svg.number(right - left) + " " + Svg.number(bottom - top);
  }

  private Vec2 paper(Vec2 p) {
    return new Vec2(MIDDLE.u() + (p.u() - centre.u()) / denominator, MIDDLE.v() - (p.v() - centre.v()) / denominator);
  }

  private List<Vec2> paper(List<Vec2> points) {
    return points.stream().map(this::paper).toList();
  }

  private static void hatches(Svg sheet) {
    sheet.open("defs");
    sheet.hatch("ground", 3, 45, "#cfc8ba", "#faf8f4", "M0 1.5H3");
    sheet.hatch("masonry", 4, -45, "#cdd2d6", "#fafbfb", "M0 1H4", "M0 2.2H4");
    sheet.hatch("wood", 2.4, 20, "#dccfb4", "#fdfaf2", "M0 1.2H2.4");
    sheet.hatch("tape", 0.9, 45, "#8f3a08", "#f6c9a4", "M0 0.45H0.9");
    sheet.hatch("soft", 0.9, 0, "#05563f", "#b5e3d2", "M0 0.45H0.9", "M0.45 0V0.9");
    sheet.hatch("bead", 0.7, 90, "#3d2f86", "#cfc8f2", "M0 0.35H0.7");
    sheet.close("defs");
  }

  private void ground() {
    for (SectionScene.Shape s : scene.shapes()) {
      if (s.area()) {
        svg.polygon(s.type(), paper(s.points()));
      }
    }
    for (SectionScene.Shape s : scene.shapes()) {
      if (!s.area() && !s.type().startsWith("metal")) {
        svg.polyline(s.type(), paper(s.points()));
      }
    }
  }

  private void metals() {
    for (SectionScene.Shape s : scene.shapes()) {
      if (!s.area() && s.type().startsWith("metal")) {
        svg.polyline(s.type(), paper(s.points()));
      }
    }
    for (MetalPart part : detail.metal()) {
      String girth = part.run() == Run.ONCE ? ", made to measure"
          : ", girth " + both(part.girthM() > 0 ? part.girthM() : system.flashing().girth().value());
      List<Vec2> drawn = scene.parts().get(part.id());
      if (drawn == null) {
        unseen.add(part.part() + girth);
      } else {
        label(part.part() + girth, pointAlong(drawn, 0.5));
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

  private void label(String words, Vec2 at) {
    labels.add(new Pointed(Sheet.wrapped(words, COLUMNS), at));
  }

  // ---- seals and fasteners

  private void seals() {
    for (Seal seal : detail.seals()) {
      List<List<List<Vec2>>> places = seal.run() == Run.PER_LAP ? lapPlaces(seal) : scene.sealPlaces().getOrDefault(seal.id(), List.of());
      if (places.isEmpty()) {
        unseen.add(words(seal));
        continue;
      }
      String type = switch (seal.form()) {
        case TAPE -> "tape";
        case IN_SEAM -> "soft";
        case BEAD -> "bead";
      };
      Vec2 first = null;
      for (List<List<Vec2>> face : places) {
        for (List<Vec2> place : face.subList(0, Math.min(seal.lines(), face.size()))) {
          svg.polygon(type, paper(place));
          Vec2 middle = middle(place);
          if (seal.exposure() == Seal.Exposure.EXPOSED) {
            Vec2 c = paper(middle);
            svg.empty("circle", "class", "exposed", "cx", Svg.number(c.u()), "cy", Svg.number(c.v()), "r", "4");
          }
          first = first == null || isBetter(seal, middle, first) ? middle : first;
        }
      }
      label(words(seal), first);
    }
  }

  /** Of the places on several faces, every second kind of seal points to the right one, so that labels share both sides of the sheet. */
  private boolean isBetter(Seal seal, Vec2 place, Vec2 than) {
    return detail.seals().indexOf(seal) % 2 == 0 ? place.u() < than.u() - 1e-6 : place.u() > than.u() + 1e-6;
  }

  /** What lies in a part's laps lies beyond the cut: shown on the part, where a lap would be. */
  private List<List<List<Vec2>>> lapPlaces(Seal seal) {
    List<Vec2> part = scene.parts().get(seal.part());
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
    Vec2 from = a.plus(along.times(a.distance(b) * 0.3)).plus(up.times(scene.gap() * 0.8));
    Vec2 to = a.plus(along.times(a.distance(b) * 0.5)).plus(up.times(scene.gap() * 0.8));
    places.add(List.of(from, to, to.plus(up.times(scene.gap() * 1.2)), from.plus(up.times(scene.gap() * 1.2))));
    return List.of(places);
  }

  private String words(Seal seal) {
    String lines = seal.lines() > 1 ? ", " + seal.lines() + " lines" : "";
    String role = ", " + seal.role().word() + (seal.exposure() == Seal.Exposure.EXPOSED ? ", EXPOSED" : "");
    return switch (seal.form()) {
      case TAPE -> "tape " + system.tape().thickness() + " × " + system.tape().width() + " " + seal.place() + lines + role;
      case IN_SEAM -> "non-curing sealant " + seal.place() + lines + role + (seal.run() == Run.PER_LAP ? " (at laps, beyond the cut)" : "");
      case BEAD -> "bead " + size(seal) + " " + seal.place() + lines + role;
    };
  }

  private String size(Seal seal) {
    return switch (seal.size()) {
      case "bead.receiverSize" -> system.bead().receiverSize().toString();
      case "bead.clampSize" -> system.bead().clampSize().toString();
      default -> system.bead().size().toString();
    };
  }

  private static Vec2 middle(List<Vec2> points) {
    Vec2 sum = new Vec2(0, 0);
    for (Vec2 p : points) {
      sum = sum.plus(p);
    }
    return sum.times(1.0 / points.size());
  }

  private void fastenings() {
    for (Fastening f : detail.fastenings()) {
      String words =
          "fasteners, " + f.place() + ": spacing at most " + system.spacing(f.spacing()) + (f.throughTape() ? ", through the tape" : "");
      List<SectionScene.Screw> screws = scene.screwPlaces().getOrDefault(f.id(), List.of());
      if (screws.isEmpty()) {
        unseen.add(words);
        continue;
      }
      screws.forEach(this::screw);
      SectionScene.Screw shown =
          screws.stream().max(Comparator.comparingDouble(s -> detail.fastenings().indexOf(f) % 2 == 0 ? s.head().u() : -s.head().u()))
              .orElseThrow();
      label(words, shown.head());
    }
  }

  private void screw(SectionScene.Screw screw) {
    Vec2 head = paper(screw.head());
    Vec2 tip = paper(screw.point());
    Vec2 along = tip.minus(head).times(1 / Math.max(1e-9, head.distance(tip)));
    Vec2 side = along.left();
    Vec2 top = head.minus(along.times(1.5));
    svg.line("axis", top.minus(along.times(3)), tip.plus(along.times(2.5)));
    svg.line("shank", head, tip);
    svg.polygon("screw-head",
        List.of(head.plus(side.times(1.5)), head.minus(side.times(1.5)), top.minus(side.times(0.8)), top.plus(side.times(0.8))));
  }

  // ---- words

  private void dimension(SectionScene.Dimension d) {
    Vec2 a = paper(d.from());
    Vec2 b = paper(d.to());
    Vec2 from = paper(d.from().plus(d.offset()));
    Vec2 to = paper(d.to().plus(d.offset()));
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

  /** Labels in two columns beside the section, in the order of the places they point to, so that leaders don't cross. */
  private void leaders() {
    List<Pointed> left = new ArrayList<>();
    List<Pointed> right = new ArrayList<>();
    labels.sort(Comparator.comparingDouble(l -> paper(l.at).u()));
    List<Pointed> seen = new ArrayList<>();
    for (Pointed l : labels) {
      if (seen.stream().noneMatch(s -> s.words.equals(l.words))) {
        seen.add(l);
      }
    }
    int half = seen.stream().mapToInt(s -> s.words.size() + 1).sum() / 2;
    int filled = 0;
    for (Pointed l : seen) {
      (filled < half ? left : right).add(l);
      filled += l.words.size() + 1;
    }
    column(left, LEFT_LABELS, true);
    column(right, RIGHT_LABELS, false);
  }

  private void column(List<Pointed> column, double x, boolean left) {
    column.sort(Comparator.comparingDouble(l -> paper(l.at).v()));
    double total = column.stream().mapToDouble(SectionDrawing::height).sum();
    double spare = Math.max(0, LABEL_BOTTOM - LABEL_TOP - total);
    double y = LABEL_TOP;
    for (Pointed l : column) {
      double rest = total;
      double wanted = paper(l.at).v() - height(l) / 2;
      double slack = Math.min(spare, Math.max(0, wanted - y));
      y += slack;
      spare -= slack;
      total = rest - height(l);
      pointed(l, x, y, left);
      y += height(l);
    }
  }

  private static double height(Pointed l) {
    return l.words.size() * LINE + 2.4;
  }

  private void pointed(Pointed l, double x, double y, boolean left) {
    svg.open("g", "class", "pointed");
    double widest = l.words.stream().mapToInt(String::length).max().orElse(0) * 1.58;
    for (int i = 0; i < l.words.size(); i++) {
      svg.text("label", new Vec2(x, y + LINE * (i + 1)), l.words.get(i));
    }
    double level = y + LINE * 0.72;
    Vec2 at = paper(l.at);
    Vec2 start = new Vec2(left ? x + Math.min(widest, l.words.get(0).length() * 1.58) + 1 : x - 1, level);
    Vec2 elbow = new Vec2(left ? Math.max(start.u(), x + 68) + 2 : x - 4, level);
    svg.polyline("leader", List.of(start, elbow, at));
    svg.empty("circle", "class", "dot", "cx", Svg.number(at.u()), "cy", Svg.number(at.v()), "r", "0.5");
    svg.close("g");
  }

  private void titleBlock(String id) {
    List<String> title = Sheet.wrapped(detail.title(), 150);
    svg.text(title.get(0).length() > 100 ? "title long" : "title", new Vec2(12, 15), title.get(0) + (title.size() > 1 ? " …" : ""));
    String elements = ElementNames.of(takeoff, detailed.junction().junction().elements());
    svg.text("subtitle", new Vec2(12, 21.5),
        "Junction " + id + " · " + detailed.junction().type().label() + " · "
            + MeasureFormat.formatBoth(detailed.junction().junction().lengthM())
            + " · " + elements + " · " + Sheet.models(takeoff));
    svg.text("subtitle", new Vec2(12, 27), "Detail " + detail.id() + (detailed.decided().isEmpty() ? "" : " · " + OverrideText.MARK) + " · "
        + system.name() + " · cut square to the line, drawn from the numbers applied");
    if (detail.source().contains("common practice")) {
      svg.empty("rect", "class", "mark", "x", "354", "y", "19", "width", "52", "height", "8");
      svg.text("mark-text", new Vec2(358, 24.2), "COMMON PRACTICE");
    }
    svg.line("rule", new Vec2(10, 226), new Vec2(410, 226));
    double y = 268;
    if (!detail.waterPath().isEmpty()) {
      y = Sheet.paragraph(svg, "small", new Vec2(12, y), 3.2, 230,
          "Without any sealant: " + detail.waterPath() + (detail.metalFirst() ? "" : " Here metal alone is not enough."));
    }
    if (!detail.source().isEmpty()) {
      y = Sheet.paragraph(svg, "fine", new Vec2(12, y), 3.2, 230,
          "Source: " + detail.source() + ". Replace it by the panel maker's tested detail.");
    }
    Sheet.paragraph(svg, "fine", new Vec2(12, Math.max(y, 279)), 3.2, 235, ScopeText.SCOPE);
  }

  private void legend() {
    double y = 232;
    svg.text("head", new Vec2(12, y), "Legend");
    String[][] areas = {{"tape", "tape, as laid, before it is pressed by " + system.tape().compression()}, {"soft", "non-curing sealant"},
        {"bead", "bead of gun sealant; a dashed ring marks an exposed one"}, {"deck", "deck, substrate"}, {"wall", "wall, curb, fascia"}};
    for (int i = 0; i < areas.length; i++) {
      double top = y + 3 + i * 5.2;
      svg.empty("rect", "class", areas[i][0], "x", "12", "y", Svg.number(top), "width", "10", "height", "3.6");
      svg.text("small", new Vec2(25, top + 2.7), areas[i][1]);
    }
    String[][] lines = {{"metal", "metal of the detail"}, {"panel", "panel"}, {"seam", "top of the seams, beyond the cut"}};
    for (int i = 0; i < lines.length; i++) {
      double top = y + 4.8 + i * 5.2;
      svg.line(lines[i][0], new Vec2(118, top), new Vec2(130, top));
      svg.text("small", new Vec2(133, top + 0.9), lines[i][1]);
    }
    Sheet.paragraph(svg, "fine", new Vec2(118, y + 21), 3.2, 58, "Sheets that touch are drawn apart, sheet thickness is not to scale.");
    Sheet.scaleBars(svg, new Vec2(330, y), denominator);
    if (!unseen.isEmpty()) {
      svg.text("head", new Vec2(206, y), "Also in this detail, not drawn");
      double at = y + 4.5;
      for (String words : unseen) {
        at = Sheet.paragraph(svg, "small", new Vec2(206, at), 3.2, 80, "– " + words);
      }
    }
  }
}
