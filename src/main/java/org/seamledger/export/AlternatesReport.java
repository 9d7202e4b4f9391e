package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.seamledger.export.report.Table;
import org.seamledger.export.report.TextPage;
import org.seamledger.export.wording.OneLine;
import org.seamledger.finding.Finding;
import org.seamledger.order.Alternate;
import org.seamledger.order.AlternateComparison;
import org.seamledger.order.OrderLine;
import org.seamledger.order.PricedOrder;

/** Alternates for people: what each orders, side by side, and the findings that come and go. */
public final class AlternatesReport {

  private static final String INDENT = "  ";
  private static final char A = 'A';

  private AlternatesReport() {
  }

  /** Writes the report and flushes; leaves {@code out} open. */
  public static void write(AlternateComparison c, OutputStream out) throws IOException {
    TextPage page = new TextPage();
    page.title("Alternates");
    for (int i = 0; i < c.alternates().size(); i++) {
      Alternate a = c.alternates().get(i);
      page.line(INDENT + letter(i) + "  " + OneLine.of(a.name()) + a.priced().map(AlternatesReport::total).orElse(""));
    }
    page.blank();
    order(c, page);
    findings(c, page);
    out.write(page.text().getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private static String letter(int i) {
    return i < 26 ? String.valueOf((char) (A + i)) : Integer.toString(i + 1);
  }

  private static String total(PricedOrder p) {
    return ": " + p.total().toPlainString() + " " + OneLine.of(p.currency())
        + (p.unpriced().isEmpty() ? "" : ", without " + p.unpriced().size() + " lines that have no price");
  }

  private static void order(AlternateComparison c, TextPage page) {
    Table table = new Table(INDENT, "l" + "r".repeat(c.alternates().size()) + "l");
    List<String> head = new ArrayList<>(List.of("to order"));
    for (int i = 0; i < c.alternates().size(); i++) {
      head.add(letter(i));
    }
    head.add("");
    table.row(head.toArray(String[]::new));
    for (OrderLine line : c.lines()) {
      List<String> row = new ArrayList<>(List.of(OneLine.of(line.id())));
      c.alternates().forEach(a -> row.add(Long.toString(a.line(line.id()).map(OrderLine::order).orElse(0L))));
      row.add(line.orderUnit());
      table.row(row.toArray(String[]::new));
    }
    table.on(page);
  }

  private static void findings(AlternateComparison c, TextPage page) {
    for (int i = 1; i < c.alternates().size(); i++) {
      Alternate a = c.alternates().get(i);
      page.blank().line(INDENT + "Findings of " + letter(i) + " against A");
      boolean same = true;
      for (Map.Entry<String, Finding> f : c.findings().entrySet()) {
        String change = c.change(f.getKey(), a);
        if (change.equals("comes") || change.equals("goes")) {
          same = false;
          page.paragraph(INDENT + change + ": ", INDENT + INDENT, OneLine.of(f.getValue().code() + ", " + f.getValue().message()));
        }
      }
      if (same) {
        page.line(INDENT + "the same");
      }
    }
  }
}
