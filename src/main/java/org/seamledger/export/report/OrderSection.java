package org.seamledger.export.report;

import java.util.Map;
import java.util.stream.Collectors;
import org.seamledger.export.wording.OneLine;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.order.OrderGroup;
import org.seamledger.order.OrderLine;
import org.seamledger.order.OrderList;
import org.seamledger.quantity.ProjectQuantities;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.system.WasteSettings;
import org.seamledger.takeoff.Takeoff;

/** The order for people: net from the drawing, and what to order with waste, in whole packs, rounded once for the project. */
public final class OrderSection {

  private static final String INDENT = "  ";

  private final OrderList order;
  private final ProjectQuantities project;
  private final RoofSystem system;

  private OrderSection(Takeoff takeoff) {
    this.order = OrderList.of(takeoff);
    this.project = takeoff.quantities().project();
    this.system = takeoff.system();
  }

  public static void write(Takeoff takeoff, TextPage page) {
    page.title("Order");
    new OrderSection(takeoff).write(page);
  }

  private void write(TextPage page) {
    WasteSettings waste = system.waste();
    page.paragraph(INDENT, INDENT, "Net is what the junctions and faces take. Order adds waste (tape " + waste.tape() + ", sealant "
        + waste.bead() + ", fasteners " + waste.fasteners() + ", closures " + waste.closures() + ", flashings " + waste.flashing()
        + ") and is rounded up to whole packs once, for the project. Every line's arithmetic is in the order as CSV and JSON.");
    for (OrderGroup group : OrderGroup.values()) {
      if (order.lines().stream().anyMatch(l -> l.group() == group)) {
        page.blank();
        group(group, page);
      }
    }
    fasteners(page);
    metalFirst(page);
  }

  private void group(OrderGroup group, TextPage page) {
    Table table = new Table(INDENT, "lrrl").row(group.word(), "net", "order", "size");
    for (OrderLine line : order.lines()) {
      if (line.group() == group) {
        table.row(OneLine.of(line.item()), net(line), line.order() + " " + line.orderUnit(), OneLine.of(line.size()));
      }
    }
    table.on(page);
  }

  private static String net(OrderLine line) {
    return switch (line.unit()) {
      case "m" -> MeasureFormat.formatMetres(line.net());
      case "m2" -> MeasureFormat.fixed(line.net(), 2) + " m²";
      case "ml" -> MeasureFormat.fixed(line.net(), 0) + " ml";
      default -> MeasureFormat.plain(line.net(), 0);
    };
  }

  private void fasteners(TextPage page) {
    Map<String, Long> places = project.fasteners().byPlace();
    if (!places.isEmpty()) {
      page.blank().paragraph(INDENT + "Fasteners by line: ", INDENT + INDENT,
          places.entrySet().stream().map(e -> e.getKey() + " " + e.getValue()).collect(Collectors.joining(", ")) + ".");
    }
  }

  private void metalFirst(TextPage page) {
    page.blank().paragraph(INDENT + "Metal first: ", INDENT + INDENT, "with no sealant left, metal alone still leads the water off along "
        + MeasureFormat.fixed(100 * project.metalFirstShare(), 1) + " % of the junctions: " + MeasureFormat.fixed(project.metalFirstM(), 3)
        + " of " + MeasureFormat.formatMetres(project.detailedM()) + " that have a detail.");
  }
}
