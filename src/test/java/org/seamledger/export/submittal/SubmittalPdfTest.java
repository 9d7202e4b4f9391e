package org.seamledger.export.submittal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.SharedModels;
import org.seamledger.detail.Detail;
import org.seamledger.export.crew.CrewJob;
import org.seamledger.export.crew.CrewRequest;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.TitleBlock;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Severity;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.order.OrderLine;
import org.seamledger.order.OrderList;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;
import org.seamledger.weather.WeatherSeries;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** The submittal, read by PDFBox and judged by veraPDF (PDF/A-3b: ISO 19005-3; PDF/UA-1: ISO 14289-1). */
@Tag("slow")
class SubmittalPdfTest {

  private static final TitleBlock TITLE = new TitleBlock("North school", "S-12", "C", "", "A. Drafter", "B. Reviewer");
  private static final SheetSetup SHEETS = new SheetSetup(Paper.A3, DrawingUnits.BOTH, TITLE);
  private static final String BAD_NAME = "<b>\u05d2\u05d2 \u0633\u0642\u0641</b> & \u0000\u0007 \u6f22\u5b57 \ud83c\udfe0 \u202e]]>'\"";

  private static Takeoff takeoff(Path model) {
    return Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE);
  }

  private static Takeoff sample(String name) {
    return takeoff(Path.of("ifc-samples", name + ".ifc"));
  }

  private static byte[] pdf(Takeoff takeoff, SheetSetup sheets, List<PageSet> pages) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    SubmittalPdf.write(takeoff, new SubmittalSetup(sheets, pages, Optional.empty()), out);
    return out.toByteArray();
  }

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setSortByPosition(false);
      return stripper.getText(document);
    }
  }

  private static List<String> bookmarks(PDDocument document) {
    List<String> titles = new ArrayList<>();
    for (PDOutlineItem item : document.getDocumentCatalog().getDocumentOutline().children()) {
      titles.add(item.getTitle());
    }
    return titles;
  }

  private static void assertConforms(byte[] pdf) throws Exception {
    VeraGreenfieldFoundryProvider.initialise();
    for (PDFAFlavour flavour : List.of(PDFAFlavour.PDFA_3_B, PDFAFlavour.PDFUA_1)) {
      try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
          PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
        assertThat(validator.validate(parser).getTestAssertions().stream().filter(a -> a.getStatus() == TestAssertion.Status.FAILED)
            .map(a -> a.getRuleId() + " " + a.getMessage() + " " + a.getLocation()).distinct().limit(20).toList()).as(flavour.toString())
            .isEmpty();
      }
    }
  }

  @Test
  void isArchivableAndAccessibleWithEveryJunctionAndTheOrdersNumbers() throws Exception {
    isComplete(sample("school"));
  }

  @Test
  void isCompleteForARealModel() throws Exception {
    isComplete(takeoff(SharedModels.named("d05")));
  }

  private static void isComplete(Takeoff takeoff) throws Exception {
    byte[] pdf = pdf(takeoff, SHEETS, PageSet.ALL);
    assertConforms(pdf);
    String text = text(pdf);
    assertThat(text).contains(takeoff.junctions().stream().map(j -> j.junction().id()).toList());
    assertThat(text).contains(takeoff.nodes().stream().map(n -> n.id()).toList());
    assertThat(text).contains(takeoff.findings().stream().map(Finding::code).toList());
    String flat = text.replaceAll("\\s+", " ");
    for (OrderLine line : OrderList.of(takeoff).lines()) {
      assertThat(flat).contains(MeasureFormat.plain(line.net(), 3)).contains(MeasureFormat.plain(line.withWaste(), 3))
          .contains(line.order() + " " + line.orderUnit());
    }
    assertThat(flat).contains("North school", "S-12", "A. Drafter", "B. Reviewer", takeoff.system().panel().coverage().text());
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(bookmarks(document)).isEqualTo(PageSet.ALL.stream().map(PageSet::title).toList());
      assertThat(document.getDocumentCatalog().getLanguage()).startsWith("en");
      long drawings =
          takeoff.detailed().stream().map(d -> d.detail()).filter(d -> !d.equals(Detail.NONE)).map(Detail::id).distinct().count();
      PDOutlineItem details = Collections.list(Collections.enumeration(children(document))).get(PageSet.ALL.indexOf(PageSet.DETAILS));
      int sheets = 0;
      for (PDOutlineItem item : details.children()) {
        assertThat(item.findDestinationPage(document)).isNotNull();
        sheets++;
      }
      assertThat(sheets).isEqualTo((int) drawings);
      assertThat(links(document)).isGreaterThan(takeoff.junctions().size());
      int last = document.getNumberOfPages();
      PDFTextStripper stripper = new PDFTextStripper();
      for (int page : new int[] {1, 3, last}) {
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        assertThat(stripper.getText(document)).contains(page + " of " + last).contains("North school", "S-12");
      }
    }
  }

  private static List<PDOutlineItem> children(PDDocument document) {
    List<PDOutlineItem> items = new ArrayList<>();
    document.getDocumentCatalog().getDocumentOutline().children().forEach(items::add);
    return items;
  }

  private static int links(PDDocument document) throws IOException {
    int links = 0;
    for (PDPage page : document.getPages()) {
      links += (int) page.getAnnotations().stream().filter(a -> a instanceof PDAnnotationLink).count();
    }
    return links;
  }

  /** ISO 216 and ANSI/ASME Y14.1, laid across; a point is 1/72 in. */
  @ParameterizedTest
  @EnumSource(Paper.class)
  void everySheetHasThePapersTrueSize(Paper paper) throws IOException {
    Map<Paper, double[]> millimetres = Map.of(Paper.A3, new double[] {420, 297}, Paper.A4, new double[] {297, 210}, Paper.ARCH_C,
        new double[] {24 * 25.4, 18 * 25.4}, Paper.TABLOID, new double[] {17 * 25.4, 11 * 25.4}, Paper.LETTER,
        new double[] {11 * 25.4, 8.5 * 25.4});
    byte[] pdf = pdf(sample("gatehouse"), new SheetSetup(paper, DrawingUnits.US, TITLE), PageSet.ALL);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (PDPage page : document.getPages()) {
        PDRectangle box = page.getMediaBox();
        assertThat(box.getWidth() / 72 * 25.4).isCloseTo(millimetres.get(paper)[0], org.assertj.core.api.Assertions.within(0.05));
        assertThat(box.getHeight() / 72 * 25.4).isCloseTo(millimetres.get(paper)[1], org.assertj.core.api.Assertions.within(0.05));
      }
    }
  }

  @Test
  void givesTheSameBytesForTheSameTakeoff() throws IOException {
    Takeoff takeoff = sample("gatehouse");
    assertThat(pdf(takeoff, SHEETS, PageSet.ALL)).isEqualTo(pdf(takeoff, SHEETS, PageSet.ALL));
  }

  @Test
  void hasOnlyTheSetsThatAreAskedForInTheirOrder() throws Exception {
    byte[] pdf = pdf(sample("gatehouse"), SHEETS, PageSet.of("crew").orElseThrow());
    assertConforms(pdf);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(bookmarks(document)).startsWith("Cautions and hold points").doesNotContain("Findings", "Assumptions");
    }
    assertThat(PageSet.of("order, cover,order")).contains(List.of(PageSet.ORDER, PageSet.COVER));
    assertThat(PageSet.of("roof")).isEmpty();
    assertThat(PageSet.of("")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"all", "architect", "crew", "cover", "order,findings"})
  void saysSoWhereThereIsNoRoof(String pages, @TempDir Path folder) throws Exception {
    Path model = folder.resolve("empty.ifc");
    Files.writeString(model, """
        ISO-10303-21;HEADER;FILE_DESCRIPTION((''),'2;1');FILE_NAME('e','2024-05-31T08:00:00',(''),(''),'','','');
        FILE_SCHEMA(('IFC4'));ENDSEC;DATA;ENDSEC;END-ISO-10303-21;
        """);
    Takeoff empty = takeoff(model);
    byte[] pdf = pdf(empty, SheetSetup.DEFAULT, PageSet.of(pages).orElseThrow());
    assertConforms(pdf);
  }

  @Test
  void saysSoWhereThereAreNoFindings() throws Exception {
    byte[] pdf = pdf(sample("gatehouse").withFindings(List.of()), SHEETS, PageSet.ALL);
    assertConforms(pdf);
    assertThat(text(pdf).replaceAll("\\s+", " ")).contains("Findings None.");
  }

  @Test
  void namesOfEveryKindBreakNothing() throws Exception {
    Takeoff named = Takeoffs.boatHouse(BAD_NAME, List.of());
    byte[] pdf =
        pdf(named, new SheetSetup(Paper.LETTER, DrawingUnits.METRIC, new TitleBlock(BAD_NAME, BAD_NAME, BAD_NAME, BAD_NAME, BAD_NAME,
            BAD_NAME)), PageSet.ALL);
    assertConforms(pdf);
    assertThat(text(pdf)).contains("<b>");
  }

  @Test
  void tenThousandFindingsAreAllThere() throws Exception {
    Takeoff few = sample("gatehouse");
    List<Finding> many = new ArrayList<>();
    for (int i = 0; i < 10_000; i++) {
      Junction junction = few.junctions().get(i % few.junctions().size()).junction();
      many.add(new Finding("made/up-" + i % 7, Severity.WARNING, "Finding number %05d lies %s m off the line that it is about, at a place"
          .formatted(i, i / 7), junction.id(), List.of()));
    }
    byte[] pdf = pdf(few.withFindings(many), SHEETS, PageSet.ALL);
    String text = text(pdf).replaceAll("\\s+", " ");
    assertThat(text).contains(many.stream().map(f -> f.message().substring(0, 20)).collect(Collectors.toList()));
    assertThat(pdf.length).isLessThan(50_000_000);
  }

  /** Sheets for the roof: cautions first; each place with its counts; a hip as worked by hand: 18 closures, 126 rivets. */
  @Test
  void sheetsForTheRoof() throws Exception {
    Takeoff hip = sample("worked/regular-hip");
    WeatherSeries weather = WeatherSeries.parse(Files.readString(Path.of("ifc-samples", "weather.csv")), "weather.csv");
    CrewJob job = CrewJob.of(hip, new CrewRequest(0, Optional.of(weather), "", 3));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    CrewPdf.write(job, SHEETS, out);
    assertConforms(out.toByteArray());
    String text = text(out.toByteArray()).replaceAll("\\s+", " ");
    assertThat(text.indexOf("Before anybody goes up")).isBetween(0, text.indexOf("Day 1"));
    assertThat(text).contains("18 × closure; 2 × hip cap", "126 × closed-end rivet", "Day 1, 04-13",
        "Name, date, time:");
    hip.lines().forEach(j -> assertThat(text).contains(j.junction().junction().id()));
    assertThat(text.split("18 × closure; 2 × hip cap; 126 ", -1)).hasSize(5);
    ByteArrayOutputStream again = new ByteArrayOutputStream();
    CrewPdf.write(job, SHEETS, again);
    assertThat(again.toByteArray()).isEqualTo(out.toByteArray());
  }
}
