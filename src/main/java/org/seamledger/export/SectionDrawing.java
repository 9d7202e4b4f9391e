package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.section.SectionCaption;
import org.seamledger.export.section.SectionCut;
import org.seamledger.export.section.SectionFigure;
import org.seamledger.export.section.SectionStyle;
import org.seamledger.export.section.SectionView;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.takeoff.Takeoff;

/**
 * A section square to a junction's line, through its detail, to scale, as SVG. Every number comes from the roof system in force and the
 * model; what is drawn is what the detail has.
 */
public final class SectionDrawing {

  private SectionDrawing() {
  }

  /**
   * The drawing as SVG text; the same takeoff gives the same text.
   *
   * @throws IllegalArgumentException where there is no junction of that id
   */
  public static String svg(Takeoff takeoff, String junctionId) {
    DetailedJunction found = takeoff.detailed().stream().filter(j -> j.junction().junction().id().equals(junctionId)).findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no junction has the id " + junctionId));
    return drawn(takeoff, found);
  }

  /** Writes the drawing as UTF-8 and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, String junctionId, OutputStream out) throws IOException {
    out.write(svg(takeoff, junctionId).getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private static String drawn(Takeoff takeoff, DetailedJunction detailed) {
    SectionView view = SectionView.fit(takeoff.system(), detailed, SectionCut.of(takeoff, detailed));
    String id = detailed.junction().junction().id();
    String title = "Section at " + id + ": " + detailed.detail().title();
    Svg sheet = Sheet.begin(Sheet.HEIGHT, view.denominator(), title,
        "Section square to the line of junction " + id + ", " + detailed.junction().type().label(), SectionStyle.STYLE);
    SectionStyle.hatches(sheet);
    Svg svg = new Svg();
    List<String> unseen = SectionFigure.draw(view, takeoff.system(), detailed.detail(),
        takeoff.quantities().byJunction().get(id).fasteners(), svg);
    SectionCaption.draw(takeoff, detailed, unseen, view.denominator(), svg);
    return sheet.toString() + svg + "</svg>\n";
  }
}
