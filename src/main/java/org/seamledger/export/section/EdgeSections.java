package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec2;

/** Compositions of free edges. */
final class EdgeSections extends SectionComposer {

  EdgeSections(SectionComposer of) {
    super(of);
  }

  private void fascia(double drop) {
    scene.area("wall", List.of(p(0, -SectionParts.DECK - 10), p(22, -SectionParts.DECK - 10), p(22, drop), p(0, drop)));
    scene.label("fascia", p(12, drop + 14));
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
    double down = Math.min(95, parts.girth(trim) * 0.45);
    double flange = Math.max(70, parts.girth(trim) - down - 30 - SectionParts.HEM);
    Vec2 nose = on.at(-14, -bed);
    double x = -2 * g;
    double foot = nose.v() - down;
    double to = flange + 150;
    List<Vec2> lip = hooked ? List.of(on.at(flange, -bed), nose, p(nose.u() - 1, nose.v() - 10))
        : List.of(on.at(flange, -bed), on.at(-24, -bed), on.at(-9, -bed - g));
    List<Vec2> line = new ArrayList<>(lip);
    line.addAll(List.of(p(x, nose.v() - 26), p(x, foot + 10), p(x - 9, foot), p(x - 9 + g, foot - 3)));
    scene.metal(trim, line);
    if (hooked) {
      parts.cleat(scene.part("cleat"), on, -14, to, slope(0));
    } else {
      hemmed(on, bed, to);
    }
    if (scene.has("eave-cleat")) {
      double high = nose.v() - 34;
      scene.metal("eave-cleat", List.of(p(-g, high), p(-g, foot + 12), p(-g - 9, foot + 3)));
      scene.screwPlace("eave-cleat", p(-g, (high + foot) / 2 + 8), p(30, (high + foot) / 2 + 8));
    }
    double drop = scene.has("gutter") ? gutter(foot) : foot - 30;
    fascia(drop);
    parts.deck(on, 0, to, bed + g, p(0, on.at(0, -bed - g - SectionParts.DECK).v()));
  }

  /** A panel whose hem hooks over the lip of the trim, screwed down behind it. */
  private void hemmed(SlopeLine on, double bed, double to) {
    scene.line("panel", on.at(-15, -bed - 2 * g), on.at(-24 - g, -bed - 2 * g), on.at(-24 - g, 0), on.at(0, 0));
    parts.panel(on, -24 - g, to, slope(0));
    double at = 18 + parts.tapeWidth / 2;
    scene.sealPlace("trim", List.of(parts.tape(on, at, -bed)));
    parts.screw("eave", on, at, 0);
    scene.sealPlace("seam-ends", List.of(on.box(-24, -14, 0.5, parts.seam)));
  }

  /** A gutter whose back goes up behind the trim; gives how far down the fascia goes. */
  private double gutter(double foot) {
    double wide = Math.max(70, parts.girth("gutter") * 0.3);
    double floor = foot - Math.max(60, parts.girth("gutter") * 0.28);
    double front = foot - 14;
    double back = -0.4 * g;
    scene.metal("gutter",
        List.of(p(back, foot + 26), p(back, floor), p(back - wide, floor), p(back - wide, front), p(back - wide + 9, front)));
    scene.metal("bracket", List.of(p(back - g, foot - 6), p(back - g, foot - 22), p(back - wide + g, front - 6)));
    scene.screwPlace("bracket", p(back - g, foot - 14), p(34, foot - 14));
    scene.metal("outlet", List.of(p(back - wide * 0.45, floor + g), p(back - wide * 0.4, floor + g), p(back - wide * 0.4, floor - 40)));
    scene.metal("outlet", List.of(p(back - wide * 0.75, floor + g), p(back - wide * 0.8, floor + g), p(back - wide * 0.8, floor - 40)));
    scene.metal("joint", List.of(p(back - 2 * g, floor + 34), p(back - 2 * g, floor + 2 * g), p(back - wide * 0.25, floor + 2 * g)));
    return floor - 20;
  }

  void highEdge() {
    SlopeLine on = right(0);
    String cap = scene.part("cap");
    double cover = parts.coverHeight();
    double girth = parts.girth(cap);
    double x = -3 * g - 4;
    Vec2 top = new SlopeLine(p(x, 0), 90, 1).meet(0, on, cover);
    double down = Math.max(top.v() + 40, girth * 0.4);
    double edge = on.s(top) + Math.max(girth - down - 2 * SectionParts.HEM, 90);
    double to = edge + 84;
    double head = parts.setback(0);
    parts.setbackDimension(on, head);
    List<Vec2> line = new ArrayList<>(parts.closedEdge(on, edge, slope(0), to, head));
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
    double to = 14 + Math.max(parts.flange, parts.tapeWidth) + 250;
    List<Vec2> line = new ArrayList<>(parts.zee(on, to, slope(0)));
    String trim = scene.part("trim");
    Vec2 hook = line.get(2);
    double x = -3 * g - 4;
    Vec2 corner = new SlopeLine(p(x, 0), 90, 1).meet(0, on, parts.bed("z") + parts.seam + g);
    double down = Math.max(corner.v() + 40, parts.girth(trim) - on.s(hook) + on.s(corner) - 2 * SectionParts.HEM - 10);
    double foot = corner.v() - down;
    line.addAll(List.of(corner, p(x, foot + 10), p(x - 9, foot), p(x - 9 + g, foot - 4)));
    scene.metal(trim, line);
    double high = Math.min(-30, foot + 60);
    scene.metal("rake-cleat", List.of(p(-g, high), p(-g, foot + 12), p(x - 8, foot + 2.5)));
    scene.screwPlace("rake-cleat", p(-g, (high + foot) / 2 + 8), p(30, (high + foot) / 2 + 8));
    fascia(foot - 30);
    parts.deck(on, 0, to, 2 * g, p(0, on.at(0, -SectionParts.DECK - 2 * g).v()));
  }
}
