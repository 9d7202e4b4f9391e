package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.Collections;
import java.util.stream.Collectors;
import org.seamledger.drainage.WaterPlace;
import org.seamledger.quantity.physics.Rain;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Explanation;
import org.seamledger.detail.Seal;
import org.seamledger.export.report.FindingsSection;
import org.seamledger.export.report.Table;
import org.seamledger.export.report.TextPage;
import org.seamledger.export.wording.FastenerText;
import org.seamledger.export.wording.MovementText;
import org.seamledger.export.wording.CountText;
import org.seamledger.export.wording.OneLine;
import org.seamledger.export.wording.OverrideText;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Takeoff;

/** One junction for people: where it is, what was measured, which rule gave it its kind, and what its detail requires. */
public final class JunctionReport {

  private static final double LITRES = 1000;
  private static final String INDENT = "  ";

  private final Takeoff takeoff;
  private final DetailedJunction detailed;
  private final Junction junction;
  private final TextPage page = new TextPage();

  private JunctionReport(Takeoff takeoff, DetailedJunction detailed) {
    this.takeoff = takeoff;
    this.detailed = detailed;
    this.junction = detailed.junction().junction();
  }

  /**
   * Writes the report and flushes; leaves {@code out} open.
   *
   * @param why the kind's explanation, with the nearest shape that was missed
   */
  public static void write(Takeoff takeoff, DetailedJunction junction, Explanation why, OutputStream out) throws IOException {
    JunctionReport report = new JunctionReport(takeoff, junction);
    report.heading();
    report.place();
    report.facts();
    report.reason(why);
    report.detail();
    report.findings();
    out.write(report.page.text().getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private void heading() {
    page.line(junction.id() + ", " + detailed.junction().kind() + ": " + detailed.junction().type().meaning());
    page.line(MeasureFormat.formatBoth(junction.lengthM()));
    detailed.decided().ifPresent(d -> {
      page.title("Manual override");
      page.paragraph(INDENT, INDENT, OverrideText.of(d, detailed) + ".");
      page.paragraph(INDENT, INDENT, "Reason: " + OneLine.of(d.reason()));
    });
  }

  private void place() {
    page.title("Where");
    Table table = new Table(INDENT, "ll");
    table.row("faces", String.join(", ", junction.faces()));
    String title = "elements";
    for (String id : junction.elements()) {
      table.row(title, id + "  " + label(takeoff.elements().get(id)));
      title = "";
    }
    table.row("from", point(junction.path().get(0)));
    table.row("to", point(junction.path().get(junction.path().size() - 1)));
    if (junction.path().size() > 2) {
      table.row("corners", Integer.toString(junction.path().size()));
    }
    takeoff.modelledAt(junction.id()).pieces().forEach(piece -> table.row("in the model", piece.element() + "  "
        + label(takeoff.elements().get(piece.element())) + ", " + (piece.gutter() ? "gutter" : "flashing") + " along "
        + MeasureFormat.formatMetres(piece.lengthM())));
    water(table);
    table.on(page);
  }

  /** What comes here in the five-minute rain, from where, and where it goes. */
  private void water(Table table) {
    SortedMap<WaterPlace, Double> from = takeoff.drainage().arriving().getOrDefault(junction.id(), Collections.emptySortedMap());
    double area = from.values().stream().mapToDouble(Double::doubleValue).sum();
    if (area > 0) {
      double flow = Rain.flow(takeoff.system().site().runoff().value(), takeoff.system().fiveMinuteRainfallMs(), area) * LITRES;
      table.row("water", MeasureFormat.plain(area, 2) + " m² of plan, " + MeasureFormat.plain(flow, 2) + " l/s in the five-minute rain");
      table.row("from", places(from));
      SortedMap<WaterPlace, Double> to = takeoff.drainage().path().getOrDefault(WaterPlace.junction(junction.id()),
          Collections.emptySortedMap());
      table.row("on to", to.isEmpty() ? takeoff.drainage().held().containsKey(junction.id()) ? "nowhere" : "off the roof" : places(to));
    }
  }

  private static String places(SortedMap<WaterPlace, Double> places) {
    return places.keySet().stream().map(WaterPlace::id).collect(Collectors.joining(", "));
  }

  private static String label(ElementLabel label) {
    return label == null ? "" : (label.ifcClass() + " " + OneLine.of(label.name())).strip();
  }

  private String point(Vec3 local) {
    Vec3 p = takeoff.world(local);
    return "x " + MeasureFormat.fixed(p.x(), 3) + "  y " + MeasureFormat.fixed(p.y(), 3) + "  z " + MeasureFormat.fixed(p.z(), 3)
        + "  m, in the model's coordinates";
  }

  private void facts() {
    page.title("What the shapes saw");
    Table table = new Table(INDENT, "ll");
    for (Map.Entry<String, Object> fact : junction.facts().asMap().entrySet()) {
      Object value = fact.getValue();
      table.row(fact.getKey(), value instanceof Double number ? MeasureFormat.plain(number, 6) : OneLine.of(value.toString()));
    }
    table.on(page);
  }

  private void reason(Explanation why) {
    page.title(detailed.decided().isPresent() ? "What the rules say" : "Why");
    page.paragraph(INDENT, INDENT, why.shapes().isEmpty() ? "No kind shape is met." : "It meets " + join(why.shapes()) + ".");
    if (!why.nearest().isEmpty()) {
      page.paragraph(INDENT, INDENT, "The nearest shape that it misses is " + why.nearest() + (why.missed().isEmpty() ? "." : ":"));
      why.missed().forEach(missed -> page.paragraph(INDENT + "- ", INDENT + INDENT, missed));
    }
  }

  private static String join(List<String> shapes) {
    return shapes.size() == 1 ? "the shape " + shapes.get(0) : "the shapes " + String.join(" and ", shapes);
  }

  private void detail() {
    Detail detail = detailed.detail();
    if (detail.equals(Detail.NONE)) {
      return;
    }
    JunctionQuantities takes = takeoff.quantities().byJunction().get(junction.id());
    page.title("Detail " + detail.id());
    page.paragraph(INDENT, INDENT, detail.title() + ". Without any sealant: " + detail.waterPath());
    page.blank();
    Table table = new Table(INDENT, "llrrll");
    takes.metal().forEach(line -> metal(table, line));
    takes.seals().forEach(line -> seal(table, line));
    takes.fasteners().forEach(row -> fasteners(table, row));
    table.on(page);
    movement();
    if (!takes.steps().isEmpty()) {
      page.title("Arithmetic");
      takes.steps().forEach(step -> page.paragraph(INDENT + "- ", INDENT + INDENT, step));
    }
    if (!detail.holdPoints().isEmpty()) {
      page.title("Hold points");
      detail.holdPoints().forEach(point -> page.paragraph(INDENT + "- ", INDENT + INDENT,
          "before " + point.before() + ": " + point.check()));
    }
  }

  private static void metal(Table table, MetalLine line) {
    table.row("metal", line.face(), Integer.toString(line.pieces()), line.lengthM() > 0 ? MeasureFormat.formatMetres(line.lengthM()) : "",
        line.laps() > 0 ? CountText.of(line.laps(), "lap") : "", line.part());
  }

  private static void seal(Table table, SealLine line) {
    boolean exposed = line.exposure() == Seal.Exposure.EXPOSED;
    table.row(line.form().word(), line.face(), CountText.of(line.lines(), "line"), MeasureFormat.formatMetres(line.lengthM()),
        line.role().word() + (exposed ? ", exposed" : ""), line.place());
  }

  private static void fasteners(Table table, FastenerRow row) {
    table.row("fasteners", row.face(), Integer.toString(row.count()), "",
        row.spacingM() > 0
            ? "≤ " + MeasureFormat.formatMillimetres(row.spacingM()) + " (" + MeasureFormat.formatInches(row.spacingM()) + ")" : "",
        row.place() + ": " + FastenerText.of(row) + (row.exposed() ? ", exposed" : ""));
  }

  /** How many of the panels that end here are fixed at this line, and how the others move. */
  private void movement() {
    List<String> lines = MovementText.at(junction.id(), takeoff);
    if (!lines.isEmpty()) {
      page.title("Panels that end here");
      lines.forEach(line -> page.paragraph(INDENT + "- ", INDENT + INDENT, line));
    }
  }

  private void findings() {
    List<Finding> here = takeoff.findings().stream().filter(f -> f.junctions().contains(junction.id())).toList();
    if (!here.isEmpty()) {
      FindingsSection.write(takeoff, here, page);
    }
  }
}
