package org.seamledger.export;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Vec2;
import org.seamledger.junction.Facts;
import org.seamledger.measure.Format;
import org.seamledger.quantity.RoofSystem;

/** One composition a family of kinds: where faces, walls and parts stand to each other. Lengths in millimetres. */
final class SectionFamilies {

  private static final Vec2 NONE = new Vec2(0, 0);
  /** A cover's run to the crossing of two slopes, where nearly parallel slopes would cross too far away. */
  private static final double FARTHEST = 130;

  private final SectionScene scene;
  private final SectionParts parts;
  private final RoofSystem system;
  private final DetailedJunction detailed;
  private final SectionCut cut;
  private final double g;

  private SectionFamilies(SectionScene scene, RoofSystem system, DetailedJunction detailed, SectionCut cut) {
    this.scene = scene;
    this.parts = new SectionParts(scene, system);
    this.system = system;
    this.detailed = detailed;
    this.cut = cut;
    this.g = scene.gap();
  }

  /** Composes the scene of a junction, with drawn sheets kept {@code gap} apart. */
  static SectionScene compose(RoofSystem system, DetailedJunction detailed, SectionCut cut, double gap) {
    SectionScene scene = new SectionScene(detailed.detail(), gap);
    new SectionFamilies(scene, system, detailed, cut).compose();
    return scene;
  }

  private void compose() {
    boolean pair = cut.faces().size() > 1;
    if (detailed.detail().metal().isEmpty()) {
      bare();
      return;
    }
    switch (detailed.junction().type().section()) {
      case RIDGE -> ridge(pair);
      case VALLEY -> valley(pair);
      case GUTTER -> gutter(pair);
      case TRANSITION -> transition(pair);
      case WALL, SIDEWALL -> wall();
      case CURB_UPSLOPE, CURB_SIDE, CURB_DOWNSLOPE -> curb();
      case PIPE -> pipe();
      case RAKE -> rake();
      case EAVE -> eave();
      case HIGH_EDGE -> highEdge();
    }
  }

  private double rise(int face) {
    return cut.faces().isEmpty() ? 0 : cut.faces().get(Math.min(face, cut.faces().size() - 1)).riseDegrees();
  }

  private String slope(int face) {
    if (cut.faces().isEmpty()) {
      return "";
    }
    SectionCut.Face f = cut.faces().get(Math.min(face, cut.faces().size() - 1));
    return f.id() + ", " + Format.formatSlope(f.slopeDegrees());
  }

  private SlopeLine left(int face) {
    return new SlopeLine(NONE, rise(face), -1);
  }

  private SlopeLine right(int face) {
    return new SlopeLine(NONE, rise(face), 1);
  }

  private static Vec2 p(double x, double y) {
    return new Vec2(x, y);
  }

  // ---- two faces

  private void ridge(boolean pair) {
    SlopeLine left = left(0);
    SlopeLine right = right(pair ? 1 : 0);
    String cap = scene.part("cap");
    double cover = parts.coverHeight();
    Vec2 apex = left.meet(cover, right, cover);
    double leg = parts.girth(cap) / 2 - SectionParts.HEM - 5;
    double to = leg + 78;
    List<Vec2> line = new ArrayList<>(parts.closedEdge(left, left.s(apex) + leg, slope(0), to));
    line.add(apex);
    List<Vec2> other = new ArrayList<>(parts.closedEdge(right, right.s(apex) + leg, slope(1), to));
    Collections.reverse(other);
    line.addAll(other);
    scene.metal(cap, line);
    parts.decks(left, right, to, 2 * g);
  }

  private void valley(boolean pair) {
    SlopeLine left = left(0);
    SlopeLine right = right(pair ? 1 : 0);
    String pan = scene.part("pan");
    double below = parts.cleatDepth();
    Vec2 bottom = left.meet(-below, right, -below);
    double leg = parts.girth(pan) / 2 - SectionParts.HEM;
    double to = leg + 70;
    scene.metal(pan, List.of(left.at(leg - 14, -below + g), left.at(leg, -below + g), left.at(leg, -below), bottom, right.at(leg, -below),
        right.at(leg, -below + g), right.at(leg - 14, -below + g)));
    double nose = SectionParts.mm(system.valley().cleatOffset());
    cleatsOnBoth(left, right, nose, to);
    parts.decks(left, right, to, below + g);
    scene.dimension(left.at(0, 0), left.at(nose, 0), left.up().times(66), "cleat at " + system.valley().cleatOffset());
  }

  private void cleatsOnBoth(SlopeLine left, SlopeLine right, double nose, double to) {
    String cleat = scene.part("cleat");
    parts.cleat(cleat, left, nose, to, slope(0));
    parts.cleat(cleat, right, nose, to, slope(1));
  }

  private void gutter(boolean pair) {
    SlopeLine left = left(0);
    SlopeLine right = right(pair ? 1 : 0);
    double nose = SectionParts.mm(system.valley().cleatOffset());
    double below = parts.cleatDepth();
    String lining = scene.part("lining", "pan");
    double rim = nose * 0.72;
    double floor = -90;
    double half = rim * 0.85;
    Vec2 leftRim = left.at(rim, -below);
    Vec2 rightRim = right.at(rim, -below);
    double depth = leftRim.distance(p(-half, floor));
    double flange = parts.girth(lining) / 2 - half - depth - SectionParts.HEM;
    double leg = rim + Math.max(120, flange);
    double to = leg + 70;
    scene.metal(lining, List.of(left.at(leg - 14, -below + g), left.at(leg, -below + g), left.at(leg, -below), leftRim, p(-half, floor), p(half, floor), rightRim,
        right.at(leg, -below), right.at(leg, -below + g), right.at(leg - 14, -below + g)));
    cleatsOnBoth(left, right, nose, to);
    double under = below + g;
    parts.deck(left, rim, to, under);
    parts.deck(right, rim, to, under);
    scene.area("deck", List.of(p(-half - g, floor - g), p(half + g, floor - g), p(half + g, floor - SectionParts.DECK), p(-half - g, floor - SectionParts.DECK)));
    scene.dimension(left.at(0, 0), left.at(nose, 0), left.up().times(66), "cleat at " + system.valley().cleatOffset());
  }

  private void transition(boolean pair) {
    SlopeLine lower = left(0);
    SlopeLine upper = right(pair ? 1 : 0);
    double cover = parts.coverHeight();
    double below = parts.cleatDepth();
    double fold = Math.abs(rise(0) + rise(pair ? 1 : 0));
    double reach = (cover + below) / Math.max(1e-6, Math.sin(Math.toRadians(fold)));
    double furring = 0;
    if (reach > FARTHEST) {
      double kept = fold < 2 ? 0 : FARTHEST * 0.7 * Math.sin(Math.toRadians(fold));
      furring = cover + below - kept;
      upper = upper.lifted(furring);
    }
    Vec2 knee = fold < 2 ? upper.at(0, -below) : lower.meet(cover, upper, -below);
    String flashing = scene.part("flashing");
    double leg = Math.max(parts.girth(flashing) * 0.42, 110);
    double edge = Math.max(lower.s(knee) + leg, 96);
    double behind = parts.girth(flashing) - (edge - lower.s(knee)) - 2 * SectionParts.HEM;
    double end = upper.s(knee) + Math.max(behind, 70);
    double nose = Math.max(upper.s(knee), 0) + 16;
    double to = Math.max(edge, end) + 110;
    List<Vec2> line = new ArrayList<>(parts.closedEdge(lower, edge, slope(0), to));
    line.add(knee);
    line.add(upper.at(Math.max(end, nose + 60), -below));
    scene.metal(flashing, line);
    parts.cleat(scene.part("cleat"), upper, nose, to, slope(1));
    parts.decks(lower, right(pair ? 1 : 0), to, 2 * g);
    parts.deck(upper, Math.min(upper.s(knee), -2), to, below + g);
    if (furring > 0) {
      scene.area("furring", List.of(right(pair ? 1 : 0).at(0, -2 * g), right(pair ? 1 : 0).at(to, -2 * g), upper.at(to, -below - g - SectionParts.DECK),
          upper.at(0, -below - g - SectionParts.DECK)));
      scene.label("furring: the upper deck stands " + SectionParts.length(furring) + " higher, so that the flashing clears the closures",
          upper.at(to * 0.5, -below - SectionParts.DECK));
    }
  }

  // ---- walls and curbs

  private void wall() {
    boolean drains = scene.has("pan");
    double top = parts.upstand;
    double foot = groundAtWall() - 60;
    double high = parts.counterflashing(top);
    parts.wall("wall", foot, high);
    if (drains) {
      backPan(top, "pan", 0);
    } else if (detailed.junction().type().section() == Kind.Section.SIDEWALL) {
      flange(top, scene.part("flashing"));
    } else {
      apron(top, scene.part("flashing"));
    }
    parts.upstandDimension(0, top);
  }

  private double groundAtWall() {
    return Math.min(0, right(0).at(0, -SectionParts.DECK).v());
  }

  private void curb() {
    double measured = detailed.junction().junction().facts().number("upstandM") * 1000;
    double top = measured > 40 ? Math.min(parts.upstand, measured - 10) : parts.upstand;
    double high = Math.max(top + 30, Math.min(top + 80, Double.isNaN(measured) ? top + 80 : measured));
    parts.wall("curb, " + neighbour(), groundAtWall() - 60, high);
    switch (detailed.junction().type().section()) {
      case CURB_UPSLOPE -> backPan(top, scene.part("pan"), cricketHeight(top));
      case CURB_SIDE -> flange(top, scene.part("flashing"));
      default -> apron(top, scene.part("flashing"));
    }
    if (top < parts.upstand) {
      scene.dimension(p(0, 0), p(0, top), p(-76, 0), "upstand " + SectionParts.length(top) + ", the curb allows no more");
    } else {
      parts.upstandDimension(0, top);
    }
  }

  private String neighbour() {
    String word = detailed.junction().junction().facts().word("neighbourClass");
    return word.isEmpty() ? "penetration" : word;
  }

  /** Cover over closures that turns up at a wall. */
  private void apron(double top, String part) {
    SlopeLine on = right(0);
    double cover = parts.coverHeight();
    double x = g;
    Vec2 corner = new SlopeLine(p(x, 0), 90, 1).meet(0, on, cover);
    double leg = Math.max(parts.lip * 2 + 40, parts.girth(part) - (top - corner.v()) - SectionParts.HEM - 5);
    double edge = on.s(corner) + leg;
    double to = edge + 84;
    List<Vec2> line = new ArrayList<>(parts.closedEdge(on, edge, slope(0), to));
    line.add(corner);
    line.add(p(x, top));
    scene.metal(part, line);
    parts.deck(on, 0, to, 2 * g, p(0, on.at(0, -SectionParts.DECK - 2 * g).v()));
  }

  /** Flange on the panel along the fall that turns up at a wall, on tape under its edges. */
  private void flange(double top, String part) {
    SlopeLine on = new SlopeLine(NONE, rise(0), 1);
    double h = parts.bed("flange");
    double movement = SectionParts.mm(system.panel().movementGap());
    double leg = Math.max(60, parts.girth(part) - top - 6);
    Vec2 corner = new SlopeLine(p(g, 0), 90, 1).meet(0, on, h);
    double to = leg + 190;
    scene.metal(part, List.of(on.at(on.s(corner) + leg, h - g / 2), on.at(on.s(corner) + leg - 6, h), corner, p(g, top)));
    double outer = on.s(corner) + leg - 8 - parts.tapeWidth / 2;
    scene.sealPlace("flange", List.of(parts.tape(on, outer, 0), parts.tape(on, Math.max(movement + parts.tapeWidth, outer - 2.4 * parts.tapeWidth), 0)));
    scene.screwPlace("flange", on.at(outer, h), on.at(outer, h - 30));
    parts.panelAlongSeams(on, movement, to, Math.max(leg + 60, 120), slope(0));
    scene.dimension(on.at(0, 0), on.at(movement, 0), on.up().times(-DROP), "gap " + system.panel().movementGap());
    parts.deck(on, 0, to, 2 * g, p(0, on.at(0, -SectionParts.DECK - 2 * g).v()));
  }

  private static final double DROP = 46;

  private double cricketHeight(double top) {
    if (!scene.has("cricket")) {
      return 0;
    }
    Facts facts = detailed.junction().junction().facts();
    double width = facts.number("widthAcrossFallM") * 1000;
    double slope = cut.faces().isEmpty() ? 0 : cut.faces().get(0).slopeDegrees();
    double wanted = Double.isNaN(width) ? top : width / 2 * Math.tan(Math.toRadians(slope));
    return Math.max(20, Math.min(wanted, Math.min(top - 40, 260 * Math.tan(Math.toRadians(slope)))));
  }

  /** Pan behind a wall or curb that the panels above drain on to; with a cricket on it where there is one. */
  private void backPan(double top, String part, double cricket) {
    SlopeLine on = right(0);
    double below = parts.cleatDepth();
    double x = g + (scene.hasSeal("pan-back") || scene.hasSeal("receiver-bar") ? SectionParts.mm(system.bead().size()) * 0.6 : 0);
    Vec2 corner = new SlopeLine(p(x, 0), 90, 1).meet(0, on, -below);
    double meets = cricket <= 0 ? 0 : on.s(new SlopeLine(p(0, cricket), 0, 1).meet(0, on, -below));
    double offset = SectionParts.mm(system.valley().cleatOffset());
    double nose = Math.max(offset, meets + 30);
    double end = Math.max(nose + 110, on.s(corner) + parts.girth(part) - (top - corner.v()) - SectionParts.HEM);
    double to = end + 70;
    if (cricket > 0) {
      Vec2 far = on.at(meets, -below);
      scene.area("furring", List.of(corner, p(x, cricket), far));
      scene.metal("cricket", List.of(p(x + g, top), p(x + g, cricket + g), far.plus(on.up().times(g)), on.at(meets + 30, -below + g)));
      scene.dimension(p(0, 0), p(0, cricket), p(-30, 0), "cricket " + SectionParts.length(cricket));
    }
    scene.metal(part, List.of(p(x, top), corner, on.at(end, -below), on.at(end, -below + g), on.at(end - 14, -below + g)));
    double bead = SectionParts.mm(system.bead().size());
    scene.sealPlace("pan-back", List.of(SectionParts.round(p(x / 2, top - 14), bead)));
    scene.screwPlace("curb-flange", p(x, top - 32), p(x - 38, top - 32));
    parts.cleat(scene.part("cleat"), on, nose, to, slope(0));
    scene.dimension(on.at(0, 0), on.at(nose, 0), on.up().times(66), nose > offset ? "cleat beyond the cricket" : "cleat at " + system.valley().cleatOffset());
    parts.deck(on, 0, to, below + g, p(0, on.at(0, -SectionParts.DECK - below - g).v()));
  }

  // ---- free edges

  private void fascia(double drop) {
    scene.area("wall", List.of(p(0, -SectionParts.DECK - 10), p(22, -SectionParts.DECK - 10), p(22, drop), p(0, drop)));
    scene.label("fascia", p(12, drop + 14));
  }

  private void eave() {
    edgeWithTrim(scene.part("trim"));
  }

  private void rake() {
    if (scene.has("z")) {
      zRake();
    } else if (!parts.closurePart().isEmpty()) {
      highEdge();
    } else {
      edgeWithTrim(scene.part("trim"));
    }
  }

  private void edgeWithTrim(String trim) {
    SlopeLine on = right(0);
    boolean hooked = scene.has("cleat");
    double bed = hooked ? parts.cleatDepth() : parts.bed("trim");
    double down = Math.min(95, parts.girth(trim) * 0.45);
    double flange = Math.max(70, parts.girth(trim) - down - 14 - SectionParts.HEM);
    Vec2 nose = on.at(-14, -bed);
    double x = -2 * g;
    double foot = nose.v() - down;
    scene.metal(trim, List.of(on.at(flange, -bed), nose, p(nose.u() - 1, nose.v() - 10), p(x, nose.v() - 26), p(x, foot + 10), p(x - 9, foot), p(x - 9 + g, foot - 3)));
    double to = flange + 150;
    if (hooked) {
      parts.cleat(scene.part("cleat"), on, -14, to, slope(0));
    } else {
      scene.line("panel", on.at(6, -bed - g), on.at(-14 - g, -bed - g), on.at(-14 - g, 0), on.at(0, 0));
      parts.panel(on, -14 - g, to, slope(0));
      double at = 18 + parts.tapeWidth / 2;
      scene.sealPlace("trim", List.of(parts.tape(on, at, -bed)));
      parts.screw("eave", on, at, 0);
      scene.sealPlace("seam-ends", List.of(on.box(-14, -4, 0.5, parts.seam)));
    }
    if (scene.has("eave-cleat")) {
      double high = nose.v() - 34;
      scene.metal("eave-cleat", List.of(p(-g, high), p(-g, foot + 12), p(-g - 9, foot + 3)));
      scene.screwPlace("eave-cleat", p(-g, (high + foot) / 2 + 8), p(30, (high + foot) / 2 + 8));
    }
    fascia(foot - 30);
    parts.deck(on, 0, to, bed + g, p(0, on.at(0, -bed - g - SectionParts.DECK).v()));
  }

  private void highEdge() {
    SlopeLine on = right(0);
    String cap = scene.part("cap");
    double cover = parts.coverHeight();
    double girth = parts.girth(cap);
    double x = -3 * g - 4;
    Vec2 top = new SlopeLine(p(x, 0), 90, 1).meet(0, on, cover);
    double down = Math.max(top.v() + 40, girth * 0.4);
    double edge = on.s(top) + Math.max(girth - down - 2 * SectionParts.HEM, 90);
    double to = edge + 84;
    List<Vec2> line = new ArrayList<>(parts.closedEdge(on, edge, slope(0), to));
    line.addAll(List.of(top, p(x, top.v() - down), p(x - 9, top.v() - down - 8), p(x - 9 + g, top.v() - down - 12)));
    scene.metal(cap, line);
    double foot = top.v() - down;
    if (scene.has("fascia-cleat")) {
      double high = Math.min(-30, foot + 55);
      scene.metal("fascia-cleat", List.of(p(-g, high), p(-g, foot + 2), p(x - 7, foot - 6)));
      scene.screwPlace("fascia-cleat", p(-g, (high + foot) / 2 + 8), p(30, (high + foot) / 2 + 8));
    }
    fascia(Math.min(foot - 30, -80));
    parts.deck(on, 0, to, 2 * g, p(0, on.at(0, -SectionParts.DECK - 2 * g).v()));
  }

  private void zRake() {
    SlopeLine on = right(0);
    double bed = parts.bed("z");
    double lip = Math.max(parts.lip, parts.tapeWidth);
    double web = 14 + lip;
    double top = bed + parts.seam;
    double flange = Math.max(18, parts.girth("z") - lip - parts.seam - 6);
    flange = Math.min(flange, 34);
    double to = web + 250;
    scene.metal("z", List.of(on.at(web - lip, bed), on.at(web, bed), on.at(web, top), on.at(web + flange, top)));
    scene.sealPlace("z", List.of(parts.tape(on, web - lip / 2, 0)));
    parts.screw("z", on, web - lip / 2, bed);
    String trim = scene.part("trim");
    double x = -2 * g - 4;
    Vec2 corner = new SlopeLine(p(x, 0), 90, 1).meet(0, on, top + g);
    double across = on.s(on.at(web + flange + 2 * g, 0)) - on.s(corner);
    double down = Math.max(corner.v() + 40, parts.girth(trim) - across - 2 * SectionParts.HEM - 10);
    double foot = corner.v() - down;
    scene.metal(trim, List.of(on.at(web + 8, top - 1.5 * g), on.at(web + flange + 1.5 * g, top - 1.5 * g), on.at(web + flange + 1.5 * g, top + g), corner, p(x, foot + 10),
        p(x - 9, foot), p(x - 9 + g, foot - 4)));
    double y = foot + 26;
    scene.screwPlace("trim", p(x, y), p(28, y));
    parts.panelAlongSeams(on, 2, to, web + 150, slope(0));
    scene.line("panel", on.at(2, 0), on.at(2, Math.min(12, parts.seam)));
    fascia(foot - 30);
    parts.deck(on, 0, to, 2 * g, p(0, on.at(0, -SectionParts.DECK - 2 * g).v()));
  }

  // ---- round things, level faces

  private void pipe() {
    double diameter = detailed.junction().junction().facts().number("diameterM") * 1000;
    diameter = Double.isNaN(diameter) ? 100 : diameter;
    double rise = rise(0);
    SlopeLine up = new SlopeLine(NONE, rise, 1);
    SlopeLine down = new SlopeLine(NONE, -rise, -1);
    double radius = diameter / 2;
    double half = radius / Math.cos(Math.toRadians(rise));
    double ring = half + SectionParts.mm(system.pipes().boltCircleMargin());
    double edge = ring + parts.tapeWidth / 2 + 6;
    boolean plated = scene.has("plate");
    double plate = plated ? parts.bed("plate") + g * 0.6 : 0;
    double h = plate + parts.bed("boot");
    double plateEnd = edge + 2.2 * parts.tapeWidth + 30;
    double to = (plated ? plateEnd : edge) + 120;
    double high = up.at(half, h).v() + 52;
    List<Vec2> boot = new ArrayList<>();
    for (SlopeLine on : List.of(down, up)) {
      double side = on.direction();
      List<Vec2> leg = List.of(on.at(edge, h), on.at(half + 9, h), p(side * (radius + g), high), p(side * (radius + g), high + 16));
      scene.line("metal", leg);
      boot = boot.isEmpty() ? leg : boot;
      scene.sealPlace("boot", List.of(parts.tape(on, ring, plate)));
      scene.screwPlace("boot", on.at(ring, h), on.at(ring, h - 26));
      scene.line("metal", p(side * (radius + 2.4 * g), high + 3), p(side * (radius + 2.4 * g), high + 13));
      double bead = SectionParts.mm(system.bead().clampSize());
      scene.sealPlace("clamp", List.of(List.of(p(side * radius, high + 16), p(side * (radius + bead), high + 16), p(side * radius, high + 16 + bead))));
      if (plated) {
        double low = plate;
        scene.sealPlace("plate", List.of(parts.tape(on, plateEnd - parts.tapeWidth / 2 - 4, 0), parts.tape(on, half + 14 + parts.tapeWidth / 2, 0)));
        scene.screwPlace("plate", on.at(plateEnd - parts.tapeWidth / 2 - 4, low), on.at(plateEnd - parts.tapeWidth / 2 - 4, low - 28));
        scene.metal("plate", List.of(on.at(plateEnd, low), on.at(half + 5, low)));
      }
      parts.panel(on, half + 4, to, side > 0 ? slope(0) : "");
      parts.deck(on, half + 6, to, 2 * g);
    }
    scene.parts().putIfAbsent("boot", boot);
    scene.parts().putIfAbsent("clamp", List.of(p(radius + 2.4 * g, high + 3), p(radius + 2.4 * g, high + 13)));
    scene.area("pipe", List.of(p(-radius, -70 - half), p(radius, -70 - half), p(radius, high + 70), p(-radius, high + 70)));
    scene.line("axis", p(0, -85 - half), p(0, high + 85));
    scene.dimension(p(-radius, high + 50), p(radius, high + 50), p(0, 0), "⌀ " + SectionParts.length(diameter));
    scene.label("pipe", p(radius * 0.6, high + 36));
  }

  private void bare() {
    boolean pair = cut.faces().size() > 1;
    List<SlopeLine> faces = pair ? List.of(left(0), right(1)) : List.of(right(0));
    for (int i = 0; i < faces.size(); i++) {
      SlopeLine on = faces.get(i);
      scene.line("panel", on.at(0, 0), on.at(260, 0));
      parts.deck(on, 0, 260, 2 * g);
      scene.note(on.at(150, -60), on.degrees() * on.direction(), slope(i));
    }
    String against = detailed.junction().junction().facts().word("against");
    if (!pair && (against.equals("wall") || against.equals("penetration"))) {
      parts.wall(against.equals("wall") ? "wall" : "curb", -60, 220);
    }
    scene.label(detailed.detail().title(), faces.get(faces.size() - 1).at(120, 0));
  }
}
