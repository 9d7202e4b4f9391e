package org.seamledger.export.submittal;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.takeoff.Takeoff;

/** A takeoff as drawing sheets and lists for review and for the crew, in one PDF with bookmarks and links. */
public final class SubmittalPdf {

  /** When a document counts as made whose model states no date. */
  private static final LocalDate UNKNOWN = LocalDate.of(2000, 1, 1);

  private final SubmittalContent content;
  private final List<SubmittalPages> parts = new ArrayList<>();

  private SubmittalPdf(SubmittalContent content) {
    this.content = content;
    content.setup().pages().forEach(set -> parts.add(part(set)));
  }

  /**
   * Writes the document and flushes; leaves {@code out} open. The same takeoff and setup give the same bytes.
   *
   * @throws IOException if {@code out} can't be written
   */
  public static void write(Takeoff takeoff, SubmittalSetup setup, OutputStream out) throws IOException {
    SubmittalContent content = SubmittalContent.of(takeoff, setup);
    SubmittalPdf pdf = new SubmittalPdf(content);
    PdfPress.print(created(takeoff, setup.sheets()), pdf::document, out);
  }

  /** When a document counts as made: the date of the sheets, or else of the model. */
  static Date created(Takeoff takeoff, SheetSetup sheets) {
    String stated = sheets.title().date().isEmpty() ? Sheet.date(takeoff) : sheets.title().date();
    LocalDate day;
    try {
      day = LocalDate.parse(stated);
    } catch (DateTimeParseException e) {
      // A title block may say "May 2024".
      day = UNKNOWN;
    }
    return Date.from(day.atStartOfDay(ZoneOffset.UTC).toInstant());
  }

  private SubmittalPages part(PageSet set) {
    return switch (set) {
      case COVER -> new CoverPages(content);
      case CONTENTS -> new ContentsPages(content, parts);
      case KEY_PLAN -> new PlanPages(content);
      case SCHEDULE -> new SchedulePages(content);
      case DETAILS -> new DetailPages(content);
      case NODES -> new NodePages(content);
      case ORDER -> new OrderPages(content);
      case FINDINGS -> new FindingPages(content);
      case ASSUMPTIONS -> new AssumptionPages(content);
      case CAUTIONS -> new CautionPages(content);
    };
  }

  private void document(FoWriter fo) {
    fo.begin();
    // Names from right-to-left scripts are set in lines that run left to right.
    fo.open("root", "font-family", "DejaVu Sans", "font-size", content.frame().textSize() + "mm", "line-height", "1.35", "color", "#1b2530",
        "xml:lang", "en", "fox:country", "US");
    content.frame().masters(fo);
    fo.declare(content.title(), "Junctions, details and order of a standing-seam metal roof");
    fo.open("bookmark-tree");
    parts.forEach(p -> bookmark(p.outline(), fo));
    fo.close("bookmark-tree");
    for (SubmittalPages part : parts) {
      part.write(fo);
    }
    content.frame().finish();
    fo.close("root").end();
  }

  static void bookmark(OutlineEntry entry, FoWriter fo) {
    fo.open("bookmark", "internal-destination", entry.id(), "starting-state", "hide");
    fo.words("bookmark-title", entry.title());
    entry.below().forEach(e -> bookmark(e, fo));
    fo.close("bookmark");
  }
}
