package org.seamledger.order;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.formula.Order;

/** A line of the order while amounts are added to it. */
final class LineDraft {

  /** Net amounts below this are none: a tenth of a millimetre, of a millilitre. */
  private static final double NOTHING = 1e-4;

  private String id;
  private ProductKey product;
  private final OrderGroup group;
  private final String item;
  private final String unit;
  private String size = "";
  private final TreeMap<String, Double> measures = new TreeMap<>();
  private final List<String> steps = new ArrayList<>();
  private final Map<List<String>, Share> shares = new LinkedHashMap<>();
  private Share last;
  private double net;

  /** What comes from one place so far. */
  private static final class Share {
    private final String junction;
    private final String face;
    private double amount;

    Share(String junction, String face) {
      this.junction = junction;
      this.face = face;
    }

    boolean isOf(String itsJunction, String itsFace) {
      return junction.equals(itsJunction) && face.equals(itsFace);
    }
  }

  LineDraft(String id, OrderGroup group, String item, String unit) {
    this.id = id;
    this.product = new ProductKey(id, 0);
    this.group = group;
    this.item = item;
    this.unit = unit;
  }

  LineDraft named(String newId) {
    id = newId;
    return this;
  }

  /** What it is in any order, where its id tells that only in this one. */
  LineDraft product(ProductKey key) {
    product = key;
    return this;
  }

  LineDraft size(String text) {
    size = text;
    return this;
  }

  /** @param face empty for a junction's line as a whole */
  void add(String junction, String face, double amount) {
    net += amount;
    // Amounts of one place mostly come one after the other.
    if (last == null || !last.isOf(junction, face)) {
      last = shares.computeIfAbsent(List.of(junction, face), k -> new Share(junction, face));
    }
    last.amount += amount;
  }

  /** An amount in another unit of the same. */
  void measure(String otherUnit, double amount) {
    measures.merge(otherUnit, amount, Double::sum);
  }

  double measure(String otherUnit) {
    return measures.getOrDefault(otherUnit, 0.0);
  }

  void step(String text) {
    steps.add(text);
  }

  double net() {
    return net;
  }

  boolean isNeeded() {
    return net > NOTHING;
  }

  /** In packs, rounded up once. */
  OrderLine inPacks(double wasteShare, double pack, String orderUnit) {
    Order order = Order.of(net, wasteShare, pack);
    if (wasteShare > 0 || pack != 1) {
      steps.add(packed(wasteShare, pack, orderUnit, order));
    }
    return line(wasteShare, order.withWaste(), pack, order.units(), orderUnit, 0);
  }

  private String packed(double wasteShare, double pack, String orderUnit, Order order) {
    String waste = wasteShare > 0 ? " + " + number(100 * wasteShare) + " % = " + number(order.withWaste()) + " " + unit : "";
    return number(net) + " " + unit + waste
        + (pack == 1 && orderUnit.equals(unit) ? ", rounded up: "
            : " ÷ " + number(pack) + " " + unit + " a " + orderUnit + ", rounded up: ")
        + order.units();
  }

  /**
   * In stock lengths, which waste is added to.
   *
   * @param cutM length of all pieces, laps included
   * @param lengths that the cutting plan takes
   */
  OrderLine inLengths(double wasteShare, double cutM, double stockM, long lengths) {
    return line(wasteShare, cutM * (1 + wasteShare), stockM, Order.whole(lengths, wasteShare), "length", lengths);
  }

  private OrderLine line(double wasteShare, double withWaste, double pack, long order, String orderUnit, long lengths) {
    measures.put(unit, net);
    measures.put(orderUnit, (double) order);
    List<OrderShare> from =
        shares.values().stream().map(s -> new OrderShare(s.junction, s.face, s.amount)).toList();
    return new OrderLine(id, group, item, size, net, unit, wasteShare, withWaste, pack, order, orderUnit, measures, steps, from,
        product, lengths);
  }

  static String number(double value) {
    return MeasureFormat.plain(value, 3);
  }
}
