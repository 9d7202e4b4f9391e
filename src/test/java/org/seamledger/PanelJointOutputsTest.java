package org.seamledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.export.CsvLedger;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.PlanDrawing;
import org.seamledger.export.TextReport;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.submittal.PageSet;
import org.seamledger.export.submittal.SubmittalPdf;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.export.workbook.WorkbookWriter;
import org.seamledger.graph.GraphForm;
import org.seamledger.order.OrderLine;
import org.seamledger.order.OrderList;
import org.seamledger.progress.Progress;
import org.seamledger.run.ModelCopies;
import org.seamledger.source.ModelFile;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** A gable of 40 ft whose panels are parted by a step on each side: two joints of 40 ft, in every output. */
class PanelJointOutputsTest {

  private static final Path MODEL = Path.of("ifc-samples", "worked", "ridge-40ft.ifc");

  @TempDir
  private static Path folder;
  private static Takeoff takeoff;
  private static List<String> ids;

  private interface Writer {
    void write(ByteArrayOutputStream out) throws IOException;
  }

  @BeforeAll
  static void analyse() throws IOException {
    Path system = Files.writeString(folder.resolve("s.json"), "{\"panel\": {\"movementGap\": \"4.2 mm\"}}");
    takeoff = Analysis.run(Inputs.ofFiles(List.of(MODEL)).withSystem(Optional.of(system)), Progress.NONE);
    ids = takeoff.joints().stream().map(j -> j.junction().junction().id()).toList();
    assertThat(ids).hasSize(2);
  }

  private static byte[] bytes(Writer writer) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    writer.write(out);
    return out.toByteArray();
  }

  private static String text(Writer writer) throws IOException {
    return new String(bytes(writer), StandardCharsets.UTF_8);
  }

  @Test
  void reportsAndTablesListThem() throws IOException {
    String report = text(out -> TextReport.write(takeoff, out));
    assertThat(report).contains("Joints     2 lines within faces, at which panels are divided, 24.384 m (80 ft 0 in)")
        .containsPattern("all +7 +52\\.933 .*\\R +step-joint +2 +24\\.384 +80 ft 0 in").contains("Panel joints, within faces");
    ids.forEach(id -> assertThat(report).containsPattern(id + " +12\\.192 +40 ft 0 in"));
    assertThat(text(out -> CsvLedger.write(takeoff, out)).lines().filter(l -> l.contains(",step-joint,12.192,"))).hasSize(2);
    try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(
        bytes(out -> WorkbookWriter.write(takeoff, Optional.empty(), DrawingUnits.METRIC, out))))) {
      XSSFSheet sheet = book.getSheet("Joints");
      StringBuilder words = new StringBuilder();
      sheet.forEach(row -> row.forEach(cell -> words.append(cell).append(' ')));
      assertThat(words).contains(ids).contains("Step joint");
    }
  }

  @Test
  void theLedgerHasThemBesideTheJunctions() throws IOException {
    JsonNode json = new ObjectMapper().readTree(bytes(out -> JsonLedger.write(takeoff, out)));
    assertThat(json.path("junctions")).hasSize(7);
    assertThat(json.path("joints").findValuesAsText("id")).containsAll(ids);
    assertThat(json.path("jointKinds")).singleElement().satisfies(k -> assertThat(k.path("id").asText()).isEqualTo("step-joint"));
    json.path("joints").forEach(j -> assertThat(j.path("holdPoints")).isNotEmpty());
  }

  /** Closures, flashing and cleat of both steps: 60 pieces more than the ridge's 60; 80 ft of flashing and of cleat. */
  @Test
  void theOrderHasTheirParts() {
    List<OrderLine> order = OrderList.of(takeoff).lines();
    assertThat(order).filteredOn(l -> l.id().equals("closure")).singleElement().satisfies(l -> {
      assertThat(l.net()).isEqualTo(120);
      assertThat(l.junctions()).containsAll(ids);
    });
    assertThat(order).filteredOn(l -> l.id().equals("trim:step flashing") || l.id().equals("trim:offset cleat")).hasSize(2)
        .allSatisfy(l -> assertThat(l.net()).isCloseTo(80 * 0.3048, org.assertj.core.api.Assertions.within(1e-6)));
    assertThat(order).filteredOn(l -> l.id().startsWith("fastener:")).anyMatch(l -> l.junctions().containsAll(ids));
  }

  @Test
  void drawingsAndSheetsShowThem() throws IOException {
    String plan = PlanDrawing.sheets(takeoff, SheetSetup.DEFAULT).get(0);
    assertThat(plan).contains("panel joints</text>").contains("ridge; step joint</text>");
    ids.forEach(id -> assertThat(plan).containsPattern("class=\"junction break seal-[a-z-]+\" data-id=\"" + id + "\""));
    byte[] pdf = bytes(out -> SubmittalPdf.write(takeoff, new SubmittalSetup(SheetSetup.DEFAULT, List.of(PageSet.values()),
        Optional.empty()), out));
    try (PDDocument document = Loader.loadPDF(pdf)) {
      String words = new PDFTextStripper().getText(document);
      assertThat(words).contains("Schedule of panel joints, within faces").contains("2 lines within faces").contains("Detail step-joint");
      assertThat(words).contains(ids);
    }
  }

  @Test
  void modelsAndGraphsHoldThem() throws IOException {
    String copy = text(out -> ModelCopies.write(takeoff, 0, new ModelFile(MODEL), out));
    ids.forEach(id -> assertThat(copy).containsPattern("IFCELEMENTASSEMBLY\\('[^']{22}',[^;]*'step joint " + id + "'"));
    assertThat(copy).contains("IFCCLASSIFICATIONREFERENCE").contains("'step-joint'");
    String turtle = text(out -> GraphForm.TURTLE.write(takeoff, out));
    assertThat(turtle.split("sl:PanelJoint", -1)).hasSize(3);
    assertThat(turtle.split("sl:Junction\\b", -1)).hasSize(8);
  }
}
