package org.seamledger.export.plan;

import java.util.stream.Collectors;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.KeyPlan;
import org.seamledger.export.sheet.Palette;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.SheetSubject;
import org.seamledger.export.sheet.Svg;
import org.seamledger.takeoff.Takeoff;

/** The roof from above in small, without words: faces, and every line in the colour of what seals it. */
public final class PlanThumbnail {

  private static final double WIDTH = 60;
  private static final double HEIGHT = 45;
  private static final double MARGIN = 2;

  private PlanThumbnail() {
  }

  /** An SVG document of 60 × 45 mm. */
  public static String svg(Takeoff takeoff) {
    Svg svg = new Svg().open("svg", "xmlns", "http://www.w3.org/2000/svg", "viewBox", "0 0 60 45", "width", "60mm", "height", "45mm");
    svg.style(".key-face { fill: #e9eef1; stroke: none; fill-rule: evenodd }\n"
        + Palette.seals().stream().map(Palette.Entry::css).collect(Collectors.joining()));
    KeyPlan plan = new KeyPlan(SheetSubject.of(takeoff), new PaperBox(MARGIN, MARGIN, WIDTH - MARGIN, HEIGHT - MARGIN));
    plan.draw(svg);
    for (DetailedJunction j : takeoff.lines()) {
      svg.polyline("seal-" + SealClass.of(j), j.junction().junction().path().stream().map(p -> plan.paper(p.x(), p.y())).toList());
    }
    return svg.close("svg").toString();
  }
}
