package org.seamledger.order;

import java.util.Optional;
import java.util.TreeMap;
import java.util.SortedMap;
import org.seamledger.finding.Finding;
import org.seamledger.takeoff.Takeoff;

/**
 * One roof under one system.
 *
 * @param name for people, unique among those compared
 * @param findings by what stays the same under another system: code, junction and elements
 */
public record Alternate(String name, OrderList order, Optional<PricedOrder> priced, SortedMap<String, Finding> findings) {

  public static Alternate of(String name, Takeoff takeoff, Optional<PriceList> prices) {
    OrderList order = OrderList.of(takeoff);
    SortedMap<String, Finding> findings = new TreeMap<>();
    takeoff.findings().forEach(f -> findings.putIfAbsent(f.code() + " " + f.junction() + " " + String.join(" ", f.elements()), f));
    return new Alternate(name, order, prices.map(p -> PricedOrder.of(order, p)), findings);
  }

  /** A line of its order by id. */
  public Optional<OrderLine> line(String id) {
    return order.lines().stream().filter(l -> l.id().equals(id)).findFirst();
  }

  /** What a line costs; empty where it isn't there or has no price. */
  public Optional<CostedLine> cost(String id) {
    return priced.flatMap(p -> p.cost(id));
  }
}
