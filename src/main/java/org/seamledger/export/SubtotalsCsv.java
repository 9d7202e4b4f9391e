package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.wording.OneLine;
import org.seamledger.order.OrderLine;
import org.seamledger.order.OrderList;
import org.seamledger.order.PriceList;
import org.seamledger.order.PricedOrder;
import org.seamledger.order.Subtotals;
import org.seamledger.takeoff.Takeoff;

/**
 * The order divided by kind, face or another key, as comma-separated values: a row for each line under each key. Where a line of the roof
 * may belong to several keys, the column {@code counted} says so: such rows add up to more than the order, whose
 * own lines then follow once.
 */
public final class SubtotalsCsv {

  private SubtotalsCsv() {
  }

  /** Writes all rows and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, Optional<PriceList> prices, Subtotals.By by, OutputStream out) throws IOException {
    OrderList order = OrderList.of(takeoff);
    Optional<PricedOrder> priced = prices.map(p -> PricedOrder.of(order, p));
    Rows rows = new Rows(out);
    rows.row(List.of("by", "key", "id", "group", "item", "net", "unit", "cost", "currency", "counted"));
    for (Subtotals.Part part : Subtotals.of(takeoff, order, priced, by)) {
      rows.row(List.of(by.word(), OneLine.of(part.key()), part.line().id(), part.line().group().word(), OneLine.of(part.line().item()),
          Rows.number(part.net()), part.line().unit(), part.cost().map(BigDecimal::toPlainString).orElse(""),
          priced.map(p -> OneLine.of(p.currency())).orElse(""), by.isShared() ? "for each that shares it" : "once"));
    }
    for (OrderLine line : by.isShared() ? order.lines() : List.<OrderLine>of()) {
      rows.row(List.of(by.word(), "all, each once", line.id(), line.group().word(), OneLine.of(line.item()), Rows.number(line.net()),
          line.unit(), priced.flatMap(p -> p.cost(line.id())).map(c -> c.cost().toPlainString()).orElse(""),
          priced.map(p -> OneLine.of(p.currency())).orElse(""), "once"));
    }
    rows.flush();
  }
}
