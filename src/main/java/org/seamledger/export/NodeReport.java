package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.seamledger.export.report.FindingsSection;
import org.seamledger.export.report.Table;
import org.seamledger.export.report.TextPage;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Vec3;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeContent;
import org.seamledger.takeoff.Takeoff;

/** One node, human-readable: where it is, which lines meet there, what the shapes saw, and what is done there. */
public final class NodeReport {

  private static final String INDENT = "  ";

  private NodeReport() {
  }

  /** Writes the report and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, KindedNode node, OutputStream out) throws IOException {
    TextPage page = new TextPage();
    page.line(node.id() + ", " + node.kind().label() + ": " + node.kind().meaning());
    place(takeoff, node, page);
    page.title("What the shapes saw");
    Table facts = new Table(INDENT, "ll");
    node.facts().asMap().forEach((name, value) -> {
      if (!value.equals(0)) {
        facts.row(name, value instanceof Double number ? MeasureFormat.plain(number, 3) : value.toString());
      }
    });
    facts.on(page);
    content(takeoff, node, page);
    List<Finding> here = takeoff.findings().stream().filter(f -> f.junction().equals(node.id())).toList();
    if (!here.isEmpty()) {
      FindingsSection.write(takeoff, here, page);
    }
    out.write(page.text().getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private static void place(Takeoff takeoff, KindedNode node, TextPage page) {
    Vec3 at = takeoff.world(node.node().at());
    page.title("Where");
    Table table = new Table(INDENT, "ll");
    table.row("at",
        "x " + MeasureFormat.fixed(at.x(), 3) + "  y " + MeasureFormat.fixed(at.y(), 3) + "  z " + MeasureFormat.fixed(at.z(), 3)
            + "  m, in the model's coordinates");
    table.row("faces", String.join(", ", node.node().faces()));
    Map<String, String> kinds = new java.util.TreeMap<>();
    takeoff.junctions().forEach(j -> kinds.put(j.junction().id(), j.type().label()));
    node.node().ends().forEach(e -> table.row("ends here", e.junction().id() + "  " + kinds.get(e.junction().id())));
    node.node().through().forEach(j -> table.row("passes", j.id() + "  " + kinds.get(j.id())));
    table.on(page);
  }

  private static void content(Takeoff takeoff, KindedNode node, TextPage page) {
    NodeContent content = node.kind().content();
    page.title(content.title());
    page.paragraph(INDENT, INDENT, content.note());
    List<String> steps = takeoff.quantities().byJunction().get(node.id()).steps();
    if (!steps.isEmpty()) {
      page.title("Arithmetic");
      steps.forEach(step -> page.paragraph(INDENT + "- ", INDENT + INDENT, step));
    }
    page.title("Hold points");
    content.holdPoints().forEach(p -> page.paragraph(INDENT + "- ", INDENT + INDENT, "before " + p.before() + ": " + p.check()));
    page.paragraph(INDENT, INDENT, "Source: " + content.source() + ".");
  }
}
