package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.seamledger.element.ModelInfo;
import org.seamledger.export.wording.OneLine;
import org.seamledger.order.CostedLine;
import org.seamledger.order.OrderLine;
import org.seamledger.order.OrderList;
import org.seamledger.order.PriceList;
import org.seamledger.order.PricedOrder;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/**
 * The order as comma-separated values that a spreadsheet calculates with: one header row, one row a line, one value a cell, units in
 * columns of their own, no total that a sum would count twice. UTF-8 without a byte order mark. Every row names its model, with the date
 * that the model's file states, and the roof system.
 */
public final class OrderCsv {

  private static final List<String> HEADER = List.of("id", "group", "item", "size", "net", "unit", "wastePercent", "withWaste", "pack",
      "order", "orderUnit", "lengthM", "areaM2", "massKg", "price", "priceUnit", "cost", "currency", "labourHours", "priceNote",
      "arithmetic", "faces", "junctions", "model", "modelSha256", "modelDate", "system", "program");

  private OrderCsv() {
  }

  /** Writes all rows and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, Optional<PriceList> prices, OutputStream out) throws IOException {
    Rows rows = new Rows(out);
    rows(OrderList.of(takeoff), prices, source(takeoff), rows);
    rows.flush();
  }

  /** All rows of one takeoff's order without prices, the header first. */
  public static void rows(Takeoff takeoff, RowSink rows) throws IOException {
    rows(OrderList.of(takeoff), Optional.empty(), source(takeoff), rows);
  }

  /**
   * All rows of an order, the header first.
   *
   * @param source cells of the last columns, from {@code model} on
   */
  public static void rows(OrderList order, Optional<PriceList> prices, List<String> source, RowSink rows) throws IOException {
    Optional<PricedOrder> priced = prices.map(p -> PricedOrder.of(order, p));
    rows.row(HEADER);
    for (OrderLine line : order.lines()) {
      List<String> cells = new ArrayList<>(cells(line));
      cells.addAll(cost(line, priced));
      cells
          .addAll(List.of(OneLine.of(String.join("; ", line.steps())), String.join(" ", line.faces()), String.join(" ", line.junctions())));
      cells.addAll(source);
      rows.row(cells);
    }
  }

  private static List<String> source(Takeoff takeoff) {
    return List.of(each(takeoff, ModelInfo::file), each(takeoff, ModelInfo::sha256), each(takeoff, ModelInfo::written),
        OneLine.of(takeoff.system().name()), Program.NAME + " " + takeoff.version());
  }

  private static String each(Takeoff takeoff, java.util.function.Function<ModelInfo, String> what) {
    return takeoff.models().stream().map(what).map(OneLine::of).collect(Collectors.joining("; "));
  }

  private static List<String> cells(OrderLine line) {
    return List.of(line.id(), line.group().word(), OneLine.of(line.item()), OneLine.of(line.size()), Rows.number(line.net()), line.unit(),
        Rows.number(100 * line.wasteShare()), Rows.number(line.withWaste()), Rows.number(line.pack()), Long.toString(line.order()),
        line.orderUnit(), measure(line, "m"), measure(line, "m2"), measure(line, "kg"));
  }

  private static String measure(OrderLine line, String unit) {
    return line.measures().containsKey(unit) ? Rows.number(line.measures().get(unit)) : "";
  }

  private static List<String> cost(OrderLine line, Optional<PricedOrder> priced) {
    if (priced.isEmpty()) {
      return List.of("", "", "", "", "", "");
    }
    Optional<CostedLine> cost = priced.get().cost(line.id());
    return cost.map(c -> List.of(number(c.price()), c.unit(), number(c.cost()), OneLine.of(priced.get().currency()), number(c.hours()),
        OneLine.of(c.note()))).orElseGet(() -> List.of("", "", "", "", "", "no price"));
  }

  private static String number(BigDecimal value) {
    return value.toPlainString();
  }
}
