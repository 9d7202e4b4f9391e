package org.seamledger.export.submittal;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.seamledger.journal.EventKind;
import org.seamledger.journal.PlaceState;
import org.seamledger.journal.SiteEvent;
import org.seamledger.journal.SiteRecord;
import org.seamledger.ledger.OwnersRecord;

/** The record of the work on a roof for its owner, as PDF: who, when, where, in what weather, with which lots, and what deviates. */
public final class RecordPdf {

  /** When a record counts as made that has no events. */
  private static final Instant UNKNOWN = Instant.parse("2000-01-01T00:00:00Z");
  private static final String MARGIN = "15mm";

  private final OwnersRecord owners;
  private final FoWriter fo;

  private RecordPdf(OwnersRecord owners, FoWriter fo) {
    this.owners = owners;
    this.fo = fo;
  }

  /**
   * Writes the document and flushes; leaves {@code out} open. The same record gives the same bytes.
   *
   * @param photos the picture of a hash, JPEG
   * @throws IOException if {@code out} can't be written
   */
  public static void write(OwnersRecord owners, Function<String, Optional<byte[]>> photos, OutputStream out) throws IOException {
    List<SiteEvent> events = owners.record().events();
    Instant last = events.isEmpty() ? UNKNOWN : Instant.parse(events.get(events.size() - 1).text("received"));
    PdfPress.print(Date.from(last.truncatedTo(ChronoUnit.SECONDS)), fo -> new RecordPdf(owners, fo).document(photos), out);
  }

  /** An instant as it is read: to the minute, in the zone of the record, which is UTC. */
  static String time(String instant) {
    return instant.length() < 16 ? instant : instant.substring(0, 10) + " " + instant.substring(11, 16);
  }

  static String metres(double length) {
    return String.format(Locale.ROOT, "%.2f m", length);
  }

  private void document(Function<String, Optional<byte[]>> photos) {
    fo.begin();
    fo.open("root", "font-family", "DejaVu Sans", "font-size", "2.9mm", "line-height", "1.35", "color", "#1b2530", "xml:lang", "en",
        "fox:country", "US");
    fo.open("layout-master-set").open("simple-page-master", "master-name", "page", "page-width", "210mm", "page-height", "297mm",
        "margin", MARGIN);
    fo.empty("region-body", "margin-bottom", "8mm").empty("region-after", "extent", "5mm");
    fo.close("simple-page-master").close("layout-master-set");
    fo.declare("Record of the work on " + owners.project(), "Who did, looked at and signed off what on a standing-seam metal roof");
    fo.open("page-sequence", "master-reference", "page", "id", "all");
    fo.open("static-content", "flow-name", "xsl-region-after", "role", "artifact");
    fo.open("block", "font-size", "2.5mm", "text-align", "end").text(owners.project() + ", page ").empty("page-number").text(" of ")
        .empty("page-number-citation-last", "ref-id", "all").close("block").close("static-content");
    fo.open("flow", "flow-name", "xsl-region-body");
    cover();
    events("Weather", EventKind.WEATHER);
    events("Sealant lots", EventKind.LOT);
    events("Deviations, and what was not good", EventKind.DEVIATION, EventKind.FAILURE);
    places();
    RecordPlaces details = new RecordPlaces(owners, photos, fo);
    owners.record().places().stream().filter(p -> !p.events().isEmpty()).forEach(details::write);
    details.rest();
    fo.close("flow").close("page-sequence").close("root").end();
  }

  private void cover() {
    SiteRecord record = owners.record();
    SiteRecord.Coverage c = record.coverage();
    FoHeadings.title(fo, "record", "Record of the work on the roof of " + owners.project());
    FoHeadings.labelled(fo, "Model", owners.analysis().title() + ", " + owners.analysis().revision().words());
    FoHeadings.labelled(fo, "Length of all lines", metres(c.lengthM()));
    FoHeadings.labelled(fo, "Looked at", metres(c.checkedM()) + share(c.checkedM(), c.lengthM()));
    FoHeadings.labelled(fo, "Signed off", metres(c.signedM()) + share(c.signedM(), c.lengthM()));
    String conflicts = c.conflicts() > 0 ? "; at " + c.conflicts() + " places two people disagree" : "";
    FoHeadings.labelled(fo, "Hold points open", c.openPoints() + conflicts);
    FoHeadings.labelled(fo, "Events", record.events().size() + ", the last with the hash " + record.head());
    FoHeadings.labelled(fo, "Result", "SHA-256 " + owners.result());
    FoHeadings.paragraph(fo, "Nothing in this record was changed after it was said: each event holds the hash of the one before it. The "
        + "same record as JSON has all of them, and the command record checks it. Times are in UTC, as the telephones told them. A tick is "
        + "no inspection by the designer or the maker.");
  }

  private static String share(double some, double all) {
    return all <= 0 ? "" : String.format(Locale.ROOT, " (%.0f %%)", 100 * some / all);
  }

  private void events(String title, EventKind... kinds) {
    List<SiteEvent> events = owners.events(kinds);
    FoHeadings.head(fo, "events-" + kinds[0].word(), title);
    if (events.isEmpty()) {
      FoHeadings.paragraph(fo, "None was noted.");
      return;
    }
    FoTable table = FoTable.open(fo, FoTable.Column.words("When", 16), FoTable.Column.words("Who", 18), FoTable.Column.words("Where", 14),
        FoTable.Column.words("What", 52));
    for (SiteEvent e : events) {
      String what = kinds.length > 1 ? RecordPlaces.said(e.kind()) + ": " : "";
      table.row().cell(time(e.at())).cell(owners.author(e)).cell(e.text("place").isEmpty() ? "whole roof" : e.text("place"))
          .cell(what + e.text("text")).endRow();
    }
    table.close();
  }

  private void places() {
    FoHeadings.head(fo, "places", "Lines and nodes");
    List<PlaceState> places = owners.record().places();
    if (places.isEmpty()) {
      FoHeadings.paragraph(fo, "This roof has none.");
      return;
    }
    FoTable table = FoTable.open(fo, FoTable.Column.words("Place", 14), FoTable.Column.words("Kind", 22),
        FoTable.Column.number("Length", 12),
        FoTable.Column.words("Hold points", 14), FoTable.Column.words("Stage", 18), FoTable.Column.words("Signed off", 30));
    for (PlaceState p : places) {
      long points = p.items().stream().filter(i -> !i.item().isStep()).count();
      table.row().cell(p.place().id()).cell(p.place().kind()).cell(p.place().isNode() ? "" : metres(p.place().lengthM()))
          .cell(points == 0 ? "none" : points - p.open().size() + " of " + points).cell(RecordPlaces.words(p.stage()))
          .cell(p.signature().map(s -> s.by() + ", " + time(s.at())).orElse("")).endRow();
    }
    table.close();
  }
}
