package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;
import java.util.Optional;
import org.seamledger.export.json.JsonOutput;
import org.seamledger.finding.Finding;
import org.seamledger.order.Alternate;
import org.seamledger.order.AlternateComparison;
import org.seamledger.order.OrderLine;
import org.seamledger.order.PricedOrder;

/** Alternates as one JSON document: amounts and findings in the order of the alternates. */
public final class AlternatesJson {

  private final AlternateComparison comparison;
  private final JsonOutput json;

  private AlternatesJson(AlternateComparison comparison, JsonOutput json) {
    this.comparison = comparison;
    this.json = json;
  }

  /** Writes the document and a line end, and flushes; leaves {@code out} open. */
  public static void write(AlternateComparison comparison, OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      AlternatesJson alternates = new AlternatesJson(comparison, json);
      json.document(alternates::fields);
    }
  }

  private void fields() throws IOException {
    json.objects("alternates", comparison.alternates(), this::alternate);
    json.objects("order", comparison.lines(), this::line);
    json.objects("findings", comparison.findings().entrySet(), this::finding);
  }

  private void alternate(Alternate a) throws IOException {
    json.word("name", a.name());
    if (a.priced().isPresent()) {
      PricedOrder p = a.priced().get();
      json.word("currency", p.currency());
      json.decimal("total", p.total());
      json.decimal("labourHours", p.hours());
      json.words("unpriced", p.unpriced());
    }
  }

  private void line(OrderLine any) throws IOException {
    json.word("id", any.id());
    json.word("item", any.item());
    json.word("unit", any.unit());
    json.word("orderUnit", any.orderUnit());
    json.objects("amounts", comparison.alternates(), a -> amount(any.id(), a));
  }

  private void amount(String id, Alternate a) throws IOException {
    Alternate first = comparison.alternates().get(0);
    Optional<OrderLine> line = a.line(id);
    json.number("net", line.map(OrderLine::net).orElse(0.0));
    json.count("order", line.map(OrderLine::order).orElse(0L));
    json.count("orderDifference", line.map(OrderLine::order).orElse(0L) - first.line(id).map(OrderLine::order).orElse(0L));
    if (a.cost(id).isPresent()) {
      json.decimal("cost", a.cost(id).get().cost());
    }
    Optional<java.math.BigDecimal> difference = AlternatesCsv.costDifference(id, a, first);
    if (difference.isPresent()) {
      json.decimal("costDifference", difference.get());
    }
  }

  private void finding(Map.Entry<String, Finding> f) throws IOException {
    json.word("code", f.getValue().code());
    json.word("severity", f.getValue().severity().word());
    json.word("message", f.getValue().message());
    json.wordOrNull("junction", f.getValue().junction());
    json.words("changes", comparison.alternates().stream().map(a -> comparison.change(f.getKey(), a)).toList());
  }
}
