package org.seamledger.export.report;

import java.util.Map;
import java.util.stream.Collectors;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.ProjectQuantities;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.system.WasteSettings;
import org.seamledger.takeoff.Takeoff;

/** The order list for people: net from the drawing, and what to order with waste, in whole packs, rounded once for the project. */
public final class OrderSection {

  private static final String INDENT = "  ";
  private static final double ML_PER_FL_OZ = 29.5735295625;

  private final ProjectQuantities project;
  private final RoofSystem system;

  private OrderSection(Takeoff takeoff) {
    this.project = takeoff.quantities().project();
    this.system = takeoff.system();
  }

  public static void write(Takeoff takeoff, TextPage page) {
    page.title("Order");
    new OrderSection(takeoff).write(page);
  }

  private void write(TextPage page) {
    WasteSettings waste = system.waste();
    page.paragraph(INDENT, INDENT, "Net is what the junctions take. Order adds waste (tape " + waste.tape() + ", sealant " + waste.bead()
        + ", fasteners " + waste.fasteners() + ", closures " + waste.closures() + ", flashings " + waste.flashing()
        + ") and is rounded up to whole packs once, for the project.");
    page.blank();
    sealants(page);
    page.blank();
    metal(page);
    fasteners(page);
    metalFirst(page);
  }

  private void sealants(TextPage page) {
    Table table = new Table(INDENT, "lrrrl").row("sealant, fasteners", "net", "ft and in", "net volume", "order");
    ProjectQuantities.Tape tape = project.tape();
    if (tape.netM() > 0) {
      table.row("tape " + system.tape().thickness() + " × " + system.tape().width(), MeasureFormat.formatMetres(tape.netM()),
          MeasureFormat.formatFeetInches(tape.netM()), "", tape.rolls() + " × " + system.tape().roll());
    }
    bead(table, "bead, concealed", project.bead().concealed());
    bead(table, "bead, exposed", project.bead().exposed());
    ProjectQuantities.GunSealant lap = project.lapSealant();
    cartridges(table, "non-curing in laps and ends", lap.netM(), lap.netMl(), lap.cartridges());
    ProjectQuantities.InSeam inSeam = project.inSeam();
    if (inSeam.netM() > 0) {
      table.row("in-seam sealant, " + String.join(" ", inSeam.faces()), MeasureFormat.formatMetres(inSeam.netM()),
          MeasureFormat.formatFeetInches(inSeam.netM()), "", MeasureFormat.formatMetres(inSeam.orderM()));
    }
    table.row("fasteners", Long.toString(project.fasteners().net()), "", "", Long.toString(project.fasteners().order()));
    table.on(page);
  }

  private void bead(Table table, String name, ProjectQuantities.Bead.Part part) {
    cartridges(table, name, part.netM(), part.netMl(), part.cartridges());
  }

  private void cartridges(Table table, String name, double netM, double netMl, long cartridges) {
    if (netMl > 0) {
      table.row(name, MeasureFormat.formatMetres(netM), MeasureFormat.formatFeetInches(netM), MeasureFormat.fixed(netMl, 0) + " ml, "
          + MeasureFormat.fixed(netMl / ML_PER_FL_OZ, 1) + " fl oz", cartridges + " × " + system.bead().cartridge());
    }
  }

  private void metal(TextPage page) {
    Table table = new Table(INDENT, "lrrrrl").row("metal", "pieces", "net", "ft and in", "order", "girth or size");
    ProjectQuantities.Closures closures = project.closures();
    if (closures.pieces() > 0) {
      row(table, "closures between seams", closures.pieces(), closures.lengthM(), closures.order(), "");
    }
    for (ProjectQuantities.Part part : project.parts()) {
      row(table, part.part(), part.pieces(), part.lengthM(), part.order(),
          part.girthM() > 0 && part.lengthM() > 0 ? size(part.girthM()) : "");
    }
    for (ProjectQuantities.Boot boot : project.boots()) {
      row(table, "boot", boot.count(), 0, boot.count(), "⌀ " + size(boot.diameterM()));
    }
    for (ProjectQuantities.Curb curb : project.curbs()) {
      row(table, "curb", curb.count(), 0, curb.count(), size(curb.widthM()) + " × " + size(curb.depthM()));
    }
    ProjectQuantities.Plugs plugs = project.plugs();
    if (plugs.pieces() > 0) {
      row(table, "plugs", plugs.pieces(), 0, plugs.pieces(),
          plugs.seamEnds() + " at seam terminations, " + plugs.corners() + " in corners");
    }
    table.on(page);
  }

  private static void row(Table table, String what, long pieces, double lengthM, long order, String note) {
    table.row(what, Long.toString(pieces), lengthM > 0 ? MeasureFormat.formatMetres(lengthM) : "",
        lengthM > 0 ? MeasureFormat.formatFeetInches(lengthM) : "", Long.toString(order), note);
  }

  private static String size(double metres) {
    return MeasureFormat.formatMillimetres(metres) + " (" + MeasureFormat.formatInches(metres) + ")";
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
        + " of "
        + MeasureFormat.formatMetres(project.detailedM()) + " that have a detail.");
  }
}
