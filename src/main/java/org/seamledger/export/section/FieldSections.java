package org.seamledger.export.section;

import java.util.List;
import org.seamledger.geometry.Vec2;

/** Compositions of lines within a face, at which panels are divided. */
final class FieldSections extends SectionComposer {

  /** How far the section shows the panels to each side. */
  private static final double REACH = 190;

  FieldSections(SectionComposer of) {
    super(of);
  }

  /** The upper piece of a panel over the lower one, like a shingle, on a plate that backs both. */
  void lap() {
    SlopeLine below = left(0);
    SlopeLine above = right(1);
    double lap = SectionParts.mm(system.purchase().cuts().endLap());
    double bed = parts.bed("lap");
    double edge = 6 + parts.tapeWidth / 2;
    if (scene.has("back-up")) {
      double plate = Math.max(lap, parts.girth("back-up")) + 24;
      scene.metal("back-up", List.of(above.at(24 - plate, -1.3 * g), above.at(24, -1.3 * g)));
    }
    parts.panel(below, 0, lap + REACH, slope(0));
    parts.panel(above.lifted(bed), -lap, REACH, slope(1));
    scene.sealPlace("lap", List.of(parts.tape(above, -lap + edge, 0), parts.tape(above, -edge, 0)));
    for (double at : new double[] {-lap + edge, -edge}) {
      scene.screwPlace("lap", above.at(at, bed), above.at(at, -2.2 * g));
    }
    Vec2 seam = above.at(-lap, parts.seam * 0.45);
    scene.sealPlace("seam-ends", List.of(above.box(-lap, -lap + 10, bed, parts.seam)));
    scene.label("seam of the upper piece over that of the lower one, notched to fit", seam);
    parts.deck(above, -lap - REACH, REACH, 2.6 * g);
    scene.dimension(above.at(-lap, bed), above.at(0, bed), above.up().times(parts.seam + 26), "lap " + parts.stated(
        system.purchase().cuts().endLap()));
  }
}
