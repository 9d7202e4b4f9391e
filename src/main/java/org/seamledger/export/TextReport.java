package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.detail.KindedJunction;
import org.seamledger.element.ModelInfo;
import org.seamledger.junction.Junction;
import org.seamledger.measure.Format;
import org.seamledger.measure.Unit;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/** The ledger for people: plain text of at most 100 columns, lengths in metres and in feet and inches. */
public final class TextReport {

  private static final String INDENT = "  ";
  private static final List<String> POINTS = List.of("north", "north-east", "east", "south-east", "south", "south-west", "west",
      "north-west");

  private final Takeoff takeoff;
  private final Page page = new Page();
  private final SortedMap<String, List<KindedJunction>> byKind;
  private final Set<String> roofElements;

  private TextReport(Takeoff takeoff) {
    this.takeoff = takeoff;
    this.byKind = grouped(takeoff.junctions());
    this.roofElements = takeoff.faces().stream().flatMap(f -> f.elements().stream()).collect(Collectors.toSet());
  }

  /** Writes the report and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    out.write(new TextReport(takeoff).text().getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private String text() {
    header();
    roofFaces();
    totals();
    junctions();
    FindingsSection.write(takeoff.findings(), page);
    ScopeSection.write(page);
    return page.text();
  }

  private static SortedMap<String, List<KindedJunction>> grouped(List<KindedJunction> junctions) {
    SortedMap<String, List<KindedJunction>> groups = new TreeMap<>(KindWords.READING_ORDER);
    Comparator<KindedJunction> longestFirst = Comparator.comparingDouble((KindedJunction j) -> -j.junction().lengthM());
    junctions.stream().sorted(longestFirst.thenComparing(j -> j.junction().id()))
        .forEach(j -> groups.computeIfAbsent(j.kind(), kind -> new java.util.ArrayList<>()).add(j));
    return groups;
  }

  private void header() {
    page.line(Program.NAME + " " + takeoff.version() + ": junctions of a standing-seam metal roof").blank();
    Table table = new Table("", "ll");
    for (ModelInfo model : takeoff.models()) {
      table.row("Model", model.file());
      table.row("", model.schema() + ", lengths in " + model.lengthUnit()
          + (model.application().isBlank() ? "" : ", written by " + model.application()));
    }
    table.row("Roof", count(takeoff.faces().size(), "face") + ", " + area(takeoff.faces().stream().mapToDouble(RoofFace::areaM2).sum())
        + " of surface, " + area(takeoff.faces().stream().mapToDouble(RoofFace::planAreaM2).sum()) + " in plan");
    table.row("Junctions", count(takeoff.junctions().size(), "line") + ", " + Format.formatBoth(lengthM(takeoff.junctions())));
    table.row("Findings", FindingsSection.counts(takeoff.findings()));
    table.on(page);
  }

  private void roofFaces() {
    if (takeoff.faces().isEmpty()) {
      return;
    }
    page.title("Roof faces");
    Table table = new Table(INDENT, "lrrlrrrl").row("face", "slope", "in 12", "falls to", "m²", "ft²", "perimeter", "modelled as");
    for (RoofFace face : takeoff.faces()) {
      table.row(face.id(), Format.fixed(face.slopeDegrees(), 2) + "°", Format.fixed(face.risePer12(), 2) + ":12", fall(face),
          Format.fixed(face.areaM2(), 2), Format.fixed(Unit.SQUARE_FOOT.fromSi(face.areaM2()), 1),
          Format.formatMetres(face.perimeterM()), names(face.elements()));
    }
    table.on(page);
  }

  /** By compass, the model's +Y as north. */
  private static String fall(RoofFace face) {
    if (face.slopeDegrees() < 0.05) {
      return "level";
    }
    double azimuth = face.fallAzimuthDegrees();
    return POINTS.get((int) Math.round(azimuth / 45) % 8) + " " + Format.fixed(azimuth, 0) + "°";
  }

  private void totals() {
    if (byKind.isEmpty()) {
      return;
    }
    page.title("Lengths by kind");
    Table table = new Table(INDENT, "lrrrl").row("kind", "lines", "m", "ft and in", "what it is");
    byKind.forEach((kind, group) -> table.row(kind, Integer.toString(group.size()), Format.fixed(lengthM(group), 3),
        Format.formatFeetInches(lengthM(group)), KindWords.meaning(kind)));
    table.row("all", Integer.toString(takeoff.junctions().size()), Format.fixed(lengthM(takeoff.junctions()), 3),
        Format.formatFeetInches(lengthM(takeoff.junctions())));
    table.on(page);
  }

  private void junctions() {
    if (byKind.isEmpty()) {
      return;
    }
    page.title("Junctions");
    Table table = new Table(INDENT, "lrrlll");
    byKind.forEach((kind, group) -> {
      table.row(kind);
      group.forEach(j -> junction(table, j.junction()));
    });
    table.on(page);
  }

  private void junction(Table table, Junction junction) {
    List<String> neighbours = junction.elements().stream().filter(this::isNoRoof).toList();
    String words = FactWords.of(junction.facts());
    String names = neighbours.isEmpty() ? "" : names(neighbours);
    table.row(INDENT + junction.id(), Format.fixed(junction.lengthM(), 3), Format.formatFeetInches(junction.lengthM()),
        String.join(" ", junction.faces()), words + (words.isEmpty() || names.isEmpty() ? "" : ": ") + names);
  }

  private boolean isNoRoof(String globalId) {
    return !roofElements.contains(globalId);
  }

  /** What the authoring tool calls some elements: the first name, and how many more there are. */
  private String names(List<String> globalIds) {
    ElementLabel first = globalIds.isEmpty() ? null : takeoff.elements().get(globalIds.get(0));
    String name = first == null ? "" : first.name().isBlank() ? first.ifcClass() : first.name();
    return OneLine.of(name) + (globalIds.size() > 1 ? " +" + (globalIds.size() - 1) : "");
  }

  private static double lengthM(List<KindedJunction> junctions) {
    return junctions.stream().mapToDouble(j -> j.junction().lengthM()).sum();
  }

  private static String area(double m2) {
    return Format.formatArea(m2);
  }

  static String count(int n, String noun) {
    return n + " " + noun + (n == 1 ? "" : "s");
  }
}
