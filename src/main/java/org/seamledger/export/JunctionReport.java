package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.Explanation;
import org.seamledger.detail.KindedJunction;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.measure.Format;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Takeoff;

/** One junction for people: where it is, what was measured, and which rule gave it its kind. */
public final class JunctionReport {

  private static final String INDENT = "  ";

  private JunctionReport() {
  }

  /** Writes the report and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, KindedJunction kinded, OutputStream out) throws IOException {
    Page page = new Page();
    heading(kinded, page);
    place(takeoff, kinded.junction(), page);
    facts(kinded.junction(), page);
    reason(kinded, page);
    findings(takeoff, kinded.junction(), page);
    out.write(page.text().getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private static void heading(KindedJunction kinded, Page page) {
    String meaning = KindWords.meaning(kinded.kind());
    page.line(kinded.junction().id() + ", " + kinded.kind() + (meaning.isEmpty() ? "" : ": " + meaning));
    page.line(Format.formatBoth(kinded.junction().lengthM()));
  }

  private static void place(Takeoff takeoff, Junction junction, Page page) {
    page.title("Where");
    Table table = new Table(INDENT, "ll");
    table.row("faces", String.join(", ", junction.faces()));
    String title = "elements";
    for (String id : junction.elements()) {
      table.row(title, id + "  " + label(takeoff.elements().get(id)));
      title = "";
    }
    table.row("from", point(takeoff.world(junction.path().get(0))));
    table.row("to", point(takeoff.world(junction.path().get(junction.path().size() - 1))));
    if (junction.path().size() > 2) {
      table.row("corners", Integer.toString(junction.path().size()));
    }
    table.on(page);
  }

  private static String label(ElementLabel label) {
    return label == null ? "" : (label.ifcClass() + " " + OneLine.of(label.name())).strip();
  }

  private static String point(Vec3 p) {
    return "x " + Format.fixed(p.x(), 3) + "  y " + Format.fixed(p.y(), 3) + "  z " + Format.fixed(p.z(), 3)
        + "  m, in the model's coordinates";
  }

  private static void facts(Junction junction, Page page) {
    page.title("What the shapes saw");
    Table table = new Table(INDENT, "ll");
    for (Map.Entry<String, Object> fact : junction.facts().asMap().entrySet()) {
      Object value = fact.getValue();
      table.row(fact.getKey(), value instanceof Double number ? Format.plain(number, 6) : OneLine.of(value.toString()));
    }
    table.on(page);
  }

  private static void reason(KindedJunction kinded, Page page) {
    Explanation why = kinded.explanation();
    page.title("Why");
    page.paragraph(INDENT, INDENT, why.shapes().isEmpty() ? "No kind shape is met." : "It meets " + join(why.shapes()) + ".");
    if (!why.nearest().isEmpty()) {
      page.paragraph(INDENT, INDENT, "The nearest shape that it misses is " + why.nearest() + (why.missed().isEmpty() ? "." : ":"));
      why.missed().forEach(missed -> page.paragraph(INDENT + "- ", INDENT + INDENT, missed));
    }
  }

  private static String join(List<String> shapes) {
    return shapes.size() == 1 ? "the shape " + shapes.get(0) : "the shapes " + String.join(" and ", shapes);
  }

  private static void findings(Takeoff takeoff, Junction junction, Page page) {
    List<Finding> here = takeoff.findings().stream().filter(f -> f.junction().equals(junction.id())).toList();
    if (!here.isEmpty()) {
      FindingsSection.write(here, page);
    }
  }
}
