package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Vec2;
import org.seamledger.junction.Facts;

/** Compositions of junctions at walls and at the sides of curbs. */
final class WallSections extends SectionComposer {

  private static final double DROP = 46;
  /** Floor and depth of a channel along a wall: what its flow asks for governs. */
  private static final double CHANNEL = 100;
  private static final double DEPTH = 60;

  WallSections(SectionComposer of) {
    super(of);
  }

  void wall() {
    boolean drains = scene.has("pan");
    boolean parapet = scene.has("coping");
    double top = parts.upstand + (drains ? 0 : parts.seam) + (parapet ? 60 : 0);
    double foot = groundAtWall() - (scene.has("outlet") ? 110 : 60);
    double high = parapet ? top : parts.counterflashing(top);
    parts.wall(parapet ? "parapet" : "wall", foot, high);
    if (scene.has("outlet")) {
      channel(top);
    } else if (drains) {
      backPan(top, "pan", 0);
    } else if (scene.has("z")) {
      beside(top, scene.part("flashing"));
    } else {
      apron(top, scene.part("flashing"));
    }
    if (parapet) {
      parts.coping(top);
    }
    parts.upstandDimension(drains ? 0 : parts.seam, top);
  }

  private double groundAtWall() {
    return Math.min(0, right(0).at(0, -SectionParts.DECK).v());
  }

  void curb() {
    double measured = detailed.junction().junction().facts().number("upstandM") * 1000;
    boolean up = detailed.junction().type().section() == Kind.Section.CURB_UPSLOPE;
    double stand = up ? cricketHeight() : parts.seam;
    double wanted = stand + parts.upstand;
    double top = measured > stand + 40 ? Math.min(wanted, measured - 10) : wanted;
    double covered = parts.counterflashing(top);
    // A skirt is part of what stands on the curb: the curb ends under it.
    double high = scene.has("skirt") || Double.isNaN(measured) ? covered : Math.max(covered, Math.min(measured, top + 80));
    parts.wall("curb, " + neighbour(), groundAtWall() - 60, high);
    switch (detailed.junction().type().section()) {
      case CURB_UPSLOPE -> backPan(top, scene.part("pan"), stand);
      case CURB_SIDE -> beside(top, scene.part("flashing"));
      default -> apron(top, scene.part("flashing"));
    }
    if (top < wanted - 1e-6) {
      scene.dimension(p(0, stand), p(0, top), p(-76, 0), "upturn " + parts.length(top - stand) + ", the curb allows no more");
    } else {
      parts.upstandDimension(stand, top);
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
    double leg = Math.max(parts.flange * 2 + 40, parts.girth(part) - (top - corner.v()) - SectionParts.EDGES);
    double edge = on.s(corner) + leg;
    double gap = SectionParts.mm(system.panel().movementGap()) + g;
    scene.dimension(on.at(0, 0), on.at(gap, 0), on.up().times(-DROP), "gap " + parts.stated(system.panel().movementGap()));
    double to = edge + 84;
    List<Vec2> line = new ArrayList<>(parts.closedEdge(on, edge, slope(0), to, gap));
    line.add(corner);
    line.add(p(x, top));
    scene.metal(part, line);
    parts.plumbDeck(on, to, 2 * g);
  }

  /** Flashing along the slope that hooks over a zee on the panel and turns up at a wall. */
  private void beside(double top, String part) {
    SlopeLine on = new SlopeLine(NONE, rise(0), 1);
    double to = Math.max(parts.flange, parts.tapeWidth) + 270;
    List<Vec2> line = new ArrayList<>(parts.zee(on, to, slope(0)));
    scene.dimension(on.at(0, 0), on.at(SectionParts.EDGE, 0), on.up().times(-DROP), "panel to wall " + parts.length(SectionParts.EDGE));
    scene.label("moves along the line, out of the sheet: panel, zee and flashing together; nothing ties them to the wall",
        on.at(SectionParts.EDGE, parts.seam * 0.7), on.at(SectionParts.EDGE, parts.seam * 0.3));
    line.add(new SlopeLine(p(g, 0), 90, 1).meet(0, on, parts.bed("z") + parts.seam + g));
    line.add(p(g, top));
    scene.metal(part, line);
    parts.plumbDeck(on, to, 2 * g);
  }

  private double cricketHeight() {
    if (!scene.has("cricket")) {
      return 0;
    }
    Facts facts = detailed.junction().junction().facts();
    double width = facts.number("widthAcrossFallM") * 1000;
    double slope = cut.faces().isEmpty() ? 0 : cut.faces().get(0).slopeDegrees();
    double rise = Math.tan(Math.toRadians(slope));
    return Math.max(20, Math.min(Double.isNaN(width) ? 60 : width / 2 * rise, 260 * rise));
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
      Vec2 fold = on.at(meets + 8, -below + g / 2);
      scene.sealPlace("cricket-folds", List.of(SectionParts.round(fold, SectionParts.mm(system.bead().size()))));
      scene.screwPlace("cricket-seams", on.at(meets + 20, -below + 2 * g), on.at(meets + 20, -below - 6));
      scene.dimension(p(0, 0), p(0, cricket), p(-30, 0), "cricket " + parts.length(cricket));
    }
    scene.metal(part, List.of(p(x, top), corner, on.at(end, -below), on.at(end, -below + g), on.at(end - 14, -below + g)));
    double bead = SectionParts.mm(system.bead().size());
    scene.sealPlace("pan-back", List.of(SectionParts.round(p(x / 2, top - 14), bead)));
    scene.screwPlace("curb-flange", p(x, top - 32), p(x - 38, top - 32));
    parts.panCleat(on, end, below);
    outlets(corner);
    parts.cleat(scene.part("cleat"), on, nose, to, slope(0));
    scene.dimension(on.at(0, 0), on.at(nose, 0), on.up().times(66),
        nose > offset ? "cleat beyond the cricket" : "cleat at " + parts.stated(system.valley().cleatOffset()));
    parts.plumbDeck(on, to, below + g);
  }

  /** Channel with a level floor along a wall that the face drains against. */
  private void channel(double top) {
    SlopeLine on = right(0);
    double below = parts.cleatDepth();
    double rim = CHANNEL / Math.cos(Math.toRadians(rise(0)));
    Vec2 edge = on.at(rim, -below);
    Vec2 corner = p(g, edge.v() - DEPTH);
    double nose = Math.max(SectionParts.mm(system.valley().cleatOffset()), rim + 24);
    double end = Math.max(nose + 110, rim + parts.girth("pan") - (top - corner.v()) - CHANNEL - DEPTH - SectionParts.HEM);
    double to = end + 70;
    scene.metal("pan", List.of(p(g, top), corner, p(edge.u(), corner.v()), edge, on.at(end, -below), on.at(end, -below + g),
        on.at(end - 14, -below + g)));
    parts.panCleat(on, end, below);
    outlets(corner);
    parts.cleat(scene.part("cleat"), on, nose, to, slope(0));
    scene.dimension(corner, p(edge.u(), corner.v()), p(0, -70), "floor " + parts.length(CHANNEL));
    scene.dimension(p(edge.u(), corner.v()), edge, p(24, 0), "depth " + parts.length(DEPTH));
    parts.deck(on, rim + g, to, below + g);
    scene.area("deck", List.of(p(0, corner.v() - g), p(edge.u() + g, corner.v() - g), p(edge.u() + g, corner.v() - g - SectionParts.DECK),
        p(0, corner.v() - g - SectionParts.DECK)));
  }

  /** Outlet and overflow of a channel along a wall. */
  private void outlets(Vec2 corner) {
    if (scene.has("outlet")) {
      for (int side : new int[] {-1, 1}) {
        double x = corner.u() + 34 + side * 19;
        scene.metal("outlet", List.of(p(x + side * 11, corner.v() + g), p(x, corner.v() + g), p(x, corner.v() - 54)));
      }
    }
    if (scene.has("overflow")) {
      // Below the rim of the channel: what it can't carry leaves there before it stands at the panels.
      double sill = corner.v() + DEPTH * 0.35;
      for (double y : new double[] {sill, sill + DEPTH * 0.45}) {
        scene.metal("overflow", List.of(p(corner.u() + 2 * g, y), p(-parts.thickness() - 8, y - 5)));
      }
      scene.dimension(corner, p(corner.u(), sill), p(-24, 0), "overflow at " + parts.length(DEPTH * 0.35));
    }
  }
}
