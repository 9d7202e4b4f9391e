package org.seamledger.export.section;

import java.util.List;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.export.wording.OverrideText;
import org.seamledger.export.wording.ScopeText;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.takeoff.Takeoff;

/** The words around a section: title, water path, source, legend, scale, scope. */
public final class SectionCaption {

  private final Takeoff takeoff;
  private final DetailedJunction detailed;
  private final Detail detail;
  private final Svg svg;

  private SectionCaption(Takeoff takeoff, DetailedJunction detailed, Svg svg) {
    this.takeoff = takeoff;
    this.detailed = detailed;
    this.detail = detailed.detail();
    this.svg = svg;
  }

  /** Adds the caption to a drawing at scale 1:{@code denominator}; {@code unseen} is what the figure can't show. */
  public static void draw(Takeoff takeoff, DetailedJunction detailed, List<String> unseen, double denominator, Svg svg) {
    SectionCaption caption = new SectionCaption(takeoff, detailed, svg);
    caption.titleBlock(detailed.junction().junction().id());
    caption.legend(unseen, denominator);
  }

  private void titleBlock(String id) {
    List<String> title = Sheet.wrapped(detail.title(), 150);
    svg.text(title.get(0).length() > 100 ? "title long" : "title", new Vec2(12, 15), title.get(0) + (title.size() > 1 ? " …" : ""));
    String elements = ElementNames.of(takeoff, detailed.junction().junction().elements());
    svg.text("subtitle", new Vec2(12, 21.5),
        "Junction " + id + " · " + detailed.junction().type().label() + " · "
            + MeasureFormat.formatBoth(detailed.junction().junction().lengthM())
            + " · " + elements + " · " + Sheet.models(takeoff));
    svg.text("subtitle", new Vec2(12, 27), "Detail " + detail.id() + (detailed.decided().isEmpty() ? "" : " · " + OverrideText.MARK) + " · "
        + takeoff.system().name() + " · cut square to the line, drawn from the numbers applied");
    if (detail.source().contains("common practice")) {
      svg.empty("rect", "class", "mark", "x", "354", "y", "19", "width", "52", "height", "8");
      svg.text("mark-text", new Vec2(358, 24.2), "COMMON PRACTICE");
    }
    svg.line("rule", new Vec2(10, 226), new Vec2(410, 226));
    double y = 268;
    if (!detail.waterPath().isEmpty()) {
      y = Sheet.paragraph(svg, "small", new Vec2(12, y), 3.2, 230,
          "Without any sealant: " + detail.waterPath() + (detail.metalFirst() ? "" : " Here metal alone is not enough."));
    }
    if (!detail.source().isEmpty()) {
      y = Sheet.paragraph(svg, "fine", new Vec2(12, y), 3.2, 230,
          "Source: " + detail.source() + ". Replace it by the panel maker's tested detail.");
    }
    Sheet.paragraph(svg, "fine", new Vec2(12, Math.max(y, 279)), 3.2, 235, ScopeText.SCOPE.text());
  }

  private void legend(List<String> unseen, double denominator) {
    double y = 232;
    svg.text("head", new Vec2(12, y), "Legend");
    String[][] areas = {{"tape", "tape, as laid, before it is pressed by " + takeoff.system().tape().compression()},
        {"soft", "non-curing sealant"},
        {"bead", "bead of gun sealant; a dashed ring marks an exposed one"}, {"deck", "deck, substrate"}, {"wall", "wall, curb, fascia"}};
    for (int i = 0; i < areas.length; i++) {
      double top = y + 3 + i * 5.2;
      svg.empty("rect", "class", areas[i][0], "x", "12", "y", Svg.number(top), "width", "10", "height", "3.6");
      svg.text("small", new Vec2(25, top + 2.7), areas[i][1]);
    }
    String[][] lines = {{"metal", "metal of the detail"}, {"panel", "panel"}, {"seam", "top of the seams, beyond the cut"}};
    for (int i = 0; i < lines.length; i++) {
      double top = y + 4.8 + i * 5.2;
      svg.line(lines[i][0], new Vec2(118, top), new Vec2(130, top));
      svg.text("small", new Vec2(133, top + 0.9), lines[i][1]);
    }
    Sheet.paragraph(svg, "fine", new Vec2(118, y + 21), 3.2, 58, "Sheets that touch are drawn apart, sheet thickness is not to scale.");
    Sheet.scaleBars(svg, new Vec2(330, y), denominator);
    if (!unseen.isEmpty()) {
      svg.text("head", new Vec2(206, y), "Also in this detail, not drawn");
      double at = y + 4.5;
      for (String words : unseen) {
        at = Sheet.paragraph(svg, "small", new Vec2(206, at), 3.2, 80, "– " + words);
      }
    }
  }
}
