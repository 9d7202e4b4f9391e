package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec2;

/** Compositions of free edges. */
final class EdgeSections extends SectionComposer {

  /** The lip of an eave trim, folded back on itself, that the panel's hem hooks over. */
  private static final double LIP = 28;

  EdgeSections(SectionComposer of) {
    super(of);
  }

  void eave() {
    edgeWithTrim(scene.part("trim"));
  }

  void rake() {
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
    double sheet = parts.girth(trim) - SectionParts.EDGES - (hooked ? 0 : LIP);
    double x = -2.2 * g;
    double flange = Math.max(hooked ? 70 : 48, 0.55 * sheet + on.s(SectionParts.plumb(x, on, -bed)));
    Vec2 nose = SectionParts.plumb(x, on, hooked ? -bed : -bed - g);
    double foot = nose.v() - 0.45 * sheet;
    double to = flange + 150;
    double lip = on.s(nose) - LIP;
    List<Vec2> line = new ArrayList<>(hooked ? List.of(on.at(flange, -bed), nose) : List.of(on.at(flange, -bed), on.at(lip, -bed),
        on.at(lip, -bed - g), nose));
    double high = nose.v() - 16;
    line.addAll(parts.hooked("eave-cleat", p(x, foot), -g, high));
    scene.metal(trim, line);
    if (scene.has("eave-cleat")) {
      scene.screwPlace("eave-cleat", p(-g, (high + foot) / 2 + 6), p(30, (high + foot) / 2 + 6));
    }
    if (hooked) {
      parts.cleat(scene.part("cleat"), on, -14, to, slope(0));
    } else {
      hemmed(on, bed, lip, to);
    }
    scene.dimension(nose, p(x, foot), p(-20, 0), "face " + parts.length(nose.v() - foot));
    double drop = scene.has("gutter") ? gutter(foot - 9) : foot - 39;
    parts.fascia(on, bed + g, drop);
    parts.plumbDeck(on, to, bed + g);
  }

  /** A panel whose hem hooks over the lip of the trim, screwed down behind it. */
  private void hemmed(SlopeLine on, double bed, double lip, double to) {
    double fold = lip - 2 * g;
    double stated = SectionParts.mm(system.purchase().cuts().hem());
    double end = fold + Math.min(stated, LIP);
    scene.line("panel", on.at(end, -bed - 2 * g), on.at(fold, -bed - 2 * g), on.at(fold, 0), on.at(0, 0));
    parts.panel(on, fold, to, slope(0));
    double at = 18 + parts.tapeWidth / 2;
    scene.sealPlace("trim", List.of(parts.tape(on, at, -bed)));
    parts.screw("eave", on, at, 0);
    scene.sealPlace("seam-ends", List.of(on.box(fold, fold + 10, 0.5, parts.seam)));
    scene.dimension(on.at(fold, 0), on.at(end, 0), on.up().times(parts.seam + 14),
        "hem " + (stated <= LIP ? parts.stated(system.purchase().cuts().hem()) : parts.length(LIP)));
  }

  /** A gutter whose back goes up behind the trim; gives how far down the fascia goes. */
  private double gutter(double foot) {
    double sheet = parts.girth("gutter") - 12;
    double wide = sheet * 0.32;
    double front = foot - 14;
    double floor = front - sheet * 0.28;
    double back = -0.4 * g;
    scene.metal("gutter",
        List.of(p(back, floor + sheet * 0.4), p(back, floor), p(back - wide, floor), p(back - wide, front), p(back - wide + 12, front)));
    scene.metal("bracket", List.of(p(back - g, foot - 6), p(back - g, foot - 22), p(back - wide + g, front - 6)));
    scene.screwPlace("bracket", p(back - g, foot - 14), p(34, foot - 14));
    scene.metal("outlet", List.of(p(back - wide * 0.45, floor + g), p(back - wide * 0.4, floor + g), p(back - wide * 0.4, floor - 40)));
    scene.metal("outlet", List.of(p(back - wide * 0.75, floor + g), p(back - wide * 0.8, floor + g), p(back - wide * 0.8, floor - 40)));
    scene.dimension(p(back, floor), p(back - wide, floor), p(0, -58), "width " + parts.length(wide));
    scene.dimension(p(back - wide, floor), p(back - wide, front), p(-16, 0), "front " + parts.length(front - floor));
    scene.metal("joint", List.of(p(back - 2 * g, floor + 34), p(back - 2 * g, floor + 2 * g), p(back - wide * 0.25, floor + 2 * g)));
    return floor - 20;
  }

  void highEdge() {
    SlopeLine on = right(0);
    String cap = scene.part("cap");
    double cover = parts.coverHeight();
    double girth = parts.girth(cap);
    double x = -2.2 * g;
    Vec2 top = new SlopeLine(p(x, 0), 90, 1).meet(0, on, cover);
    double sheet = girth - 2 * SectionParts.EDGES;
    double down = Math.max(top.v() + 40, sheet * 0.45);
    double edge = on.s(top) + Math.max(sheet - down, 90);
    double to = edge + 84;
    double head = parts.setback(0);
    parts.setbackDimension(on, head);
    List<Vec2> line = new ArrayList<>(parts.closedEdge(on, edge, slope(0), to, head));
    double foot = top.v() - down;
    double high = Math.min(-30, foot + 55);
    line.add(top);
    line.addAll(parts.hooked("fascia-cleat", p(x, foot), -g, high));
    scene.metal(cap, line);
    if (scene.has("fascia-cleat")) {
      scene.screwPlace("fascia-cleat", p(-g, (high + foot) / 2 + 8), p(30, (high + foot) / 2 + 8));
    }
    scene.dimension(top, p(x, foot), p(-20, 0), "face " + parts.length(down));
    scene.dimension(top, on.at(edge, cover), on.up().times(20), "top " + parts.length(edge - on.s(top)));
    parts.fascia(on, 2 * g, Math.min(foot - 30, -80));
    parts.plumbDeck(on, to, 2 * g);
  }

  private void zRake() {
    SlopeLine on = right(0);
    double to = 14 + Math.max(parts.flange, parts.tapeWidth) + 250;
    List<Vec2> line = new ArrayList<>(parts.zee(on, to, slope(0)));
    String trim = scene.part("trim");
    Vec2 hook = line.get(2);
    double x = -2.2 * g;
    Vec2 corner = new SlopeLine(p(x, 0), 90, 1).meet(0, on, parts.bed("z") + parts.seam + g);
    double sheet = parts.girth(trim) - SectionParts.EDGES - SectionParts.HEM;
    double down = Math.max(corner.v() + 40, sheet - on.s(line.get(1)) + on.s(corner));
    double foot = corner.v() - down;
    double high = Math.min(-30, foot + 60);
    line.add(corner);
    line.addAll(parts.hooked("rake-cleat", p(x, foot), -g, high));
    scene.metal(trim, line);
    scene.screwPlace("rake-cleat", p(-g, (high + foot) / 2 + 8), p(30, (high + foot) / 2 + 8));
    scene.dimension(corner, p(x, foot), p(-20, 0), "face " + parts.length(down));
    scene.dimension(corner, line.get(1), on.up().times(16), "top " + parts.length(on.s(line.get(1)) - on.s(corner)));
    parts.fascia(on, 2 * g, foot - 39);
    parts.plumbDeck(on, to, 2 * g);
  }
}
