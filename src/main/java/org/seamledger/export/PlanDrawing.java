package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.seamledger.export.plan.PlanSheets;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.takeoff.Takeoff;

/** The roof from above, to scale, as SVG: faces with slope and fall, seams, every junction line with its length. */
public final class PlanDrawing {

  private PlanDrawing() {
  }

  /** The sheet with the whole roof, as SVG text; the same takeoff gives the same text. */
  public static String svg(Takeoff takeoff) {
    return sheets(takeoff, SheetSetup.DEFAULT).get(0);
  }

  /** Every sheet as SVG text: the whole roof, its parts where it is large, the rest of the list of short lines. */
  public static List<String> sheets(Takeoff takeoff, SheetSetup setup) {
    return PlanSheets.draw(takeoff, setup);
  }

  /** Every sheet in one HTML document, a page each, to print at once. */
  public static String document(Takeoff takeoff, SheetSetup setup) {
    StringBuilder html = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Roof plan: ")
        .append(Sheet.escaped(Sheet.models(takeoff))).append("</title>\n<style>body { margin: 0 } svg { display: block; break-after: page }"
            + "</style></head><body>\n");
    sheets(takeoff, setup).forEach(html::append);
    return html.append("</body></html>\n").toString();
  }

  /** Writes text as UTF-8 and flushes; leaves {@code out} open. */
  public static void write(String text, OutputStream out) throws IOException {
    out.write(text.getBytes(StandardCharsets.UTF_8));
    out.flush();
  }
}
