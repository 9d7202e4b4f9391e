package org.seamledger.export.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.detail.Seal;
import org.seamledger.export.wording.CountText;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.export.wording.FactWords;
import org.seamledger.export.wording.OverrideText;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.takeoff.Takeoff;

/** Every junction, then every joint of panels, for people: by kind and detail, the longest first, with what each detail takes in all. */
public final class JunctionsSection {

  private static final String INDENT = "  ";

  private final Takeoff takeoff;
  private final Set<String> roofElements;

  private JunctionsSection(Takeoff takeoff) {
    this.takeoff = takeoff;
    this.roofElements = takeoff.faces().stream().flatMap(f -> f.elements().stream()).collect(Collectors.toSet());
  }

  public static void write(Takeoff takeoff, TextPage page) {
    JunctionsSection section = new JunctionsSection(takeoff);
    page.title("Junctions");
    section.write(takeoff.detailed(), page);
    if (!takeoff.joints().isEmpty()) {
      page.title("Panel joints, within faces");
      section.write(takeoff.joints(), page);
    }
  }

  private void write(List<DetailedJunction> lines, TextPage page) {
    Table table = new Table(INDENT, "lrrll");
    byKind(lines).forEach((kind, ofKind) -> byDetail(ofKind).forEach((detail, group) -> {
      table.span(kind.id() + (detail.isEmpty() ? "" : ", detail " + detail));
      String takes = takes(group);
      if (!takes.isEmpty()) {
        table.span(INDENT + takes);
      }
      group.forEach(j -> row(table, j));
    }));
    table.on(page);
  }

  public static SortedMap<Kind, List<DetailedJunction>> byKind(List<DetailedJunction> junctions) {
    SortedMap<Kind, List<DetailedJunction>> groups = new TreeMap<>();
    Comparator<DetailedJunction> longestFirst = Comparator.comparingDouble(j -> -j.junction().junction().lengthM());
    junctions.stream().sorted(longestFirst.thenComparing(j -> j.junction().junction().id()))
        .forEach(j -> groups.computeIfAbsent(j.junction().type(), kind -> new ArrayList<>()).add(j));
    return groups;
  }

  private static SortedMap<String, List<DetailedJunction>> byDetail(List<DetailedJunction> junctions) {
    SortedMap<String, List<DetailedJunction>> groups = new TreeMap<>();
    junctions.forEach(j -> groups.computeIfAbsent(j.detail().equals(Detail.NONE) ? "" : j.detail().id(), id -> new ArrayList<>()).add(j));
    return groups;
  }

  private String takes(List<DetailedJunction> group) {
    List<JunctionQuantities> all = group.stream().map(j -> takeoff.quantities().byJunction().get(j.junction().junction().id())).toList();
    List<String> words = new ArrayList<>();
    addLength(words, "tape", SealSums.lengthM(all, Seal.Form.TAPE));
    addLength(words, "bead", SealSums.lengthM(all, Seal.Form.BEAD));
    addLength(words, "non-curing", SealSums.lengthM(all, Seal.Form.IN_SEAM));
    addCount(words, "closure", all.stream().mapToInt(JunctionQuantities::closurePieces).sum());
    addCount(words, "fastener", SealSums.fasteners(all));
    return words.isEmpty() ? "" : "requires " + String.join(", ", words);
  }

  private static void addLength(List<String> words, String what, double metres) {
    if (metres > 0) {
      words.add(what + " " + MeasureFormat.formatMetres(metres));
    }
  }

  private static void addCount(List<String> words, String noun, int n) {
    if (n > 0) {
      words.add(CountText.of(n, noun));
    }
  }

  private void row(Table table, DetailedJunction detailed) {
    Junction junction = detailed.junction().junction();
    List<String> neighbours = junction.elements().stream().filter(id -> !roofElements.contains(id)).toList();
    String measured = FactWords.of(junction.facts());
    String words = detailed.decided().isEmpty() ? measured : measured.isEmpty() ? OverrideText.MARK : OverrideText.MARK + ", " + measured;
    String names = neighbours.isEmpty() ? "" : ElementNames.of(takeoff, neighbours);
    table.row(INDENT + junction.id(), MeasureFormat.fixed(junction.lengthM(), 3), MeasureFormat.formatFeetInches(junction.lengthM()),
        String.join(" ", junction.faces()), names + (words.isEmpty() || names.isEmpty() ? "" : ", ") + words);
  }
}
