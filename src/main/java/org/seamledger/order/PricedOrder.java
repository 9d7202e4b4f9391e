package org.seamledger.order;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * An order with its prices. Sums are decimal and exact: each line is rounded to the hundredth once, and the total is the sum of the lines.
 * A line without a price is listed and never counts as nothing.
 *
 * @param currency as the price list states it; no money is converted
 * @param unpriced ids of the lines without a price
 * @param remarks prices that did not fit, for people
 */
public record PricedOrder(OrderList order, String currency, Map<String, CostedLine> costs, List<String> unpriced, List<String> remarks) {

  private static final int HUNDREDTHS = 2;

  public PricedOrder {
    costs = java.util.Collections.unmodifiableMap(new TreeMap<>(costs));
    unpriced = List.copyOf(unpriced);
    remarks = List.copyOf(remarks);
  }

  public static PricedOrder of(OrderList order, PriceList prices) {
    Map<String, CostedLine> costs = new TreeMap<>();
    List<String> unpriced = new ArrayList<>();
    List<String> remarks = new ArrayList<>();
    Set<Integer> used = new HashSet<>();
    for (OrderLine line : order.lines()) {
      Optional<PriceList.Row> row = prices.of(line.id());
      row.ifPresent(r -> used.add(r.line()));
      Optional<CostedLine> cost = row.flatMap(r -> cost(line, r));
      cost.ifPresentOrElse(c -> costs.put(line.id(), c), () -> unpriced.add(line.id()));
      if (row.isPresent() && cost.isEmpty()) {
        remarks
            .add(prices.file() + ": line " + row.get().line() + ": " + line.id() + " is not sold by the " + row.get().unit() + "; it has "
                + String.join(", ", line.measures().keySet()));
      }
    }
    prices.rows().stream().filter(r -> !used.contains(r.line()))
        .forEach(r -> remarks.add(prices.file() + ": line " + r.line() + ": " + r.id() + " applies to no line of this order"));
    return new PricedOrder(order, prices.currency(), costs, unpriced, remarks);
  }

  private static Optional<CostedLine> cost(OrderLine line, PriceList.Row row) {
    return PriceUnit.bought(line, row.unit()).map(bought -> new CostedLine(line, row.price(), row.unit(), bought,
        row.price().multiply(bought).setScale(HUNDREDTHS, RoundingMode.HALF_UP),
        row.hours().multiply(PriceUnit.net(line, row.unit()).orElse(bought)).setScale(HUNDREDTHS, RoundingMode.HALF_UP), row.note()));
  }

  /** What a line costs; empty where it has no price. */
  public Optional<CostedLine> cost(String id) {
    return Optional.ofNullable(costs.get(id));
  }

  /** Of the lines that have a price. */
  public BigDecimal total() {
    return costs.values().stream().map(CostedLine::cost).reduce(new BigDecimal("0.00"), BigDecimal::add);
  }

  /** Hours of labour of the lines that have a price. */
  public BigDecimal hours() {
    return costs.values().stream().map(CostedLine::hours).reduce(new BigDecimal("0.00"), BigDecimal::add);
  }
}
