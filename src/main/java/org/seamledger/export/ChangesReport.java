package org.seamledger.export;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.seamledger.detail.Kinds;
import org.seamledger.export.report.Table;
import org.seamledger.export.report.TextPage;
import org.seamledger.export.wording.OneLine;
import org.seamledger.ledger.Comparison;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.takeoff.Program;

/** What differs from one result to another, for people: plain text of at most 100 columns. */
public final class ChangesReport {

  private static final String INDENT = "  ";
  /** Numbers of the order are lengths, volumes and counts; what differs by less is rounding. */
  private static final double SAME = 1e-6;
  private static final double SAME_M = 0.0005;

  /** Kinds of the contract in their order, then others by name: a stored result may come from other shapes than today's. */
  private static final Comparator<String> READING_ORDER =
      Comparator.comparingInt((String kind) -> Kinds.ALL.contains(kind) ? Kinds.ALL.indexOf(kind) : Kinds.ALL.size())
          .thenComparing(kind -> kind.equals(Kinds.UNCLASSIFIED)).thenComparing(Comparator.naturalOrder());

  private final Comparison c;
  private final TextPage page = new TextPage();

  private ChangesReport(Comparison c) {
    this.c = c;
  }

  /**
   * Writes the report.
   *
   * @param before what people call the older result, such as {@code revision 3}
   * @param after what they call the newer one
   */
  public static String text(String before, String after, Comparison c) {
    ChangesReport report = new ChangesReport(c);
    report.head(OneLine.of(before), OneLine.of(after));
    report.lengths();
    report.junctions();
    report.findings();
    report.order();
    return report.page.text();
  }

  private void head(String before, String after) {
    page.paragraph("", "", Program.NAME + ": what changed from " + before + " to " + after).blank();
    long changed = c.pairs().stream().filter(p -> !p.changes().isEmpty()).count();
    Table table = new Table("", "ll");
    table.row("Junctions", c.added().size() + " added, " + c.removed().size() + " gone, " + changed + " changed, "
        + (c.pairs().size() - changed) + " as before");
    table.row("Findings",
        c.newFindings().size() + " new, " + c.goneFindings().size() + " gone, " + c.keptFindings().size() + " still there");
    if (!c.unfitOverrides().isEmpty()) {
      table.row("Overrides", c.unfitOverrides().size() + " no longer fit");
    }
    c.entries().stream().collect(Collectors.groupingBy(Comparison.Entry::list, LinkedHashMap::new, Collectors.toList()))
        .forEach((list, entries) -> table.row(words(list), entries(entries)));
    if (!c.settings().isEmpty()) {
      table.row("Made with", "another " + String.join(", other ", c.settings()) + ": some of this may come from there");
    }
    table.row("Order", changedAmounts().isEmpty() ? "as before" : changedAmounts().size() + " numbers differ");
    table.on(page);
  }

  private static String entries(List<Comparison.Entry> entries) {
    return Stream.of("added", "gone", "changed")
        .map(change -> entries.stream().filter(e -> e.change().equals(change)).count() + " " + change)
        .collect(Collectors.joining(", "));
  }

  private void lengths() {
    List<Map.Entry<String, double[]>> kinds = c.lengthByKind().entrySet().stream()
        .filter(e -> Math.abs(e.getValue()[1] - e.getValue()[0]) >= SAME_M)
        .sorted(Map.Entry.comparingByKey(READING_ORDER)).toList();
    if (kinds.isEmpty()) {
      return;
    }
    page.title("Lengths that differ, in metres");
    Table table = new Table(INDENT, "lrrrr").row("kind", "before", "now", "difference", "ft and in");
    kinds.forEach(e -> table.row(e.getKey(), MeasureFormat.fixed(e.getValue()[0], 3), MeasureFormat.fixed(e.getValue()[1], 3),
        signed(e.getValue()[1] - e.getValue()[0], 3), feet(e.getValue()[1] - e.getValue()[0])));
    double before = c.lengthByKind().values().stream().mapToDouble(m -> m[0]).sum();
    double after = c.lengthByKind().values().stream().mapToDouble(m -> m[1]).sum();
    table.row("all kinds", MeasureFormat.fixed(before, 3), MeasureFormat.fixed(after, 3), signed(after - before, 3), feet(after - before));
    table.on(page);
  }

  private void junctions() {
    lines("Junctions added", c.added());
    lines("Junctions gone", c.removed());
    List<Comparison.Pair> changed = c.pairs().stream().filter(p -> !p.changes().isEmpty()).toList();
    if (!changed.isEmpty()) {
      page.title("Junctions changed");
      Table table = new Table(INDENT, "llrrl").row("junction", "kind", "before", "now", "what differs");
      for (Comparison.Pair p : changed) {
        table.row(p.after().id(), kinds(p), MeasureFormat.fixed(p.before().lengthM(), 3), MeasureFormat.fixed(p.after().lengthM(), 3),
            String.join(", ", p.changes()));
        details(p).forEach(words -> table.row("", words));
      }
      table.on(page);
    }
  }

  /** Detail and numbers of a line that differ, its length apart. */
  private static List<String> details(Comparison.Pair p) {
    List<String> words = new ArrayList<>();
    if (!p.before().detail().equals(p.after().detail())) {
      words.add("detail " + orNone(p.before().detail()) + " → " + orNone(p.after().detail()));
    }
    p.figures().stream().filter(a -> !a.name().equals("lengthM"))
        .forEach(a -> words.add(words(a.name()) + ": " + number(a.before()) + " → " + number(a.after())));
    return words;
  }

  private static String orNone(String word) {
    return word.isEmpty() ? "none" : word;
  }

  private static String kinds(Comparison.Pair p) {
    return p.before().kind().equals(p.after().kind()) ? p.after().kind() : p.before().kind() + " → " + p.after().kind();
  }

  private void lines(String title, List<Comparison.Line> lines) {
    if (lines.isEmpty()) {
      return;
    }
    page.title(title);
    Table table = new Table(INDENT, "llrr").row("junction", "kind", "m", "ft and in");
    lines.stream().sorted((a, b) -> READING_ORDER.compare(a.kind(), b.kind()))
        .forEach(l -> table.row(l.id(), l.kind(), MeasureFormat.fixed(l.lengthM(), 3), MeasureFormat.formatFeetInches(l.lengthM())));
    table.on(page);
  }

  private void findings() {
    findings("New findings", c.newFindings());
    findings("Findings that are gone", c.goneFindings());
    overrides();
  }

  private void overrides() {
    if (c.unfitOverrides().isEmpty()) {
      return;
    }
    page.title("Overrides that no longer fit");
    c.unfitOverrides().forEach(o -> page.paragraph(INDENT, INDENT + INDENT, o.junction() + ": "
        + Stream.of(o.kind().isEmpty() ? "" : "kind " + o.kind(), o.detail().isEmpty() ? "" : "detail " + o.detail())
            .filter(w -> !w.isEmpty()).collect(Collectors.joining(", "))
        + "; " + (o.changes().contains("gone") ? "the line is gone" : "what changed: " + String.join(", ", o.changes()))
        + ". Reason: " + OneLine.of(o.reason())));
  }

  private void findings(String title, List<Comparison.Found> findings) {
    if (findings.isEmpty()) {
      return;
    }
    page.title(title);
    findings.forEach(f -> page.line(INDENT + f.severity() + "  " + f.code() + (f.junction().isEmpty() ? "" : "  " + f.junction())
        + (f.accepted() ? "  (accepted)" : ""))
        .paragraph(INDENT + "- ", INDENT + INDENT, OneLine.of(f.message())));
  }

  private void order() {
    if (changedAmounts().isEmpty()) {
      return;
    }
    page.title("Difference in the order");
    Table table = new Table(INDENT, "lrrr").row("", "before", "now", "difference");
    changedAmounts().forEach(a -> table.row(words(a.name()), number(a.before()), number(a.after()),
        Double.isNaN(a.before()) || Double.isNaN(a.after()) ? "" : signed(a.after() - a.before(), 3)));
    table.on(page);
  }

  private List<Comparison.Amount> changedAmounts() {
    return c.quantities().stream().filter(a -> !(Math.abs(a.after() - a.before()) <= SAME))
        .filter(a -> !Double.isNaN(a.before()) || !Double.isNaN(a.after())).toList();
  }

  /** {@code tape.orderM} is "tape, order m": path and unit as words. */
  private static String words(String name) {
    return name.replace(".", ", ").replaceAll("([a-z])([A-Z])", "$1 $2").toLowerCase(Locale.ROOT);
  }

  private static String number(double value) {
    return Double.isNaN(value) ? "none" : MeasureFormat.plain(value, 3);
  }

  private static String signed(double value, int places) {
    String text = value == Math.rint(value) ? Long.toString(Math.abs((long) value)) : MeasureFormat.fixed(Math.abs(value), places);
    return (value < 0 ? "−" : "+") + text;
  }

  private static String feet(double metres) {
    return (metres < 0 ? "−" : "+") + MeasureFormat.formatFeetInches(Math.abs(metres));
  }
}
