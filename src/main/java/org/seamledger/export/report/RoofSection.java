package org.seamledger.export.report;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.seamledger.detail.FixedLine;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.measure.Unit;
import org.seamledger.quantity.FixedPanel;
import org.seamledger.quantity.PanelCut;
import org.seamledger.quantity.PanelEnd;
import org.seamledger.quantity.layout.Seam;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/** Faces, and the panels and seams laid out on them, for people. */
public final class RoofSection {

  private static final String INDENT = "  ";
  private static final List<String> POINTS = List.of("north", "north-east", "east", "south-east", "south", "south-west", "west",
      "north-west");

  /** Below this, degrees, a face shows as level. */
  private static final double LEVEL = 0.05;

  private RoofSection() {
  }

  public static void write(Takeoff takeoff, TextPage page) {
    faces(takeoff, page);
    panels(takeoff, page);
    fixity(takeoff, page);
  }

  private static void fixity(Takeoff takeoff, TextPage page) {
    page.title("Fixed lines of the panels, and movement of their free ends");
    Table table = new Table(INDENT, "lrrrrrrr").row("face", "low end", "high end", "clips", "none", "gap mm", "opens mm", "slot mm");
    for (RoofFace face : takeoff.faces()) {
      List<FixedPanel> panels = takeoff.quantities().fixity().of(face.id());
      if (!panels.isEmpty()) {
        List<PanelEnd> ends = panels.stream().flatMap(p -> Stream.of(p.low(), p.high())).toList();
        table.row(face.id(), count(panels, FixedLine.LOW_END), count(panels, FixedLine.HIGH_END), count(panels, FixedLine.CLIP),
            count(panels, FixedLine.NONE), most(ends, PanelEnd::growM), most(ends, PanelEnd::shrinkM), most(ends, PanelEnd::slotM));
      }
    }
    table.on(page);
    page.line(INDENT + "Of the longest panel: gap to leave at a free end, how far it opens in the cold, slot.");
  }

  private static String count(List<FixedPanel> panels, FixedLine line) {
    return Long.toString(panels.stream().filter(p -> p.fixed() == line).count());
  }

  private static String most(List<PanelEnd> ends, ToDoubleFunction<PanelEnd> metres) {
    return MeasureFormat.fixed(1000 * ends.stream().mapToDouble(metres).max().orElse(0), 1);
  }

  private static void faces(Takeoff takeoff, TextPage page) {
    page.title("Roof faces");
    Table table = new Table(INDENT, "lrrlrrrl").row("face", "slope", "in 12", "falls to", "m²", "ft²", "perimeter", "modelled as");
    for (RoofFace face : takeoff.faces()) {
      table.row(face.id(), MeasureFormat.fixed(face.slopeDegrees(), 2) + "°", MeasureFormat.fixed(face.risePer12(), 2) + ":12", fall(face),
          MeasureFormat.fixed(face.areaM2(), 2), MeasureFormat.fixed(Unit.SQUARE_FOOT.fromSi(face.areaM2()), 1),
          MeasureFormat.formatMetres(face.perimeterM()),
          ElementNames.of(takeoff, face.elements()));
    }
    table.on(page);
    page.line(INDENT + "Compass points count the model's +Y as north.");
  }

  private static String fall(RoofFace face) {
    if (face.slopeDegrees() < LEVEL) {
      return "level";
    }
    double azimuth = face.fallAzimuthDegrees();
    return POINTS.get((int) Math.round(azimuth / 45) % 8) + " " + Math.round(azimuth) % 360 + "°";
  }

  private static void panels(Takeoff takeoff, TextPage page) {
    page.title("Panels and seams, spacing " + takeoff.system().panel().coverage());
    Table table = new Table(INDENT, "lrrrrrl").row("face", "panels", "longest", "", "seams", "in all", "sealed in the seam");
    for (RoofFace face : takeoff.faces()) {
      List<PanelCut> cuts = takeoff.quantities().panels().stream().filter(cut -> cut.face().equals(face.id())).toList();
      List<Seam> seams = takeoff.quantities().layout().face(face.id()).seams();
      if (!cuts.isEmpty()) {
        double longest = cuts.get(0).panel().lengthM();
        table.row(face.id(), Integer.toString(cuts.stream().mapToInt(PanelCut::count).sum()), MeasureFormat.formatMetres(longest),
            MeasureFormat.formatFeetInches(longest), Integer.toString(seams.size()),
            MeasureFormat.formatMetres(seams.stream().mapToDouble(Seam::lengthM).sum()),
            takeoff.quantities().layout().seamsSealed(face.id()) ? "yes, below " + takeoff.system().limits().sealSeamsBelow() : "no");
      }
    }
    table.on(page);
  }
}
