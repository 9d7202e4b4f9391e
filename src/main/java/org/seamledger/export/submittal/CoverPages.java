package org.seamledger.export.submittal;

import java.util.List;
import org.seamledger.element.ModelInfo;
import org.seamledger.export.report.FindingsSection;
import org.seamledger.export.sheet.KeyPlan;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSubject;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.TitleBlock;
import org.seamledger.export.wording.CountText;
import org.seamledger.export.wording.OneLine;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/** What this is, of which model, and the roof at a glance. */
final class CoverPages implements SubmittalPages {

  private final SubmittalContent content;
  private final Takeoff takeoff;

  CoverPages(SubmittalContent content) {
    this.content = content;
    this.takeoff = content.takeoff();
  }

  @Override
  public OutlineEntry outline() {
    return new OutlineEntry(PageSet.COVER.title(), SubmittalContent.place(PageSet.COVER));
  }

  @Override
  public void write(FoWriter fo) {
    content.frame().text("Roof submittal", 1, () -> page(fo), fo);
  }

  private void page(FoWriter fo) {
    TitleBlock title = content.setup().sheets().title();
    PaperBox room = content.frame().room();
    fo.block(title.project().isEmpty() ? Sheet.models(takeoff) : title.project(), "id", SubmittalContent.place(PageSet.COVER), "role", "H1",
        "font-size", "9mm", "font-weight", "bold", "line-height", "1.15", "space-after", "1mm");
    fo.block("Standing-seam metal roof: junctions, details and order", "font-size", "4.4mm", "color", "#44525f", "space-after", "6mm");
    fo.open("table", "table-layout", "fixed", "width", "100%", "role", "artifact");
    fo.empty("table-column", "column-width", "proportional-column-width(2)");
    fo.empty("table-column", "column-width", "proportional-column-width(3)");
    fo.open("table-body").open("table-row");
    fo.open("table-cell", "padding-right", "6mm");
    facts(title, fo);
    fo.close("table-cell").open("table-cell").open("block", "text-align", "center");
    PaperBox box = new PaperBox(0, 0, room.width() * 0.58, room.height() - 34);
    if (!takeoff.faces().isEmpty()) {
      fo.drawing(picture(box), "Outline of the roof's faces from above, north up", "content-width", Svg.number(box.width()) + "mm");
    }
    fo.close("block").close("table-cell").close("table-row").close("table-body").close("table");
  }

  private String picture(PaperBox box) {
    Svg svg = new Svg();
    svg.open("svg", "xmlns", "http://www.w3.org/2000/svg", "width", Svg.number(box.width()) + "mm", "height",
        Svg.number(box.height()) + "mm", "viewBox", "0 0 " + Svg.number(box.width()) + " " + Svg.number(box.height()));
    svg.open("g", "fill", "#e9eef1", "stroke", "#44525f", "stroke-width", "0.25", "fill-rule", "evenodd");
    new KeyPlan(SheetSubject.of(takeoff), box.inset(2)).draw(svg);
    return svg.close("g").close("svg").toString();
  }

  private void facts(TitleBlock title, FoWriter fo) {
    List<RoofFace> faces = takeoff.faces();
    double length = takeoff.junctions().stream().mapToDouble(j -> j.junction().lengthM()).sum();
    fact("Number", title.number(), fo);
    fact("Revision", title.revision(), fo);
    fact("Date of the model", title.date().isEmpty() ? Sheet.date(takeoff) : title.date(), fo);
    fact("Drawn", title.drawn(), fo);
    fact("Checked", title.checked(), fo);
    for (ModelInfo model : takeoff.models()) {
      fact("Model", model.file() + ", " + model.schema() + (model.application().isBlank() ? "" : ", written by " + model.application()),
          fo);
    }
    fact("Roof system", takeoff.system().name(), fo);
    fact("Roof", CountText.of(faces.size(), "face") + ", " + MeasureFormat.formatArea(faces.stream().mapToDouble(RoofFace::areaM2).sum())
        + " of surface, " + MeasureFormat.formatArea(faces.stream().mapToDouble(RoofFace::planAreaM2).sum()) + " in plan", fo);
    fact("Junctions", CountText.of(takeoff.junctions().size(), "line") + ", " + content.units().length(length), fo);
    if (!takeoff.joints().isEmpty()) {
      double joints = takeoff.joints().stream().mapToDouble(j -> j.junction().junction().lengthM()).sum();
      fact("Panel joints", CountText.of(takeoff.joints().size(), "line") + " within faces, " + content.units().length(joints), fo);
    }
    fact("Nodes", Integer.toString(takeoff.nodes().size()), fo);
    fact("Details in use", Integer.toString(content.details().size()), fo);
    fact("Findings", FindingsSection.counts(takeoff.findings()), fo);
    fact("Program", Program.NAME + " " + takeoff.version(), fo);
  }

  private static void fact(String name, String value, FoWriter fo) {
    if (!OneLine.of(value).isBlank()) {
      fo.block(name, "font-size", "0.8em", "color", "#44525f", "keep-with-next.within-column", "always");
      fo.block(value, "space-after", "1.6mm");
    }
  }
}
