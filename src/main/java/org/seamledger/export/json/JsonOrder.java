package org.seamledger.export.json;

import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import org.seamledger.order.CostedLine;
import org.seamledger.order.OrderLine;
import org.seamledger.order.OrderList;
import org.seamledger.order.PricedOrder;
import org.seamledger.order.SheetStrips;

/** The order in the JSON ledger, with prices where somebody stated them. */
public final class JsonOrder {

  private final JsonOutput json;
  private final OrderList order;
  private final Optional<PricedOrder> priced;

  public JsonOrder(OrderList order, Optional<PricedOrder> priced, JsonOutput json) {
    this.order = order;
    this.priced = priced;
    this.json = json;
  }

  public void order() throws IOException {
    json.objects("order", order.lines(), this::line);
    json.objects("trimSheets", order.sheets(), this::sheets);
    if (priced.isPresent()) {
      json.object("costs", () -> costs(priced.get()));
    }
  }

  private void line(OrderLine line) throws IOException {
    json.word("id", line.id());
    json.word("group", line.group().word());
    json.word("item", line.item());
    json.word("size", line.size());
    json.number("net", line.net());
    json.word("unit", line.unit());
    json.number("wastePercent", 100 * line.wasteShare());
    json.number("withWaste", line.withWaste());
    json.number("pack", line.pack());
    json.count("order", line.order());
    json.word("orderUnit", line.orderUnit());
    json.words("junctions", line.junctions());
    json.words("faces", line.faces());
    json.object("measures", () -> {
      for (Map.Entry<String, Double> measure : line.measures().entrySet()) {
        json.number(measure.getKey(), measure.getValue());
      }
    });
    json.words("steps", line.steps());
    Optional<CostedLine> cost = priced.flatMap(p -> p.cost(line.id()));
    if (cost.isPresent()) {
      json.decimal("price", cost.get().price());
      json.word("priceUnit", cost.get().unit());
      json.decimal("cost", cost.get().cost());
      json.decimal("labourHours", cost.get().hours());
    }
  }

  private void sheets(SheetStrips sheets) throws IOException {
    json.number("widthM", sheets.widthM());
    json.number("lengthM", sheets.lengthM());
    json.count("sheets", sheets.sheets());
    json.count("bound", sheets.bound());
    json.objects("strips", sheets.strips(), strip -> {
      json.number("girthM", strip.girthM());
      json.count("count", strip.count());
      json.count("across", strip.across());
    });
    json.tree("tooWideM", sheets.tooWide());
  }

  private void costs(PricedOrder p) throws IOException {
    json.word("currency", p.currency());
    json.decimal("total", p.total());
    json.decimal("labourHours", p.hours());
    json.words("unpriced", p.unpriced());
    json.words("remarks", p.remarks());
  }
}
