package org.seamledger.order;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.quantity.formula.Order;
import org.seamledger.takeoff.Takeoff;

/**
 * What one takeoff, or several, need of one product, before waste and before it is rounded up to packs. Amounts are whole
 * thousand-millionths of their units, so that adding is exact: neither the order in which takeoffs are added nor how they are grouped
 * changes a sum.
 *
 * @param item what it is called
 * @param size with units, for people; what the takeoffs' sizes have in common
 * @param unit of {@code net} and {@code cut}
 * @param wasteShare to be added, a share of one
 * @param pack content of a unit of sale, in {@code unit}
 * @param orderUnit what a unit of sale is
 * @param net what the drawings take
 * @param cut what is cut for it, laps included: that to which waste is added
 * @param lengths stock lengths of the takeoffs' cutting plans, each building cut by itself; 0 for what comes in packs
 * @param measures the net amount in other units
 * @param takeoffs number of those added up
 */
public record OrderAmount(ProductKey product, OrderGroup group, String item, String size, String unit, double wasteShare, double pack,
    String orderUnit, BigInteger net, BigInteger cut, long lengths, SortedMap<String, BigInteger> measures, long takeoffs) {

  private static final String PARTS = ", ";

  public OrderAmount {
    measures = Collections.unmodifiableSortedMap(new TreeMap<>(measures));
  }

  /** Those of one takeoff, in the order of its lines; lines of one product are one. */
  public static List<OrderAmount> of(Takeoff takeoff) {
    Map<ProductKey, OrderAmount> amounts = new java.util.LinkedHashMap<>();
    for (OrderLine line : OrderList.of(takeoff).lines()) {
      OrderAmount amount = of(line);
      amounts.merge(line.product(), amount, (a, b) -> a.plus(b).inOneTakeoff());
    }
    return List.copyOf(amounts.values());
  }

  private static OrderAmount of(OrderLine line) {
    TreeMap<String, BigInteger> others = new TreeMap<>();
    line.measures().forEach((unit, amount) -> {
      if (!unit.equals(line.unit()) && !unit.equals(line.orderUnit())) {
        others.put(unit, Order.nano(amount));
      }
    });
    BigInteger net = Order.nano(line.net());
    BigInteger cut = line.lengths() > 0 ? Order.nano(line.withWaste() / (1 + line.wasteShare())) : net;
    String item = line.product().id().equals(PanelLines.PANEL) ? "panels" : line.item();
    return new OrderAmount(line.product(), line.group(), item, line.size(), line.unit(), line.wasteShare(), line.pack(), line.orderUnit(),
        net,
        cut, line.lengths(), others, 1);
  }

  private OrderAmount inOneTakeoff() {
    return new OrderAmount(product, group, item, size, unit, wasteShare, pack, orderUnit, net, cut, lengths, measures, 1);
  }

  /**
   * Both together; the same whichever comes first.
   *
   * @throws IllegalArgumentException where they are not the same product by the same roof system
   */
  public OrderAmount plus(OrderAmount o) {
    if (!product.equals(o.product) || !unit.equals(o.unit) || !orderUnit.equals(o.orderUnit) || wasteShare != o.wasteShare
        || pack != o.pack) {
      throw new IllegalArgumentException(product + " in " + pack + " " + unit + " and " + o.product + " in " + o.pack + " " + o.unit);
    }
    TreeMap<String, BigInteger> both = new TreeMap<>(measures);
    o.measures.forEach((u, amount) -> both.merge(u, amount, BigInteger::add));
    return new OrderAmount(product, group.compareTo(o.group) <= 0 ? group : o.group, item.compareTo(o.item) <= 0 ? item : o.item,
        together(size, o.size), unit, wasteShare, pack, orderUnit, net.add(o.net), cut.add(o.cut), Math.addExact(lengths, o.lengths), both,
        takeoffs + o.takeoffs);
  }

  /** The parts with which both sizes begin. */
  private static String together(String a, String b) {
    if (a.equals(b)) {
      return a;
    }
    List<String> first = List.of(a.split(PARTS));
    List<String> second = List.of(b.split(PARTS));
    int same = 0;
    while (same < Math.min(first.size(), second.size()) && first.get(same).equals(second.get(same))) {
      same++;
    }
    return String.join(PARTS, first.subList(0, same));
  }

  /** As a line of an order: waste added and rounded up, once. */
  OrderLine line(String id) {
    Order inPacks = Order.exact(cut, wasteShare, pack);
    long order = lengths > 0 ? Order.whole(lengths, wasteShare) : inPacks.units();
    double netAmount = new BigDecimal(net, 9).doubleValue();
    TreeMap<String, Double> all = new TreeMap<>();
    measures.forEach((u, amount) -> all.put(u, new BigDecimal(amount, 9).doubleValue()));
    all.put(unit, netAmount);
    all.put(orderUnit, (double) order);
    return new OrderLine(id, group, item, size, netAmount, unit, wasteShare, inPacks.withWaste(), pack, order, orderUnit, all,
        List.of(arithmetic(inPacks, order)), List.of(), product, lengths);
  }

  private String arithmetic(Order inPacks, long order) {
    String models = "of " + takeoffs + (takeoffs == 1 ? " model" : " models");
    String waste = wasteShare > 0 ? " + " + LineDraft.number(100 * wasteShare) + " %" : "";
    if (lengths > 0) {
      return lengths + " stock lengths " + models + ", each cut by itself" + waste + (wasteShare > 0 ? ", rounded up: " : ": ") + order;
    }
    String needed = LineDraft.number(inPacks.net()) + " " + unit + " " + models + waste
        + (wasteShare > 0 ? " = " + LineDraft.number(inPacks.withWaste()) + " " + unit : "");
    if (pack == 1 && wasteShare == 0) {
      return needed;
    }
    return needed + (pack == 1 ? "" : " ÷ " + LineDraft.number(pack) + " " + unit + " a " + orderUnit) + ", rounded up: " + order;
  }
}
