package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.element.ModelInfo;
import org.seamledger.export.report.NodesSection;
import org.seamledger.export.report.EstimatesSection;
import org.seamledger.export.report.FindingsSection;
import org.seamledger.export.report.JunctionsSection;
import org.seamledger.export.report.OrderSection;
import org.seamledger.export.report.OverridesSection;
import org.seamledger.export.report.RoofSection;
import org.seamledger.export.report.ScopeSection;
import org.seamledger.export.report.Table;
import org.seamledger.export.report.TextPage;
import org.seamledger.export.wording.CountText;
import org.seamledger.export.wording.OneLine;
import org.seamledger.junction.Modelled;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/** The ledger for people: plain text of at most 100 columns, lengths in metres and in feet and inches. */
public final class TextReport {

  private static final String INDENT = "  ";

  private TextReport() {
  }

  /** Writes the report and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    TextPage page = new TextPage();
    header(takeoff, page);
    if (!takeoff.faces().isEmpty()) {
      RoofSection.write(takeoff, page);
      totals(takeoff, page);
      OrderSection.write(takeoff, page);
      JunctionsSection.write(takeoff, page);
      NodesSection.write(takeoff, page);
      OverridesSection.write(takeoff, page);
    }
    FindingsSection.write(takeoff, takeoff.findings(), page);
    ModelPoints.write(takeoff, page);
    EstimatesSection.write(takeoff, page);
    ScopeSection.write(page);
    out.write(page.text().getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private static void header(Takeoff takeoff, TextPage page) {
    page.line(Program.NAME + " " + takeoff.version() + ": junctions of a standing-seam metal roof").blank();
    Table table = new Table("", "ll");
    int n = 0;
    for (ModelInfo model : takeoff.models()) {
      n++;
      table.row("Model", OneLine.of(model.file()) + (takeoff.models().size() > 1 ? " [" + n + "]" : ""));
      table.row("", model.schema() + ", lengths in " + model.lengthUnit()
          + (model.application().isBlank() ? "" : ", written by " + OneLine.of(model.application())));
      model.placement().ifPresent(p -> table.row("", "placed by hand: " + p));
    }
    table.row("System", OneLine.of(takeoff.system().name()));
    table.row("Roof", CountText.of(takeoff.faces().size(), "face") + ", "
        + MeasureFormat.formatArea(takeoff.faces().stream().mapToDouble(RoofFace::areaM2).sum()) + " of surface, "
        + MeasureFormat.formatArea(takeoff.faces().stream().mapToDouble(RoofFace::planAreaM2).sum()) + " in plan");
    table.row("Junctions", CountText.of(takeoff.detailed().size(), "line") + ", " + MeasureFormat.formatBoth(lengthM(takeoff.detailed())));
    if (!takeoff.joints().isEmpty()) {
      table.row("Joints", CountText.of(takeoff.joints().size(), "line") + " within faces, at which panels are divided, "
          + MeasureFormat.formatBoth(lengthM(takeoff.joints())));
    }
    modelled(takeoff).ifPresent(words -> table.row("Modelled", words));
    if (!takeoff.decided().isEmpty()) {
      table.row("Overrides", CountText.of(takeoff.decided().size(), "junction") + " with a manual override of kind or detail");
    }
    table.row("Findings", FindingsSection.counts(takeoff.findings()));
    table.on(page);
  }

  private static void totals(Takeoff takeoff, TextPage page) {
    page.title("Lengths by kind");
    Table table = new Table(INDENT, "lrrrl").row("kind", "lines", "m", "ft and in", "what it is");
    byKind(takeoff.detailed(), table);
    table.row("all", Integer.toString(takeoff.detailed().size()), MeasureFormat.fixed(lengthM(takeoff.detailed()), 3),
        MeasureFormat.formatFeetInches(lengthM(takeoff.detailed())));
    byKind(takeoff.joints(), table);
    table.on(page);
  }

  private static void byKind(List<DetailedJunction> lines, Table table) {
    JunctionsSection.byKind(lines).forEach((kind, group) -> table.row(kind.id(), Integer.toString(group.size()),
        MeasureFormat.fixed(lengthM(group), 3), MeasureFormat.formatFeetInches(lengthM(group)), kind.meaning()));
  }

  /** How much of the junctions has a flashing or a gutter in the model; nothing where there is none. */
  private static Optional<String> modelled(Takeoff takeoff) {
    double flashing = takeoff.modelled().values().stream().mapToDouble(Modelled::flashingM).sum();
    double gutter = takeoff.modelled().values().stream().mapToDouble(Modelled::gutterM).sum();
    if (takeoff.modelled().isEmpty()) {
      return Optional.empty();
    }
    double all = lengthM(takeoff.detailed());
    String share = " (" + MeasureFormat.fixed(100 * flashing / all, 1) + " %)";
    return Optional
        .of("flashings along " + MeasureFormat.formatMetres(flashing) + share + ", gutters along " + MeasureFormat.formatMetres(gutter));
  }

  private static double lengthM(List<DetailedJunction> junctions) {
    return junctions.stream().mapToDouble(j -> j.junction().junction().lengthM()).sum();
  }
}
