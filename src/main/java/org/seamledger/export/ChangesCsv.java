package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Map;
import org.seamledger.export.wording.OneLine;
import org.seamledger.ledger.Comparison;

/**
 * What differs from one result to another as comma-separated values, one row a difference. {@code about} is junction, length, order,
 * finding, override or the name of a list of the result; {@code change} is added, gone, changed or, of findings, still. {@code before} and
 * {@code after} are numbers where {@code field} is one, in the unit that its name ends in.
 */
public final class ChangesCsv {

  private static final List<String> HEADER = List.of("about", "change", "id", "kind", "field", "before", "after", "difference", "code",
      "severity", "accepted", "message");
  private static final double SAME = 1e-6;

  private final Comparison c;
  private final Rows rows;

  private ChangesCsv(Comparison c, OutputStream out) {
    this.c = c;
    this.rows = new Rows(out);
  }

  /** Writes all rows and flushes; leaves {@code out} open. */
  public static void write(Comparison c, OutputStream out) throws IOException {
    ChangesCsv csv = new ChangesCsv(c, out);
    csv.rows.row(HEADER);
    csv.junctions();
    for (Map.Entry<String, double[]> kind : c.lengthByKind().entrySet()) {
      csv.amount("length", kind.getKey(), kind.getKey(), new Comparison.Amount("lengthM", kind.getValue()[0], kind.getValue()[1]));
    }
    for (Comparison.Amount a : c.quantities()) {
      csv.amount("order", "", "", a);
    }
    csv.findings();
    for (Comparison.Unfit o : c.unfitOverrides()) {
      csv.words("override", o.changes().contains("gone") ? "gone" : "changed", o.junction(), o.kind(), String.join(" ", o.changes()),
          o.detail(), "", o.reason());
    }
    for (Comparison.Entry e : c.entries()) {
      csv.words(e.list(), e.change(), e.id(), "", String.join(" ", e.fields()), "", "", "");
    }
    csv.rows.flush();
  }

  private void junctions() throws IOException {
    for (Comparison.Line l : c.added()) {
      row("junction", "added", l.id(), l.kind(), "lengthM", "", Rows.number(l.lengthM()), Rows.number(l.lengthM()));
    }
    for (Comparison.Line l : c.removed()) {
      row("junction", "gone", l.id(), l.kind(), "lengthM", Rows.number(l.lengthM()), "", Rows.number(-l.lengthM()));
    }
    for (Comparison.Pair p : c.pairs()) {
      for (String change : p.changes()) {
        switch (change) {
          case "kind" -> words("junction", "changed", p.after().id(), p.after().kind(), change, p.before().kind(), p.after().kind(), "");
          case "detail" ->
              words("junction", "changed", p.after().id(), p.after().kind(), change, p.before().detail(), p.after().detail(), "");
          case "place", "neighbour" -> words("junction", "changed", p.after().id(), p.after().kind(), change, "", "", "");
          default -> {
            // Its numbers follow.
          }
        }
      }
      for (Comparison.Amount a : p.figures()) {
        amount("junction", p.after().id(), p.after().kind(), a);
      }
    }
  }

  private void findings() throws IOException {
    for (Comparison.Found f : c.newFindings()) {
      finding("added", f);
    }
    for (Comparison.Found f : c.goneFindings()) {
      finding("gone", f);
    }
    for (Comparison.Kept k : c.keptFindings()) {
      finding("still", k.after());
    }
  }

  private void finding(String change, Comparison.Found f) throws IOException {
    rows.row(List.of("finding", change, f.junction(), "", "", "", "", "", f.code(), f.severity(), f.accepted() ? "yes" : "no",
        OneLine.of(f.message())));
  }

  /** A number that differs; one that doesn't has no row. */
  private void amount(String about, String id, String kind, Comparison.Amount a) throws IOException {
    if (Math.abs(a.after() - a.before()) <= SAME || Double.isNaN(a.before()) && Double.isNaN(a.after())) {
      return;
    }
    String change =
        about.equals("junction") ? "changed" : Double.isNaN(a.before()) ? "added" : Double.isNaN(a.after()) ? "gone" : "changed";
    row(about, change, id, kind, a.name(), cell(a.before()), cell(a.after()), cell(a.after() - a.before()));
  }

  private static String cell(double value) {
    return Double.isNaN(value) ? "" : Rows.number(value);
  }

  private void words(String about, String change, String id, String kind, String field, String before, String after, String message)
      throws IOException {
    rows.row(List.of(about, change, id, kind, field, before, after, "", "", "", "", OneLine.of(message)));
  }

  private void row(String about, String change, String id, String kind, String field, String before, String after, String difference)
      throws IOException {
    rows.row(List.of(about, change, id, kind, field, before, after, difference, "", "", "", ""));
  }
}
