package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec2;

/** The composition of a round penetration. */
final class PipeSection extends SectionComposer {

  PipeSection(SectionComposer of) {
    super(of);
  }

  void pipe() {
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
      scene.sealPlace("clamp",
          List.of(List.of(p(side * radius, high + 16), p(side * (radius + bead), high + 16), p(side * radius, high + 16 + bead))));
      if (plated) {
        double low = plate;
        scene.sealPlace("plate",
            List.of(parts.tape(on, plateEnd - parts.tapeWidth / 2 - 4, 0), parts.tape(on, half + 14 + parts.tapeWidth / 2, 0)));
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
}
