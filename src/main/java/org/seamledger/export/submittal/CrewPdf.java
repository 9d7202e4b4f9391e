package org.seamledger.export.submittal;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.crew.CrewJob;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.wording.ScopeText;

/**
 * Sheets for those who work on the roof, as PDF: cautions first, the roof plan, the days with what is carried up, the sealing windows, and
 * for each detail and each kind of node in use its drawing, its order of work with hold points, and its places with their counts and codes.
 */
public final class CrewPdf {

  private static final String CAUTIONS = "crew-cautions";

  private final CrewJob job;
  private final SubmittalContent content;
  private final List<SubmittalPages> parts = new ArrayList<>();

  private CrewPdf(CrewJob job, SheetSetup sheets) {
    this.job = job;
    this.content = SubmittalContent.of(job.takeoff(), new SubmittalSetup(sheets, List.of(PageSet.KEY_PLAN), Optional.empty()));
    parts.add(new PlanPages(content));
    parts.add(new CrewDayPages(job, content));
    parts.add(new CrewKindPages(job.takeoff(), content));
  }

  /**
   * Writes the document and flushes; leaves {@code out} open. The same job and setup give the same bytes.
   *
   * @throws IOException if {@code out} can't be written
   */
  public static void write(CrewJob job, SheetSetup sheets, OutputStream out) throws IOException {
    CrewPdf pdf = new CrewPdf(job, sheets);
    PdfPress.print(SubmittalPdf.created(job.takeoff(), sheets), pdf::document, out);
  }

  private void document(FoWriter fo) {
    fo.begin();
    fo.open("root", "font-family", "DejaVu Sans", "font-size", content.frame().textSize() + "mm", "line-height", "1.35", "color", "#1b2530",
        "xml:lang", "en", "fox:country", "US");
    content.frame().masters(fo);
    fo.declare(content.title("sheets for the roof"), "Order of work, hold points and counts of a metal roof");
    fo.open("bookmark-tree");
    SubmittalPdf.bookmark(new OutlineEntry("Cautions", CAUTIONS), fo);
    parts.forEach(p -> SubmittalPdf.bookmark(p.outline(), fo));
    fo.close("bookmark-tree");
    content.frame().text("Cautions", 1, () -> cautions(fo), fo);
    for (SubmittalPages part : parts) {
      part.write(fo);
    }
    content.frame().finish();
    fo.close("root").end();
  }

  private void cautions(FoWriter fo) {
    FoHeadings.title(fo, CAUTIONS, "Before anybody goes up");
    for (String sentence : ScopeText.SAFETY.text().split("(?<=\\.) ")) {
      CautionPages.caution(sentence, fo);
    }
    FoHeadings.paragraph(fo, ScopeText.SCOPE.text());
    FoHeadings.head(fo, CAUTIONS + "-use", "How to use these sheets");
    FoHeadings.paragraph(fo,
        "Each kind of junction and of node has its drawing, its order of work, and its places with what each of them takes. "
            + "☐ is a hold point: look before going on. ■ can't be skipped: whoever looked writes name, date and time before the "
            + "step after it is begun. The square code at a place opens it in the page for the roof.");
    FoHeadings.paragraph(fo, "Days, rates and times to wait are estimates" + (job.windows().isEmpty() ? ", without weather" : "")
        + ". The data sheets of tape and sealants govern; measure the metal before sealing, not the air.");
    if (!job.takeoff().sequence().cycle().isEmpty()) {
      CautionPages.caution("No order of work does all of this: " + String.join(", ", job.takeoff().sequence().cycle()), fo);
    }
  }
}
