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
    double flange = Math.max(70, parts.girth(trim) - down - 14 - SectionParts.HEM);
    Vec2 nose = on.at(-14, -bed);
    double x = -2 * g;
    double foot = nose.v() - down;
    scene.metal(trim, List.of(on.at(flange, -bed), nose, p(nose.u() - 1, nose.v() - 10), p(x, nose.v() - 26), p(x, foot + 10),
        p(x - 9, foot), p(x - 9 + g, foot - 3)));
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
    double lower = Math.max(parts.flange, parts.tapeWidth);
    double web = 14 + lower;
    double top = bed + parts.seam;
    double cover = Math.max(18, parts.girth("z") - lower - parts.seam - 6);
    cover = Math.min(cover, 34);
    double to = web + 250;
    scene.metal("z", List.of(on.at(web - lower, bed), on.at(web, bed), on.at(web, top), on.at(web + cover, top)));
    scene.sealPlace("z", List.of(parts.tape(on, web - lower / 2, 0)));
    parts.screw("z", on, web - lower / 2, bed);
    String trim = scene.part("trim");
    double x = -2 * g - 4;
    Vec2 corner = new SlopeLine(p(x, 0), 90, 1).meet(0, on, top + g);
    double across = on.s(on.at(web + cover + 2 * g, 0)) - on.s(corner);
    double down = Math.max(corner.v() + 40, parts.girth(trim) - across - 2 * SectionParts.HEM - 10);
    double foot = corner.v() - down;
    scene.metal(trim,
        List.of(on.at(web + 8, top - 1.5 * g), on.at(web + cover + 1.5 * g, top - 1.5 * g), on.at(web + cover + 1.5 * g, top + g), corner,
            p(x, foot + 10),
            p(x - 9, foot), p(x - 9 + g, foot - 4)));
    double y = foot + 26;
    scene.screwPlace("trim", p(x, y), p(28, y));
    parts.panelAlongSeams(on, 2, to, web + 150, slope(0));
    scene.line("panel", on.at(2, 0), on.at(2, Math.min(12, parts.seam)));
    fascia(foot - 30);
    parts.deck(on, 0, to, 2 * g, p(0, on.at(0, -SectionParts.DECK - 2 * g).v()));
  }
}
