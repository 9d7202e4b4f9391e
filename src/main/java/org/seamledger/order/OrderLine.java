package org.seamledger.order;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A line of the order.
 *
 * @param id what it is to programs, unique in an order
 * @param item what it is called
 * @param size what tells it from others of its name, with units, for people
 * @param net what the drawing takes, in {@code unit}
 * @param unit {@code piece}, {@code m}, {@code m2} or {@code ml}
 * @param wasteShare added to net, a share of one; for underlayment its laps
 * @param withWaste net and waste, before rounding up
 * @param pack content of a unit of sale, in {@code unit}
 * @param order whole units of sale
 * @param orderUnit what a unit of sale is
 * @param measures the net amount in other units by which it may be priced; always in {@code unit} and in {@code orderUnit}, there the
 *     order
 * @param steps the arithmetic, a line of text each
 * @param shares where the net amount comes from; they add up to it
 * @param product what it is in any order
 * @param lengths stock lengths that the cutting plan takes, before waste; 0 where the order comes of the amount
 */
public record OrderLine(String id, OrderGroup group, String item, String size, double net, String unit, double wasteShare,
    double withWaste, double pack, long order, String orderUnit, SortedMap<String, Double> measures, List<String> steps,
    List<OrderShare> shares, ProductKey product, long lengths) {

  public OrderLine {
    measures = Collections.unmodifiableSortedMap(new TreeMap<>(measures));
    steps = List.copyOf(steps);
    shares = List.copyOf(shares);
  }

  /** Ids of the junctions that it comes from, sorted. */
  public List<String> junctions() {
    return shares.stream().map(OrderShare::junction).filter(id -> !id.isEmpty()).distinct().sorted().toList();
  }

  /** Ids of the faces that it comes from as wholes, sorted; empty where it comes from junctions. */
  public List<String> faces() {
    return shares.stream().filter(s -> s.junction().isEmpty()).map(OrderShare::face).filter(id -> !id.isEmpty()).distinct().sorted()
        .toList();
  }
}
