package org.seamledger.export.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFHyperlink;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.dhatim.fastexcel.Workbook;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.SharedModels;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.order.PriceList;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

/** Workbooks opened and calculated by another program: Apache POI. */
class WorkbookWriterTest {

  private static final List<String> SHEETS = List.of("Summary", "Order", "Junctions", "Nodes", "Faces", "Panels", "Findings",
      "Order by place", "Assumptions");

  private static final String PRICES = """
      id,unit,price,currency
      tape,roll,18.35,EUR
      bead-concealed,cartridge,6.415,EUR
      closure,piece,1.97,EUR
      fastener:*,piece,0.1125,EUR
      trim:*,m,14.2,EUR
      panel*,m2,31.05,EUR
      """;

  @TempDir
  Path folder;

  private static byte[] bytes(Takeoff takeoff, Optional<PriceList> prices, DrawingUnits units) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    WorkbookWriter.write(takeoff, prices, units, out);
    return out.toByteArray();
  }

  private static Opened opened(Takeoff takeoff, Optional<PriceList> prices, DrawingUnits units) throws IOException {
    return Opened.of(bytes(takeoff, prices, units));
  }

  private static Takeoff takeoff(Path... models) {
    return Analysis.run(Inputs.ofFiles(List.of(models)), Progress.NONE);
  }

  private static JsonNode json(Takeoff takeoff, Optional<PriceList> prices) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    JsonLedger.write(takeoff, prices, out);
    return new ObjectMapper().readTree(out.toByteArray());
  }

  static List<Path> samples() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("ifc-samples"))) {
      return files.filter(f -> f.toString().endsWith(".ifc")).sorted().toList();
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void calculatesTheNumbersOfTheResult(Path model) throws IOException {
    Takeoff takeoff = takeoff(model);
    agrees(takeoff, Optional.empty());
    agrees(takeoff, Optional.of(PriceList.parse(PRICES, "prices.csv")));
  }

  @Tag("slow")
  @Test
  void calculatesTheNumbersOfSharedModels() throws IOException {
    for (String name : List.of("d05", "d07")) {
      agrees(takeoff(SharedModels.named(name)), Optional.of(PriceList.parse(PRICES, "prices.csv")));
    }
  }

  private static void agrees(Takeoff takeoff, Optional<PriceList> prices) throws IOException {
    JsonNode ledger = json(takeoff, prices);
    try (Opened book = opened(takeoff, prices, DrawingUnits.METRIC)) {
      assertThat(book.names()).isEqualTo(SHEETS);
      book.noErrors();
      order(book, ledger);
      rows(book, "Junctions", "Junction", ledger.path("junctions"));
      rows(book, "Nodes", "Node", ledger.path("nodes"));
      rows(book, "Faces", "Face", ledger.path("roofFaces"));
      assertThat(book.rows("Findings")).isEqualTo(ledger.path("findings").size());
      double length = 0;
      for (JsonNode j : ledger.path("junctions")) {
        length += j.path("lengthM").doubleValue();
      }
      if (length > 0) {
        assertThat(book.number("Junctions", 2, book.column("Junctions", "Length, m"))).as("sum of lengths").isCloseTo(length, within(1e-3));
      }
      links(book);
    }
  }

  private static void order(Opened book, JsonNode ledger) {
    assertThat(book.rows("Order")).isEqualTo(ledger.path("order").size());
    int row = SheetTable.HEAD + 1;
    for (JsonNode line : ledger.path("order")) {
      String id = line.path("id").textValue();
      assertThat(book.text("Order", row, "Line")).isEqualTo(id);
      assertThat(book.number("Order", row, "Net")).as(id).isCloseTo(line.path("net").doubleValue(), within(1e-3));
      assertThat(book.number("Order", row, "Waste, %")).as(id).isCloseTo(line.path("wastePercent").doubleValue(), within(1e-6));
      assertThat(book.number("Order", row, "With waste")).as(id).isCloseTo(line.path("withWaste").doubleValue(), within(2e-3));
      assertThat(book.number("Order", row, "Pack")).as(id).isCloseTo(line.path("pack").doubleValue(), within(1e-3));
      assertThat(book.number("Order", row, "Order")).as(id).isEqualTo(line.path("order").doubleValue());
      if (line.has("cost")) {
        assertThat(book.number("Order", row, "Cost")).as(id).isCloseTo(line.path("cost").doubleValue(), within(0.0001));
      } else {
        assertThat(book.text("Order", row, "Cost")).as(id).isEqualTo("no price");
      }
      row++;
    }
  }

  /** As many rows as the result has, with its ids in its order, and numbers that are numbers. */
  private static void rows(Opened book, String sheet, String id, JsonNode items) {
    assertThat(book.rows(sheet)).isEqualTo(items.size());
    int row = SheetTable.HEAD + 1;
    for (JsonNode item : items) {
      assertThat(book.text(sheet, row, id)).isEqualTo(item.path("id").textValue());
      if (sheet.equals("Junctions")) {
        assertThat(book.number(sheet, row, "Length, m")).isCloseTo(item.path("lengthM").doubleValue(), within(1e-3));
      }
      if (!sheet.equals("Faces")) {
        int count = 0;
        for (JsonNode f : item.path("fasteners")) {
          count += f.path("count").intValue();
        }
        assertThat(book.number(sheet, row, "Fasteners")).isEqualTo(count);
      }
      row++;
    }
  }

  /** Every link leads to a cell that has the text of the link. */
  private static void links(Opened book) {
    for (Sheet sheet : book.workbook()) {
      for (XSSFHyperlink link : ((XSSFSheet) sheet).getHyperlinkList()) {
        CellReference to = new CellReference(link.getLocation());
        CellReference from = new CellReference(link.getCellRef());
        Cell target = book.workbook().getSheet(to.getSheetName()).getRow(to.getRow()).getCell(to.getCol());
        Cell source = sheet.getRow(from.getRow()).getCell(from.getCol());
        assertThat(target.getStringCellValue()).as(link.getLocation()).isEqualTo(source.getStringCellValue());
      }
    }
  }

  /** Nothing costs nothing: without a price there is no sum, and the first price makes one. */
  @Test
  void noPriceNoSum() throws IOException {
    try (Opened book = opened(takeoff(Path.of("ifc-samples/gatehouse.ifc")), Optional.empty(), DrawingUnits.BOTH)) {
      assertThat(book.text("Order", 2, "Cost")).isEmpty();
      int row = book.find("Order", "tape");
      book.set("Order", row, "Price", 10);
      assertThat(book.number("Order", 2, "Cost")).isCloseTo(10 * book.number("Order", row, "Order"), within(1e-9));
    }
  }

  /** Twice the waste, half the pack: by hand 100 m and 20 % are 120 m, in rolls of 15.24 m (50 ft) 8 rolls. */
  @Test
  void followsWhatAnEstimatorChanges() throws IOException {
    Takeoff takeoff = takeoff(Path.of("ifc-samples/school.ifc"));
    try (Opened book = opened(takeoff, Optional.of(PriceList.parse(PRICES, "prices.csv")), DrawingUnits.BOTH)) {
      int row = book.find("Order", "tape");
      book.set("Order", row, "Net", 100);
      book.set("Order", row, "Waste, %", 20);
      assertThat(book.number("Order", row, "With waste")).isCloseTo(120, within(1e-9));
      assertThat(book.number("Order", row, "Order")).isEqualTo(8);
      assertThat(book.number("Order", row, "Cost")).isCloseTo(8 * 18.35, within(1e-9));
      double total = book.number("Order", 2, book.column("Order", "Cost"));
      book.set("Order", row, "Price", 19.35);
      assertThat(book.number("Order", row, "Cost")).isCloseTo(8 * 19.35, within(1e-9));
      assertThat(book.number("Order", 2, book.column("Order", "Cost"))).isCloseTo(total + 8, within(1e-6));
      book.set("Order", row, "Pack", 120);
      assertThat(book.number("Order", row, "Order")).as("one pack exactly").isEqualTo(1);
      book.set("Order", row, "Waste, %", 20.01);
      assertThat(book.number("Order", row, "Order")).isEqualTo(2);
    }
  }

  @ParameterizedTest
  @EnumSource(DrawingUnits.class)
  void statesTheChosenUnits(DrawingUnits units) throws IOException {
    Takeoff takeoff = takeoff(Path.of("ifc-samples/gatehouse.ifc"));
    try (Opened book = opened(takeoff, Optional.empty(), units)) {
      List<String> heads = book.heads("Junctions");
      assertThat(heads.contains("Length, m")).isEqualTo(units != DrawingUnits.US);
      assertThat(heads.contains("Length, ft")).isEqualTo(units != DrawingUnits.METRIC);
      if (units != DrawingUnits.METRIC) {
        double metres = takeoff.junctions().get(0).junction().lengthM();
        // A foot is 0.3048 m (NIST SP 811).
        assertThat(book.number("Junctions", SheetTable.HEAD + 1, "Length, ft")).isCloseTo(metres / 0.3048, within(1e-6));
      }
    }
  }

  @Test
  void headsStayInViewAndFilter() throws IOException {
    try (Opened book = opened(takeoff(Path.of("ifc-samples/gatehouse.ifc")), Optional.empty(), DrawingUnits.BOTH)) {
      for (String name : SHEETS.subList(1, SHEETS.size())) {
        XSSFSheet sheet = book.workbook().getSheet(name);
        assertThat(sheet.getPaneInformation().isFreezePane()).as(name).isTrue();
        assertThat(sheet.getPaneInformation().getHorizontalSplitTopRow()).as(name).isEqualTo((short) (SheetTable.HEAD + 1));
        assertThat(sheet.getCTWorksheet().getAutoFilter().getRef()).as(name).isEqualTo("A" + (SheetTable.HEAD + 1) + ":"
            + Cells.letter(book.heads(name).size() - 1) + (SheetTable.HEAD + 1 + book.rows(name)));
        assertThat(sheet.getRepeatingRows().getFirstRow()).as(name).isEqualTo(SheetTable.HEAD);
        assertThat(sheet.getPrintSetup().getLandscape()).as(name).isTrue();
      }
    }
  }

  /** Each value of the roof system is there, with where it comes from. */
  @Test
  void everyAssumptionHasItsSource() throws IOException {
    Takeoff takeoff = Takeoffs.boatHouse();
    try (Opened book = opened(takeoff, Optional.empty(), DrawingUnits.BOTH)) {
      assertThat(book.rows("Assumptions")).isGreaterThan(60);
      for (int row = SheetTable.HEAD + 1; row <= SheetTable.HEAD + book.rows("Assumptions"); row++) {
        assertThat(book.text("Assumptions", row, "Source")).as(book.text("Assumptions", row, "Value")).isNotBlank();
      }
    }
  }

  /** Names as models have them: a formula's signs, control characters, right-to-left, and more than a cell holds. */
  @ParameterizedTest
  @org.junit.jupiter.params.provider.ValueSource(strings = {"=1+1", "+A1", "-2", "@SUM(A1)", "<b>&amp;\"", "a\u0000b\u0008c\uFFFE",
      "\u05D2\u05D2 \u202Eabc\u202C", "line one\nline two", "half \uD83D", "_x0041_ and \uD83C\uDFE0"})
  void namesStayText(String name) throws IOException {
    try (Opened book = opened(Takeoffs.boatHouse(name), Optional.empty(), DrawingUnits.BOTH)) {
      book.noErrors();
      String shown = book.text("Junctions", SheetTable.HEAD + 1, "Elements");
      assertThat(shown).contains(name.codePoints().limit(1).mapToObj(Character::toString).findFirst().orElseThrow());
      int column = book.column("Junctions", "Elements");
      assertThat(book.cell("Junctions", SheetTable.HEAD + 1, column).getCellType()).isEqualTo(CellType.STRING);
    }
  }

  @Test
  void cutsTextThatNoCellHolds() throws IOException {
    Finding wordy = Finding.of(Code.UNCLASSIFIED, "x".repeat(40_000), "0roof").at("rake1");
    try (Opened book = opened(Takeoffs.boatHouse().withFindings(List.of(wordy)), Optional.empty(), DrawingUnits.BOTH)) {
      assertThat(book.text("Findings", SheetTable.HEAD + 1, "Finding")).hasSize(32_767).endsWith("…");
    }
    String surrogates = Cells.clean("\uD83C\uDFE0".repeat(20_000));
    assertThat(surrogates.length()).isLessThanOrEqualTo(32_767);
    assertThat(Character.isHighSurrogate(surrogates.charAt(surrogates.length() - 2))).as("half a character").isFalse();
  }

  @Test
  void tenThousandFindings() throws IOException {
    Takeoff takeoff = Takeoffs.boatHouse();
    List<Finding> many = new ArrayList<>();
    for (int i = 0; i < 10_000; i++) {
      many.add(Finding.of(Code.UNCLASSIFIED, "no shape claims line " + i, "0roof").at("rake1"));
    }
    try (Opened book = opened(takeoff.withFindings(many), Optional.empty(), DrawingUnits.BOTH)) {
      assertThat(book.rows("Findings")).isEqualTo(10_000);
      links(book);
    }
  }

  @Test
  void noRoof() throws IOException {
    Path model = Files.writeString(folder.resolve("bare.ifc"), """
        ISO-10303-21;HEADER;FILE_DESCRIPTION((''),'2;1');FILE_NAME('bare','','',(''),'','','');FILE_SCHEMA(('IFC4'));ENDSEC;DATA;
        #1=IFCPROJECT('0hGinPNwiSDrAurecV39RR',$,'Bare',$,$,$,$,$,$);
        ENDSEC;END-ISO-10303-21;
        """);
    agrees(takeoff(model), Optional.empty());
  }

  @Test
  void refusesWhatIsNoNumber() throws IOException {
    try (Workbook book = new Workbook(new ByteArrayOutputStream(), "x", null)) {
      var sheet = book.newWorksheet("x");
      assertThatThrownBy(() -> Cells.value(sheet, 0, 0, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
      assertThatThrownBy(() -> Cells.value(sheet, 0, 0, Double.POSITIVE_INFINITY)).isInstanceOf(IllegalArgumentException.class);
      sheet.value(0, 0, 1);
    }
  }

  @Test
  void sameResultSameBytes() throws IOException {
    Path model = Path.of("ifc-samples/gatehouse.ifc");
    assertThat(bytes(takeoff(model), Optional.empty(), DrawingUnits.BOTH))
        .isEqualTo(bytes(takeoff(model), Optional.empty(), DrawingUnits.BOTH));
  }

  /** A workbook in another program. */
  private record Opened(XSSFWorkbook workbook) implements AutoCloseable {

    static Opened of(byte[] bytes) throws IOException {
      return new Opened(new XSSFWorkbook(new java.io.ByteArrayInputStream(bytes)));
    }

    List<String> names() {
      List<String> names = new ArrayList<>();
      workbook.forEach(s -> names.add(s.getSheetName()));
      return names;
    }

    Cell cell(String sheet, int row, int column) {
      Row r = workbook.getSheet(sheet).getRow(row);
      return r == null ? null : r.getCell(column);
    }

    List<String> heads(String sheet) {
      List<String> heads = new ArrayList<>();
      workbook.getSheet(sheet).getRow(SheetTable.HEAD).forEach(c -> heads.add(c.getStringCellValue()));
      return heads;
    }

    int column(String sheet, String head) {
      assertThat(heads(sheet)).as(sheet).contains(head);
      return heads(sheet).indexOf(head);
    }

    int rows(String sheet) {
      return workbook.getSheet(sheet).getLastRowNum() - SheetTable.HEAD;
    }

    int find(String sheet, String id) {
      int row = SheetTable.HEAD + 1;
      while (!cell(sheet, row, 0).getStringCellValue().equals(id)) {
        row++;
      }
      return row;
    }

    String text(String sheet, int row, String head) {
      return workbook.getCreationHelper().createFormulaEvaluator().evaluate(cell(sheet, row, column(sheet, head))).getStringValue();
    }

    double number(String sheet, int row, String head) {
      return number(sheet, row, column(sheet, head));
    }

    /** What a cell with a number, or with a formula that gives one, says. */
    double number(String sheet, int row, int column) {
      var value = workbook.getCreationHelper().createFormulaEvaluator().evaluate(cell(sheet, row, column));
      assertThat(value.getCellType()).as(sheet + " " + row + " " + column).isEqualTo(CellType.NUMERIC);
      return value.getNumberValue();
    }

    void set(String sheet, int row, String head, double value) {
      cell(sheet, row, column(sheet, head)).setCellValue(value);
    }

    /** No formula fails. */
    void noErrors() {
      var evaluator = workbook.getCreationHelper().createFormulaEvaluator();
      for (Sheet sheet : workbook) {
        for (Row row : sheet) {
          for (Cell cell : row) {
            assertThat(evaluator.evaluateInCell(cell).getCellType()).as(sheet.getSheetName() + " " + cell.getAddress())
                .isNotEqualTo(CellType.ERROR);
          }
        }
      }
    }

    @Override
    public void close() throws IOException {
      workbook.close();
    }
  }
}
