package org.seamledger.order;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One order for several takeoffs by one roof system: amounts are added exactly and rounded up to packs once. Rounding each takeoff up and
 * adding that would buy a part of a pack too many for each. Stock lengths are cut for each building by itself, since offcuts don't travel.
 */
public final class OrderTotal {

  private final SortedMap<ProductKey, OrderAmount> amounts = new TreeMap<>();

  /** Adds a takeoff's, or several takeoffs', amounts. */
  public void add(Collection<OrderAmount> more) {
    more.forEach(a -> amounts.merge(a.product(), a, OrderAmount::plus));
  }

  /** The order: by group, then by id. The first size of a product has the product's own id, as in the order of one takeoff. */
  public OrderList list() {
    Set<String> known = new HashSet<>();
    List<OrderLine> lines = new ArrayList<>();
    amounts.forEach((product, amount) -> lines.add(amount.line(free(product, known))));
    lines.sort(Comparator.comparing(OrderLine::group).thenComparing(OrderLine::product));
    return new OrderList(lines, List.of());
  }

  /** By whole millimetres as in one takeoff's order, or by tenths where two sizes would have one id. */
  private static String free(ProductKey product, Set<String> known) {
    BigDecimal mm = BigDecimal.valueOf(product.tenths(), 1);
    String whole = product.id() + ":" + Math.round(product.tenths() / 10.0);
    String id = !known.contains(product.id()) ? product.id() : !known.contains(whole) ? whole : product.id() + ":" + mm.toPlainString();
    known.add(id);
    return id;
  }
}
