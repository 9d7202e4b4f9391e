package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.seamledger.detail.Joins;
import org.seamledger.detail.MetalPart;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.Measure;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.RoofSystem;

/** Parts that several families of details share, drawn from the system's numbers. All lengths in millimetres. */
final class SectionParts {

  static final double DECK = 18;
  static final double HEM = 12;
  /** Drips and hems of a cover's edge, as profiles.ttl folds them. */
  static final double EDGES = 22;
  private static final double FASCIA = 22;
  /** Between coping and parapet there is a cleat: so many gaps. */
  private static final double COPING = 2.2;
  /** A wall, as much of it as is shown. */
  private static final double WALL = 60;
  /** From a wall, curb or edge to the turned-up edge of a pan beside it: common practice, no source. */
  static final double EDGE = 8;
  /** Room between a cleat's nose and the fold of the hem over it. */
  private static final double NOSE = 6;
  private static final double SCREW = 32;

  final SectionScene scene;
  final RoofSystem system;
  final double g;
  final double seam;
  final double closure;
  final double flange;
  final double upstand;
  final double tapeWidth;
  private final double tapeThickness;
  private final List<FastenerRow> fasteners;

  SectionParts(SectionScene scene, RoofSystem system, List<FastenerRow> fasteners) {
    this.fasteners = fasteners;
    this.scene = scene;
    this.system = system;
    g = scene.gap();
    seam = mm(system.panel().seamHeight());
    closure = mm(system.closure().height()) + (scene.has("vented-closure") ? mm(system.ridge().opening()) : 0);
    flange = mm(system.closure().fasteningFlange());
    upstand = mm(system.walls().upstand());
    tapeWidth = mm(system.tape().width());
    tapeThickness = mm(system.tape().thickness());
  }

  static double mm(Measure m) {
    return m.value() * 1000;
  }

  /** Girth of a part of the detail; the system's where the detail states none. */
  double girth(String part) {
    double stated =
        scene.detail().metal().stream().filter(m -> m.id().equals(part)).mapToDouble(MetalPart::girthM).findFirst().orElse(0) * 1000;
    return stated > 0 ? stated : mm(system.flashing().girth());
  }

  /** What lies between two sheets at a place: tape where the detail has some, else a gap that only the drawing needs. */
  double bed(String place) {
    return scene.hasTape(place) ? tapeThickness : g;
  }

  /** Tape in a slope's frame around {@code s}, its foot at {@code h}. */
  List<Vec2> tape(SlopeLine on, double s, double h) {
    return on.box(s - tapeWidth / 2, s + tapeWidth / 2, h, h + tapeThickness);
  }

  static List<Vec2> round(Vec2 centre, double diameter) {
    List<Vec2> points = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      double a = Math.PI * i / 10;
      points.add(centre.plus(new Vec2(Math.cos(a), Math.sin(a)).times(diameter / 2)));
    }
    return points;
  }

  /** A fastener into the deck, or, where the detail joins the panel with metal alone, no farther than the pan. */
  void screw(String place, SlopeLine on, double s, double h) {
    boolean deck = fasteners.stream().filter(r -> r.id().equals(place))
        .anyMatch(r -> r.joins() == Joins.PANEL_DECK || r.joins() == Joins.METAL_DECK);
    boolean free = fasteners.stream().anyMatch(r -> r.id().equals(place) && r.joins() == Joins.PANEL_METAL);
    scene.screwPlace(place, on.at(s, h), on.at(s, free && !deck ? -1.4 * g : h - SCREW));
  }

  // ---- ground, panel, seam

  /** Where a face's parallel {@code h} above it is right above or below x. */
  static Vec2 plumb(double x, SlopeLine on, double h) {
    return new SlopeLine(point(x, 0), 90, 1).meet(0, on, h);
  }

  /** Deck under a face, its top {@code below} under the panel, cut plumb at the line. */
  void plumbDeck(SlopeLine on, double to, double below) {
    Vec2 top = plumb(0, on, -below);
    scene.area("deck", List.of(top, on.at(to, -below), on.at(to, -below - DECK), plumb(0, on, -below - DECK)));
    underlayment(on, on.s(top), to, below);
  }

  /** A board under the edge of a deck whose top is {@code below} under the panel. */
  void fascia(SlopeLine on, double below, double drop) {
    scene.area("wall", List.of(plumb(0, on, -below - DECK), plumb(FASCIA, on, -below - DECK), point(FASCIA, drop), point(0, drop)));
    scene.label("fascia", point(FASCIA * 0.55, drop + 14));
  }

  // ---- hems

  /** The rest of a leg from its last bend to an edge that is closed by a hem on the side of {@code inside}. */
  List<Vec2> hem(Vec2 bend, Vec2 edge, Vec2 inside) {
    return hem(bend, edge, inside, 0.9 * g);
  }

  private List<Vec2> hem(Vec2 bend, Vec2 edge, Vec2 inside, double apart) {
    Vec2 along = edge.minus(bend).times(1 / Math.max(1e-9, edge.distance(bend)));
    Vec2 n = along.left().dot(inside) < 0 ? along.left().times(-apart) : along.left().times(apart);
    return List.of(bend, edge, edge.plus(n), edge.plus(n).minus(along.times(HEM - 2)));
  }

  /**
   * The foot of a face at x, kicked out and hooked with its hem behind the kick of a cleat on what stands behind it.
   *
   * @param cleat id of the cleat; drawn where the detail has it
   * @param behind x of the cleat
   * @param high where the cleat begins
   * @return the foot's points from its bend to the end of its hem
   */
  List<Vec2> hooked(String cleat, Vec2 bend, double behind, double high) {
    double out = Math.signum(bend.u() - behind);
    Vec2 edge = bend.plus(point(9 * out, -9));
    Vec2 along = edge.minus(bend).times(1 / edge.distance(bend));
    Vec2 n = point(-out * Math.sqrt(0.5), -Math.sqrt(0.5));
    if (scene.has(cleat)) {
      Vec2 kick = bend.plus(n.times(g));
      double back = (kick.u() - behind) / along.u();
      scene.metal(cleat, List.of(point(behind, high), kick.minus(along.times(back)), edge.plus(n.times(g)).minus(along.times(1.5))));
    }
    return hem(bend, edge, n, scene.has(cleat) ? 2 * g : 0.9 * g);
  }

  private void underlayment(SlopeLine on, double from, double to, double below) {
    scene.facePart("underlayment", on.at(from, -below + g * 0.35), on.at(to, -below + g * 0.35));
    double under = -below + g * 0.35;
    scene.faceLabel("underlayment", "underlayment on the deck", on.at(to - 24, under), on.at(to - 80, under), on.at(to - 120, under),
        on.at(to - 8, under));
  }

  /** Deck under a face, its top {@code below} under the panel. */
  void deck(SlopeLine on, double from, double to, double below) {
    scene.area("deck", List.of(on.at(from, -below), on.at(to, -below), on.at(to, -below - DECK), on.at(from, -below - DECK)));
    underlayment(on, from, to, below);
  }

  /** Decks of two faces, mitred where they meet. */
  void decks(SlopeLine left, SlopeLine right, double to, double below) {
    Vec2 top = left.meet(-below, right, -below);
    Vec2 foot = left.meet(-below - DECK, right, -below - DECK);
    for (SlopeLine on : List.of(left, right)) {
      scene.area("deck", List.of(top, on.at(to, -below), on.at(to, -below - DECK), foot));
      underlayment(on, on.s(top), to, below);
    }
  }

  /** A panel from its end to where the section breaks off, its seam dashed behind it, its slope beneath. */
  void panel(SlopeLine on, double from, double to, String slope) {
    panel(on, from, to, 0, slope);
  }

  /** The same, its head turned up so far. */
  void panel(SlopeLine on, double from, double to, double turnedUp, String slope) {
    scene.line("panel", on.at(to, 0), on.at(from, 0), on.at(from, turnedUp));
    clip(on, to - 60);
    scene.line("seam", on.at(from, 0), on.at(from, seam), on.at(to, seam));
    seamHeight(on, to);
    scene.label("panel, " + system.panel().metal().word() + ", " + stated(system.panel().thickness()),
        on.at(from * 0.25 + to * 0.75, 0), on.at(from * 0.1 + to * 0.9, 0), on.at(from * 0.4 + to * 0.6, 0));
    breaks(on, to, slope);
  }

  /** A clip in the seam beyond the cut. */
  private void clip(SlopeLine on, double s) {
    scene.facePart("clip", on.at(s + 16, -g), on.at(s, -g), on.at(s, seam - 4), on.at(s + 6, seam - 4));
    scene.faceLabel("clip", "clip in the seam, beyond the cut, screwed to the deck", on.at(s, seam * 0.5), on.at(s, seam * 0.8),
        on.at(s, seam * 0.2));
  }

  /** A panel whose seams run along the junction: one is cut. */
  void panelAlongSeams(SlopeLine on, double from, double to, double seamAt, String slope) {
    scene.line("panel", on.at(from, 0), on.at(seamAt, 0), on.at(seamAt, seam), on.at(seamAt + 6, seam), on.at(seamAt + 6, seam - 8));
    scene.line("panel", on.at(to, 0), on.at(seamAt + 2 * g, 0), on.at(seamAt + 2 * g, seam - 2 * g));
    scene.facePart("clip", on.at(seamAt + g + 18, -g), on.at(seamAt + g, -g), on.at(seamAt + g, seam - 4));
    scene.faceLabel("clip", "clip in the seam, screwed to the deck", on.at(seamAt + g + 18, -g));
    scene.dimension(on.at(seamAt + 22, 0), on.at(seamAt + 22, seam), point(0, 0), "seam height " + stated(system.panel().seamHeight()));
    scene.label("panel with its seam, " + system.panel().metal().word() + ", " + stated(system.panel().thickness()),
        on.at(seamAt, seam * 0.6));
    breaks(on, to, slope);
  }

  private void seamHeight(SlopeLine on, double to) {
    scene.dimension(on.at(to - 14, 0), on.at(to - 14, seam), point(0, 0), "seam height " + stated(system.panel().seamHeight()));
    scene.label("top of the seams beyond the cut", on.at(to - 34, seam), on.at(to - 24, seam), on.at(to - 80, seam));
  }

  private void breaks(SlopeLine on, double to, String slope) {
    scene.line("break", on.at(to, seam + 10), on.at(to, 4), on.at(to + 4, 0), on.at(to - 4, -5), on.at(to, -9), on.at(to, -DECK - 18));
    scene.note(on.at(to - 48, -DECK - 24 - 8 * g), on.degrees() * on.direction(), slope);
  }

  static Vec2 point(double x, double y) {
    return new Vec2(x, y);
  }

  // ---- closures between the seams

  /** How far above the panel a cover lies that rests on closures. */
  double coverHeight() {
    return closurePart().isEmpty() ? bed("cap") : bed("closure-foot") + closure + bed("closure-top");
  }

  String closurePart() {
    return scene.part("closure", "vented-closure");
  }

  /**
   * A closure with its foot towards the junction and its top flange away from it, tape under the foot and on the top flange, beads before
   * and behind.
   *
   * @param web where it stands
   */
  void closure(SlopeLine on, double web) {
    double foot = bed("closure-foot");
    double top = foot + closure;
    double bead = mm(system.bead().size());
    scene.metal(closurePart(), List.of(on.at(web - flange, foot), on.at(web, foot), on.at(web, top), on.at(web + flange, top)));
    scene.sealPlace("closure-foot", List.of(tape(on, web - flange / 2, 0)));
    scene.sealPlace("closure-top", List.of(tape(on, web + flange / 2, top)));
    scene.sealPlace("closure-beads", List.of(round(on.at(web - flange - bead / 2 - g / 2, bead / 2), bead),
        round(on.at(web - flange / 2 + 7, foot + bead / 2 + g / 2), bead)));
    if (scene.has("baffle")) {
      double x = web + flange * 0.6;
      scene.metal("baffle",
          List.of(on.at(x - 10, top - g), on.at(x, top - g), on.at(x, top - closure * 0.45), on.at(x + 5, top - closure * 0.5)));
      scene.screwPlace("baffle", on.at(x - 5, top), on.at(x - 5, top - 9));
    }
    backUp(on, web - flange - 8, web + 4);
    screw("closure", on, web - flange / 2, foot);
    scene.dimension(on.at(web - flange, foot), on.at(web, foot), on.up().times(-DECK - 8 * g),
        "fastening flange " + stated(system.closure().fasteningFlange()));
    double solid = foot + mm(system.closure().height());
    Vec2 beside = on.along().times(flange + 16 + HEM);
    scene.dimension(on.at(web, foot), on.at(web, solid), beside, "closure " + stated(system.closure().height()));
    if (solid < top) {
      scene.dimension(on.at(web, solid), on.at(web, top), beside, "openings " + stated(system.ridge().opening()));
    }
  }

  /** The plate under a pan that backs what is fastened to the pan alone. */
  void backUp(SlopeLine on, double from, double to) {
    if (scene.has("back-up")) {
      scene.metal("back-up", List.of(on.at(from, -0.9 * g), on.at(to, -0.9 * g)));
    }
  }

  /** The edge of a cover over closures: drip and hem; gives its points from the edge inwards. */
  List<Vec2> coverEdge(SlopeLine on, double edge, double h) {
    List<Vec2> points = new ArrayList<>(hem(on.at(edge, h), on.at(edge, h - HEM), on.along().times(-1)));
    Collections.reverse(points);
    return points;
  }

  /** Closure and covering edge of a cap or flashing; gives the edge's points. */
  List<Vec2> closedEdge(SlopeLine on, double edge, String slope, double to) {
    return closedEdge(on, edge, slope, to, Double.POSITIVE_INFINITY);
  }

  /** @param head where the pan's head turns up at the latest, so that it runs to a wall */
  List<Vec2> closedEdge(SlopeLine on, double edge, String slope, double to, double head) {
    double h = coverHeight();
    if (closurePart().isEmpty()) {
      scene.sealPlace("cap", List.of(tape(on, edge - 6 - tapeWidth / 2, 0), tape(on, edge - 12 - tapeWidth * 1.5, 0)));
      screw("cover", on, edge - 6 - tapeWidth / 2, h);
      panel(on, Math.min(edge - 60, 20), to, slope);
      return List.of(on.at(edge, h));
    }
    double web = edge - 5 - 1.2 * g - flange;
    closure(on, web);
    scene.screwPlace("cover", on.at(web + flange / 2, h), on.at(web + flange / 2, h - bed("closure-top") - 12));
    panel(on, Math.min(head, Math.max(8, web - flange - 24)), to, seam, slope);
    return coverEdge(on, edge, h);
  }

  /** How far a pan's head stops short of the line: the roof system's setback, at least {@code least}. */
  double setback(double least) {
    return Math.max(4, Math.max(least, mm(system.purchase().cuts().headSetback())));
  }

  void setbackDimension(SlopeLine on, double head) {
    scene.dimension(on.at(0, 0), on.at(head, 0), on.up().times(-DECK - 30), "setback " + length(head));
  }

  // ---- cleats

  /** How far the sheet under a cleat lies below the panel that hooks over it. */
  double cleatDepth() {
    return bed("cleat") + 2 * g;
  }

  /** An offset cleat, its nose towards the junction, on a sheet; the panel hooks over it. */
  void cleat(String part, SlopeLine on, double nose, double to, String slope) {
    double base = -cleatDepth();
    double flange = base + bed("cleat");
    double bend = nose + 22;
    double rest = Math.max(30, girth(part) - 22 - 4);
    scene.metal(part, List.of(on.at(nose, flange + g), on.at(bend - 4, flange + g), on.at(bend, flange), on.at(bend + rest, flange)));
    double first = bend + 6 + tapeWidth / 2;
    double second = Math.max(first + tapeWidth + 3, bend + rest - tapeWidth / 2 - 4);
    scene.sealPlace("cleat", List.of(tape(on, first, base), tape(on, second, base)));
    boolean two = scene.detail().seals().stream().anyMatch(s -> s.id().equals("cleat") && s.lines() > 1);
    screw("cleat", on, first, flange);
    if (two) {
      scene.label("two lines of tape, screws through the first", on.at(second, flange));
    }
    double hem = Math.max(NOSE + 4, mm(system.purchase().cuts().hem()));
    double fold = nose - NOSE;
    scene.line("panel", on.at(fold + hem, flange - g * 0.2), on.at(fold, flange - g * 0.2), on.at(fold, 0), on.at(to, 0));
    scene.dimension(on.at(fold, 0), on.at(fold + hem, 0), on.up().times(seam + 14), "hem " + stated(system.purchase().cuts().hem()));
    scene.dimension(on.at(nose, base), on.at(fold + hem, base), on.up().times(-DECK - 10 * g), "cleat engaged " + length(hem - NOSE));
    scene.line("seam", on.at(fold, 0), on.at(fold, seam), on.at(to, seam));
    clip(on, to - 60);
    scene.sealPlace("seam-ends", List.of(on.box(nose - 6, nose + 4, 0.5, seam)));
    scene.label("panel, " + system.panel().metal().word() + ", " + stated(system.panel().thickness()) + ", hemmed over the cleat",
        on.at(nose - 6, -g));
    seamHeight(on, to);
    breaks(on, to, slope);
  }

  // ---- walls

  /** A wall left of x = 0. */
  void wall(String words, double low, double high) {
    scene.area("wall", List.of(point(-thickness(), low), point(0, low), point(0, high), point(-thickness(), high)));
    scene.line("edge", point(0, low), point(0, high));
    double tall = high - low;
    double middle = -thickness() / 2;
    scene.label(words, point(-36, low + tall * 0.12), point(middle, low + tall * 0.04), point(middle, low + tall * 0.3));
  }

  /** How much of a wall is shown; of a parapet all, as thick as its coping is folded for. */
  double thickness() {
    return scene.has("coping") ? (girth("coping") - 2 * EDGES) / 2 - 2 * COPING * g : WALL;
  }

  /** The counterflashing over an upstand that ends at {@code top}, in whichever way the detail ends at a wall; gives the wall's height. */
  double counterflashing(double top) {
    if (scene.has("skirt")) {
      return skirt(top);
    }
    return !scene.has("counterflashing") ? top : scene.has("receiver-bar") ? surfaceMounted(top) : reglet(top);
  }

  /** What stands in the roof laps the upturn by its own skirt. */
  private double skirt(double top) {
    double x = 3 * g + 2;
    double down = Math.min(girth("skirt") * 0.5, top * 0.6);
    scene.metal("skirt",
        List.of(point(-58, top + 14 + g), point(x, top + 14 + g), point(x, top + 14 - down), point(x + 6, top + 8 - down)));
    scene.screwPlace("skirt", point(x, top - 14), point(-26, top - 14));
    scene.dimension(point(x, top + 14 - down), point(x, top), point(26, 0), "lap " + length(down - 14));
    return top + 14;
  }

  /** A coping over a parapet whose top is at {@code top}. */
  void coping(double top) {
    double back = -thickness();
    double out = back - COPING * g;
    double in = COPING * g;
    double fall = 8;
    double low = top + 4 * g - (girth("coping") - 2 * EDGES) / 4 + 9;
    double high = low - 9 + girth("coping-cleat") - 13;
    List<Vec2> line = new ArrayList<>(hooked("coping-cleat", point(out, low), back - g * 0.6, high));
    Collections.reverse(line);
    line.addAll(List.of(point(out, top + 4 * g + fall), point(in, top + 4 * g)));
    line.addAll(hooked("coping-cleat-inner", point(in, low), 1.6 * g, high));
    scene.metal("coping", line);
    scene.metal("splice", List.of(point(out + g, low + 24), point(out + g, top + 3 * g + fall), point(in - g * 0.4, top + 3 * g),
        point(in - g * 0.4, low + 24)));
    scene.screwPlace("coping-cleat", point(1.6 * g, high - 14), point(-30, high - 14));
    scene.screwPlace("coping-cleat", point(back - g * 0.6, high - 14), point(back + 30, high - 14));
    scene.dimension(point(in, low - 9), point(in, top + 4 * g), point(26, 0), "face " + length(top + 4 * g - low + 9));
    String flashing = scene.part("flashing", "pan");
    scene.metal(flashing, List.of(point(g, top), point(g, top + g), point(Math.max(-56, back + 4), top + g + 5)));
  }

  /**
   * A zee on tape on the pan beside a turned-up edge, what hooks over it open; gives the points of that hook from its free edge on.
   *
   * @param to where the section breaks off
   */
  List<Vec2> zee(SlopeLine on, double to, String slope) {
    double bed = bed("z");
    double lower = Math.max(flange, tapeWidth);
    double web = 20 + lower;
    double top = bed + seam;
    double cover = Math.min(34, Math.max(18, girth("z") - lower - seam - 6));
    scene.metal("z", List.of(on.at(web - lower, bed), on.at(web, bed), on.at(web, top), on.at(web + cover, top)));
    scene.sealPlace("z", List.of(tape(on, web - lower / 2, 0)));
    backUp(on, web - lower - 4, web + 4);
    screw("z", on, web - lower / 2, bed);
    panelAlongSeams(on, EDGE, to, web + 150, slope);
    scene.line("panel", on.at(EDGE, 0), on.at(EDGE, seam));
    return List.of(on.at(web + cover + 1.5 * g - HEM, top - 1.5 * g), on.at(web + cover + 1.5 * g, top - 1.5 * g),
        on.at(web + cover + 1.5 * g, top + g));
  }

  private double reglet(double top) {
    double y = top + 18;
    double slot = 25;
    double down = girth("counterflashing") - slot - 2 * HEM;
    double x = 3 * g + 2;
    double foot = y - down;
    scene.area("slot", List.of(point(-slot - 3, y - 3), point(0, y - 3), point(0, y + 9), point(-slot - 3, y + 9)));
    List<Vec2> line = new ArrayList<>(List.of(point(-slot, y + 5), point(-slot, y), point(2, y), point(x, y - 4)));
    line.addAll(hem(point(x, foot + HEM), point(x + 6, foot + 2), point(-1, 0)));
    scene.metal("counterflashing", line);
    double bead = mm(system.bead().receiverSize());
    scene.sealPlace("reglet",
        List.of(List.of(point(-bead, y + g / 2), point(0, y + g / 2), point(-bead * 0.35, y + 8.5), point(-bead, y + 9))));
    scene.screwPlace("wedges", point(-slot + 9, y + 8), point(-slot + 9, y));
    scene.dimension(point(x, foot), point(x, top), point(26, 0), "lap " + length(top - foot));
    return y + 60;
  }

  private double surfaceMounted(double top) {
    double t = bed("receiver-bar");
    double y = top + 16;
    double bar = girth("receiver-bar") - 22;
    double down = girth("counterflashing") - 2 * HEM - 12;
    double x = t + g;
    double foot = y + 12 - down;
    scene.metal("receiver-bar",
        List.of(point(x + 12, y + bar + 12), point(x, y + bar), point(x, y), point(x + 6, y - 5), point(x + 6, y + 6)));
    SlopeLine face = new SlopeLine(point(g / 2, y), 90, 1);
    double middle = bar - tapeWidth / 2 - 6;
    scene.sealPlace("receiver-bar",
        List.of(List.of(point(g / 2, y + middle - tapeWidth / 2), point(g / 2 + tapeThickness, y + middle - tapeWidth / 2),
            point(g / 2 + tapeThickness, y + middle + tapeWidth / 2), point(g / 2, y + middle + tapeWidth / 2))));
    scene.screwPlace("receiver-bar", point(x, y + middle), point(x - 42, y + middle));
    double bead = mm(system.bead().receiverSize());
    Vec2 corner = face.start().plus(point(-g / 2, bar));
    scene.sealPlace("bar-lip", List.of(List.of(corner.plus(point(0, 1)), corner.plus(point(x, 1)), corner.plus(point(x + bead * 0.8, bead)),
        corner.plus(point(0, bead + 6)))));
    List<Vec2> line = new ArrayList<>(List.of(point(x + 2 * g, y + 18), point(x + 2 * g, y + 1), point(x + 8 + g, y + 1)));
    line.addAll(hem(point(x + 8 + g, foot + HEM), point(x + 14 + g, foot + 2), point(-1, 0)));
    scene.metal("counterflashing", line);
    scene.dimension(point(x + 8, foot), point(x + 8, top), point(26, 0), "lap " + length(top - foot));
    return y + bar + 60;
  }

  /** An upturn at a wall, dimensioned from what it stands on. */
  void upstandDimension(double from, double top) {
    scene.dimension(point(0, from), point(0, top), point(-76, 0), "upturn " + length(top - from));
  }

  /** A small cleat at the hem of a pan whose edge is at {@code s}, {@code below} under the panel. */
  void panCleat(SlopeLine on, double s, double below) {
    if (scene.has("pan-cleat")) {
      scene.metal("pan-cleat",
          List.of(on.at(s - 9, -below + 1.8 * g), on.at(s + 1.2 * g, -below + 1.8 * g), on.at(s + 1.2 * g, -below - 0.3 * g),
              on.at(s + 24, -below - 0.3 * g)));
      scene.screwPlace("pan-cleat", on.at(s + 15, -below), on.at(s + 15, -below - SCREW));
    }
  }

  /** A length in the chosen units, from millimetres. */
  String length(double mm) {
    return scene.units().small(mm / 1000);
  }

  /** A length that the system states, in the chosen units. */
  String stated(Measure length) {
    return scene.units().stated(length);
  }
}
