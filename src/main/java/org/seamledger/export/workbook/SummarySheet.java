package org.seamledger.export.workbook;

import java.util.Map;
import java.util.TreeMap;
import org.dhatim.fastexcel.PaperSize;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.element.ModelInfo;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.wording.ScopeText;
import org.seamledger.finding.Severity;
import org.seamledger.measure.Unit;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/** The first sheet: what was analysed, the roof in a few figures, lengths by kind, cautions. */
final class SummarySheet {

  /** Characters of a line that fit over the sheet's columns. */
  private static final int LINE = 100;

  private final Takeoff takeoff;
  private final DrawingUnits units;
  private final Worksheet sheet;
  private int row;

  SummarySheet(Workbook book, Takeoff takeoff, DrawingUnits units) {
    this.takeoff = takeoff;
    this.units = units;
    this.sheet = book.newWorksheet("Summary");
  }

  void write() {
    sheet.width(0, 34);
    sheet.width(1, 26);
    sheet.width(2, 14);
    sheet.width(3, 14);
    sheet.paperSize(PaperSize.A4_PAPER);
    sheet.fitToWidth((short) 1);
    sheet.fitToHeight((short) 0);
    head("Roof junctions, quantities and order", 16);
    line("Program", Program.NAME + " " + takeoff.version());
    for (ModelInfo model : takeoff.models()) {
      line("Model", model.file());
      line("  written", model.written());
      line("  schema and length unit", model.schema() + ", " + model.lengthUnit());
      line("  SHA-256", model.sha256());
    }
    line("Roof system", takeoff.system().name());
    head("The roof", 13);
    area("Area of all faces", takeoff.faces().stream().mapToDouble(f -> f.areaM2()).sum());
    area("Area in plan", takeoff.faces().stream().mapToDouble(f -> f.planAreaM2()).sum());
    number("Faces", takeoff.faces().size());
    number("Junctions", takeoff.detailed().size());
    if (!takeoff.joints().isEmpty()) {
      number("Panel joints", takeoff.joints().size());
    }
    number("Nodes", takeoff.nodes().size());
    for (Severity severity : Severity.values()) {
      number("Findings, " + severity.word(), takeoff.findings().stream().filter(f -> f.severity() == severity).count());
    }
    head("Lengths by kind", 13);
    Map<String, Double> lengths = new TreeMap<>();
    takeoff.lines().stream().map(DetailedJunction::junction)
        .forEach(j -> lengths.merge(j.type().label(), j.junction().lengthM(), Double::sum));
    lengths.forEach(this::length);
    head("Scope and cautions", 13);
    note(ScopeText.SCOPE.text());
    note(ScopeText.SAFETY.text());
  }

  private void head(String text, int size) {
    row += row == 0 ? 0 : 1;
    Cells.text(sheet, row, 0, text);
    sheet.style(row++, 0).bold().fontSize(size).set();
  }

  private void line(String name, String value) {
    Cells.text(sheet, row, 0, name);
    Cells.text(sheet, row++, 1, value);
  }

  private void number(String name, long value) {
    Cells.text(sheet, row, 0, name);
    sheet.value(row++, 1, value);
  }

  private void area(String name, double m2) {
    measured(name, m2, Unit.SQUARE_METRE, Unit.SQUARE_FOOT, Column.TWO);
  }

  private void length(String name, double m) {
    measured(name, m, Unit.METRE, Unit.FOOT, Column.THREE);
  }

  private void measured(String name, double si, Unit metric, Unit us, String format) {
    Cells.text(sheet, row, 0, name);
    int column = 1;
    for (Unit unit : units == DrawingUnits.BOTH ? java.util.List.of(metric, us)
        : java.util.List.of(units == DrawingUnits.US ? us : metric)) {
      sheet.value(row, column, unit.fromSi(si));
      sheet.style(row, column++).format(format + " \"" + unit.symbol() + "\"").set();
    }
    row++;
  }

  /** In lines over several columns. Cells are not joined: the library writes joined ones in an order that changes from run to run. */
  private void note(String text) {
    int from = 0;
    while (from < text.length()) {
      int to = text.length() - from <= LINE ? text.length() : text.lastIndexOf(' ', from + LINE);
      Cells.text(sheet, row++, 0, text.substring(from, to < from + 1 ? Math.min(text.length(), from + LINE) : to).strip());
      from = to < from + 1 ? from + LINE : to + 1;
    }
  }
}
