package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Seal;
import org.seamledger.export.report.SealSums;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.export.wording.OneLine;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.takeoff.Takeoff;

/**
 * The junctions as comma-separated values: one header row, one row a junction, then one a joint of panels within a face; what the rules say
 * stands only where a person chose.
 */
public final class CsvLedger {

  private static final List<String> MEASURED = List.of("inclinationDegrees", "foldDegrees", "slopeDegrees", "otherSlopeDegrees",
      "obliquityDegrees", "upstandM", "widthAcrossFallM", "depthAlongFallM", "diameterM");

  private CsvLedger() {
  }

  /** Writes all rows and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    Rows rows = new Rows(out);
    rows(takeoff, rows);
    rows.flush();
  }

  /** All rows, the header first. */
  public static void rows(Takeoff takeoff, RowSink rows) throws IOException {
    Map<String, SortedSet<String>> codes = takeoff.codesByJunction();
    rows.row(header());
    for (DetailedJunction detailed : takeoff.lines()) {
      rows.row(cells(takeoff, detailed, codes.getOrDefault(detailed.junction().junction().id(), new TreeSet<>())));
    }
  }

  private static List<String> header() {
    List<String> cells = new ArrayList<>(List.of("id", "kind", "lengthM", "lengthFtIn", "faces"));
    cells.addAll(MEASURED);
    cells.addAll(List.of("neighbour", "elements", "elementNames", "detail", "tapeM", "beadM", "beadMl", "inSeamM", "closures", "fasteners",
        "startX", "startY", "startZ", "endX", "endY", "endZ", "findings", "kindByRules", "detailByRules", "decidedBecause", "modelledM",
        "gutterM", "models", "fastenerLines"));
    return cells;
  }

  private static List<String> cells(Takeoff takeoff, DetailedJunction detailed, SortedSet<String> codes) {
    Junction junction = detailed.junction().junction();
    JunctionQuantities takes = takeoff.quantities().byJunction().get(junction.id());
    Facts facts = junction.facts();
    List<String> cells = new ArrayList<>(List.of(junction.id(), detailed.junction().kind(), Rows.number(junction.lengthM()),
        MeasureFormat.formatFeetInches(junction.lengthM()), String.join(" ", junction.faces())));
    MEASURED.forEach(name -> cells.add(facts.has(name) ? Rows.number(facts.number(name)) : ""));
    cells.add(facts.word("neighbourClass"));
    cells.add(String.join(" ", junction.elements()));
    cells.add(junction.elements().stream().filter(takeoff.elements()::containsKey).map(id -> takeoff.elements().get(id).name())
        .filter(name -> !name.isBlank()).collect(Collectors.joining("; ")));
    cells.add(detailed.detail().equals(Detail.NONE) ? "" : detailed.detail().id());
    cells.addAll(quantities(List.of(takes)));
    addPoint(cells, takeoff.world(junction.path().get(0)));
    addPoint(cells, takeoff.world(junction.path().get(junction.path().size() - 1)));
    cells.add(String.join(" ", codes));
    cells.addAll(
        detailed.decided().map(d -> List.of(d.kindByRules(), d.detailByRules(), OneLine.of(d.reason()))).orElse(List.of("", "", "")));
    cells.add(Rows.number(takeoff.modelledAt(junction.id()).flashingM()));
    cells.add(Rows.number(takeoff.modelledAt(junction.id()).gutterM()));
    cells.add(junction.elements().stream().map(id -> ElementNames.file(takeoff, id)).filter(f -> !f.isEmpty()).distinct()
        .collect(Collectors.joining("; ")));
    cells.add(takes.fasteners().stream().filter(f -> f.count() > 0)
        .map(f -> f.count() + " " + f.place() + ": " + f.joins().word() + " " + f.type().word() + " " + Rows.number(f.lengthM()) + " m")
        .collect(Collectors.joining("; ")));
    return cells;
  }

  private static List<String> quantities(List<JunctionQuantities> takes) {
    return List.of(Rows.number(SealSums.lengthM(takes, Seal.Form.TAPE)), Rows.number(SealSums.lengthM(takes, Seal.Form.BEAD)),
        Rows.number(SealSums.volumeMl(takes, Seal.Form.BEAD)), Rows.number(SealSums.lengthM(takes, Seal.Form.IN_SEAM)),
        Integer.toString(takes.get(0).closurePieces()), Integer.toString(SealSums.fasteners(takes)));
  }

  private static void addPoint(List<String> cells, Vec3 p) {
    cells.addAll(List.of(Rows.number(p.x()), Rows.number(p.y()), Rows.number(p.z())));
  }
}
