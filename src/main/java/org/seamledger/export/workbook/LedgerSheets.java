package org.seamledger.export.workbook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.dhatim.fastexcel.Workbook;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Seal;
import org.seamledger.export.report.SealSums;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.export.wording.SystemAssumptions;
import org.seamledger.export.wording.SystemAssumptions.Assumed;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.KindedNode;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.PanelCut;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.Takeoff;

/** Junctions, joints of panels, nodes, faces, panels, findings and assumptions as tables. */
final class LedgerSheets {

  private static final String JUNCTIONS = "Junctions";
  private static final String JOINTS = "Joints";
  private static final String NODES = "Nodes";

  private final Takeoff takeoff;
  private final Lengths lengths;
  private final Map<String, String> places = new HashMap<>();
  private final SortedMap<String, SortedSet<String>> codes;

  LedgerSheets(Takeoff takeoff, DrawingUnits units) {
    this.takeoff = takeoff;
    this.lengths = new Lengths(units);
    this.codes = takeoff.codesByJunction();
    at(JUNCTIONS, takeoff.detailed());
    at(JOINTS, takeoff.joints());
    for (int i = 0; i < takeoff.nodes().size(); i++) {
      places.put(takeoff.nodes().get(i).id(), OrderSheets.at(NODES, SheetTable.row(i)));
    }
  }

  private void at(String sheet, List<DetailedJunction> rows) {
    for (int i = 0; i < rows.size(); i++) {
      places.put(id(rows.get(i)), OrderSheets.at(sheet, SheetTable.row(i)));
    }
  }

  /** Where each junction, joint and node stands in its sheet, by id. */
  Map<String, String> places() {
    return places;
  }

  void junctions(Workbook book) {
    lines(book, JUNCTIONS, "Junctions", "Every line where a face of the roof ends. Filter by the head; the sums follow.",
        takeoff.detailed());
    if (!takeoff.joints().isEmpty()) {
      lines(book, JOINTS, "Panel joints", "Lines within faces at which panels are divided, because they would be too long.",
          takeoff.joints());
    }
  }

  private void lines(Workbook book, String sheet, String title, String note, List<DetailedJunction> rows) {
    List<Column<DetailedJunction>> columns = new ArrayList<>(List.of(Column.text("Junction", 12, LedgerSheets::id),
        Column.text("Kind", 18, j -> j.junction().type().label())));
    List<Column<DetailedJunction>> length = lengths.length("Length", j -> j.junction().junction().lengthM());
    columns.addAll(length);
    columns.add(Column.text("Detail", 44, j -> j.detail().equals(Detail.NONE) ? "none chosen" : j.detail().title()));
    columns.add(Column.text("Metal first", 11, j -> j.detail().metalFirst()));
    columns.add(Column.text("Overridden", 11, j -> j.decided().isPresent()));
    columns.add(Column.text("Faces", 10, j -> String.join(" ", j.junction().junction().faces())));
    List<Column<DetailedJunction>> tape = lengths.length("Tape", j -> SealSums.lengthM(List.of(counted(j)), Seal.Form.TAPE));
    List<Column<DetailedJunction>> bead = lengths.length("Bead", j -> SealSums.lengthM(List.of(counted(j)), Seal.Form.BEAD));
    columns.addAll(tape);
    columns.addAll(bead);
    columns.add(Column.number("Closures", Column.WHOLE, j -> counted(j).closurePieces()));
    columns.add(Column.number("Fasteners", Column.WHOLE, j -> SealSums.fasteners(List.of(counted(j)))));
    columns.add(Column.text("Elements", 40, j -> ElementNames.of(takeoff, j.junction().junction().elements())));
    columns.add(Column.text("Findings", 40, j -> String.join(" ", codes.getOrDefault(id(j), new TreeSet<>()))));
    columns.add(Column.text("GlobalIds", 30, j -> String.join(" ", j.junction().junction().elements())));
    List<String> sums = new ArrayList<>(List.of("Closures", "Fasteners"));
    List.of(length, tape, bead).forEach(l -> l.forEach(c -> sums.add(c.title())));
    new SheetTable<>(book, sheet, title, note, columns).rows(rows, sums);
  }

  private static String id(DetailedJunction j) {
    return j.junction().junction().id();
  }

  private JunctionQuantities counted(DetailedJunction j) {
    return takeoff.quantities().byJunction().get(id(j));
  }

  void nodes(Workbook book) {
    List<Column<KindedNode>> columns = new ArrayList<>(List.of(Column.text("Node", 12, KindedNode::id),
        Column.text("Kind", 28, n -> n.kind().label()), Column.text("Meaning", 50, n -> n.kind().meaning()),
        Column.text("Junctions", 40, n -> String.join(" ", n.node().junctions())),
        Column.text("Faces", 16, n -> String.join(" ", n.node().faces())),
        Column.number("Pieces", Column.WHOLE, n -> counted(n).metal().stream().mapToInt(MetalLine::pieces).sum())));
    List<Column<KindedNode>> tape = lengths.length("Tape", n -> SealSums.lengthM(List.of(counted(n)), Seal.Form.TAPE));
    List<Column<KindedNode>> bead = lengths.length("Bead", n -> SealSums.lengthM(List.of(counted(n)), Seal.Form.BEAD));
    columns.addAll(tape);
    columns.addAll(bead);
    columns.addAll(List.of(Column.number("Fasteners", Column.WHOLE, n -> SealSums.fasteners(List.of(counted(n)))),
        Column.text("Findings", 40, n -> String.join(" ", codes.getOrDefault(n.id(), new TreeSet<>()))),
        Column.number("x, m", Column.THREE, n -> world(n).x()), Column.number("y, m", Column.THREE, n -> world(n).y()),
        Column.number("z, m", Column.THREE, n -> world(n).z())));
    List<String> sums = new ArrayList<>(List.of("Pieces", "Fasteners"));
    List.of(tape, bead).forEach(l -> l.forEach(c -> sums.add(c.title())));
    new SheetTable<>(book, NODES, "Nodes", "Where lines end and meet. Places are in the model's own coordinates.", columns)
        .rows(takeoff.nodes(), sums);
  }

  private JunctionQuantities counted(KindedNode n) {
    return takeoff.quantities().byJunction().get(n.id());
  }

  private Vec3 world(KindedNode n) {
    return takeoff.world(n.node().at());
  }

  void faces(Workbook book) {
    List<Column<RoofFace>> columns = new ArrayList<>(List.of(Column.text("Face", 8, RoofFace::id),
        Column.number("Slope, °", Column.TWO, RoofFace::slopeDegrees), Column.number("Rise in 12", Column.TWO, RoofFace::risePer12),
        Column.number("Falls to, °", Column.WHOLE, RoofFace::fallAzimuthDegrees)));
    List<Column<RoofFace>> area = lengths.area("Area", RoofFace::areaM2);
    List<Column<RoofFace>> plan = lengths.area("Area in plan", RoofFace::planAreaM2);
    columns.addAll(area);
    columns.addAll(plan);
    columns.addAll(lengths.length("Perimeter", RoofFace::perimeterM));
    columns.add(Column.text("Elements", 50, f -> ElementNames.of(takeoff, f.elements())));
    List<String> sums = new ArrayList<>();
    List.of(area, plan).forEach(l -> l.forEach(c -> sums.add(c.title())));
    new SheetTable<>(book, "Faces", "Faces of the roof", "Directions count clockwise from the model's +Y.", columns).rows(takeoff.faces(),
        sums);
  }

  void panels(Workbook book) {
    List<Column<PanelCut>> columns = new ArrayList<>(List.of(Column.text("Face", 8, PanelCut::face),
        Column.number("Panels", Column.WHOLE, PanelCut::count), Column.number("First pan", Column.WHOLE, c -> c.panel().pan())));
    columns.addAll(lengths.width("Width", c -> c.panel().widthM()));
    columns.addAll(lengths.length("Length on the face", c -> c.panel().lengthM()));
    columns.addAll(List.of(Column.number("Lower cut, ° from square", Column.TWO, c -> c.panel().lowBevelDegrees()),
        Column.number("Upper cut, ° from square", Column.TWO, c -> c.panel().highBevelDegrees())));
    columns.addAll(lengths.area("Area of one", c -> c.panel().areaM2()));
    columns.add(Column.text("Fixed at", 12, c -> c.fixed().word()));
    columns.add(Column.text("Cut to shape", 12, c -> c.panel().shaped()));
    columns.add(Column.text("Too narrow", 12, c -> c.panel().sliver()));
    new SheetTable<>(book, "Panels", "Panels",
        "Equal panels of a face share a row. The order adds hem and overhang, and takes off the setback.",
        columns).rows(takeoff.quantities().panels(), List.of("Panels"));
  }

  void findings(Workbook book) {
    List<Column<Finding>> columns = List.of(Column.text("Severity", 11, f -> f.severity().word()), Column.text("Code", 30, Finding::code),
        Column.text("Finding", 80, Finding::message), Column.text("Junction", 12, this::junction),
        Column.text("Elements", 40, f -> ElementNames.of(takeoff, f.elements())),
        Column.text("GlobalIds", 30, f -> String.join(" ", f.elements())),
        Column.text("Accepted by", 18, f -> f.acceptance().map(Acceptance::by).orElse("")),
        Column.text("On", 12, f -> f.acceptance().map(Acceptance::when).orElse("")),
        Column.text("Because", 40, f -> f.acceptance().map(Acceptance::reason).orElse("")));
    new SheetTable<>(book, "Findings", "Findings", "The worst first.", columns).rows(takeoff.findings(), List.of());
  }

  private Object junction(Finding f) {
    return places.containsKey(f.junction()) ? new Column.Link(f.junction(), places.get(f.junction())) : f.junction();
  }

  void assumptions(Workbook book) {
    List<Assumed> rows = new ArrayList<>(SystemAssumptions.of(takeoff.system()));
    new TreeMap<>(details()).forEach((id, d) -> rows.add(new Assumed("detail", id, d.title(), d.source())));
    List<Column<Assumed>> columns = List.of(Column.text("Group", 24, Assumed::group), Column.text("Value", 34, Assumed::name),
        Column.text("Assumed", 40, Assumed::value), Column.text("Source", 70, Assumed::source));
    new SheetTable<>(book, "Assumptions", "Assumptions: the roof system, and the details that were chosen", "The panel maker's tested"
        + " assembly governs. Names are those of the system's file.", columns).rows(rows, List.of());
  }

  private Map<String, Detail> details() {
    Map<String, Detail> details = new HashMap<>();
    takeoff.lines().stream().map(DetailedJunction::detail).filter(d -> !d.equals(Detail.NONE)).forEach(d -> details.put(d.id(), d));
    return details;
  }
}
