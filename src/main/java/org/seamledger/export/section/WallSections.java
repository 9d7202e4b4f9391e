package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Vec2;
import org.seamledger.junction.Facts;

/** Compositions of junctions at walls and at the sides of curbs. */
final class WallSections extends SectionComposer {

  private static final double DROP = 46;

  WallSections(SectionComposer of) {
    super(of);
  }

  void wall() {
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

  void curb() {
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
      scene.dimension(p(0, 0), p(0, top), p(-76, 0), "upstand " + parts.length(top) + ", the curb allows no more");
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
    double leg = Math.max(parts.flange * 2 + 40, parts.girth(part) - (top - corner.v()) - SectionParts.HEM - 5);
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
    scene.sealPlace("flange",
        List.of(parts.tape(on, outer, 0), parts.tape(on, Math.max(movement + parts.tapeWidth, outer - 2.4 * parts.tapeWidth), 0)));
    scene.screwPlace("flange", on.at(outer, h), on.at(outer, h - 30));
    parts.panelAlongSeams(on, movement, to, Math.max(leg + 60, 120), slope(0));
    scene.dimension(on.at(0, 0), on.at(movement, 0), on.up().times(-DROP), "gap " + parts.stated(system.panel().movementGap()));
    parts.deck(on, 0, to, 2 * g, p(0, on.at(0, -SectionParts.DECK - 2 * g).v()));
  }

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
      scene.dimension(p(0, 0), p(0, cricket), p(-30, 0), "cricket " + parts.length(cricket));
    }
    scene.metal(part, List.of(p(x, top), corner, on.at(end, -below), on.at(end, -below + g), on.at(end - 14, -below + g)));
    double bead = SectionParts.mm(system.bead().size());
    scene.sealPlace("pan-back", List.of(SectionParts.round(p(x / 2, top - 14), bead)));
    scene.screwPlace("curb-flange", p(x, top - 32), p(x - 38, top - 32));
    parts.cleat(scene.part("cleat"), on, nose, to, slope(0));
    scene.dimension(on.at(0, 0), on.at(nose, 0), on.up().times(66),
        nose > offset ? "cleat beyond the cricket" : "cleat at " + parts.stated(system.valley().cleatOffset()));
    parts.deck(on, 0, to, below + g, p(0, on.at(0, -SectionParts.DECK - below - g).v()));
  }
}
