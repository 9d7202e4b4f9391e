package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamledger.export.wording.OneLine;
import org.seamledger.finding.Finding;
import org.seamledger.order.Alternate;
import org.seamledger.order.AlternateComparison;
import org.seamledger.order.CostedLine;
import org.seamledger.order.OrderLine;

/**
 * Alternates as comma-separated values: a row for each line of the order in each alternate, with its difference to the first alternate,
 * then a row for each finding in each. A line that an alternate doesn't need is 0 there; one without a price has no cost.
 */
public final class AlternatesCsv {

  private static final List<String> HEADER = List.of("what", "id", "item", "alternate", "net", "unit", "order", "orderUnit", "cost",
      "currency", "orderDifference", "costDifference", "change");

  private AlternatesCsv() {
  }

  /** Writes all rows and flushes; leaves {@code out} open. */
  public static void write(AlternateComparison comparison, OutputStream out) throws IOException {
    Rows rows = new Rows(out);
    rows.row(HEADER);
    for (OrderLine line : comparison.lines()) {
      for (Alternate a : comparison.alternates()) {
        rows.row(line(line, a, comparison.alternates().get(0)));
      }
    }
    for (Map.Entry<String, Finding> f : comparison.findings().entrySet()) {
      for (Alternate a : comparison.alternates()) {
        rows.row(List.of("finding", f.getValue().code() + (f.getValue().junction().isEmpty() ? "" : " " + f.getValue().junction()),
            OneLine.of(a.findings().getOrDefault(f.getKey(), f.getValue()).message()), OneLine.of(a.name()), "", "", "", "", "", "", "", "",
            comparison.change(f.getKey(), a)));
      }
    }
    rows.flush();
  }

  private static List<String> line(OrderLine any, Alternate a, Alternate first) {
    Optional<OrderLine> line = a.line(any.id());
    Optional<CostedLine> cost = a.cost(any.id());
    long order = line.map(OrderLine::order).orElse(0L);
    long before = first.line(any.id()).map(OrderLine::order).orElse(0L);
    return List.of("order", any.id(), OneLine.of(any.item()), OneLine.of(a.name()), Rows.number(line.map(OrderLine::net).orElse(0.0)),
        any.unit(), Long.toString(order), any.orderUnit(), cost.map(c -> c.cost().toPlainString()).orElse(""),
        a.priced().map(p -> OneLine.of(p.currency())).orElse(""), Long.toString(order - before),
        costDifference(any.id(), a, first).map(BigDecimal::toPlainString).orElse(""),
        line.isEmpty() ? before == 0 ? "none" : "goes" : before == 0 ? "comes" : "stays");
  }

  /** Known where each alternate that needs the line has a price for it. */
  static Optional<BigDecimal> costDifference(String id, Alternate a, Alternate first) {
    return cost(id, a).flatMap(now -> cost(id, first).map(now::subtract));
  }

  private static Optional<BigDecimal> cost(String id, Alternate a) {
    return a.priced().isPresent() && a.line(id).isEmpty() ? Optional.of(BigDecimal.ZERO) : a.cost(id).map(CostedLine::cost);
  }
}
