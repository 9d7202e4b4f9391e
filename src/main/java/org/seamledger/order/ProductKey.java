package org.seamledger.order;

/**
 * What is bought, the same in every order: lines with equal keys can be added.
 *
 * @param id the line's id without what tells it from others in one order only, such as {@code panel}, {@code tape}, {@code trim:eave trim}
 * @param tenths of a millimetre of the size that makes it a product of its own: the girth of a trim, the length of a fastener; 0 for others
 */
public record ProductKey(String id, long tenths) implements Comparable<ProductKey> {

  static ProductKey of(String id, double metres) {
    return new ProductKey(id, Math.round(metres * 1e4));
  }

  @Override
  public int compareTo(ProductKey o) {
    int c = id.compareTo(o.id);
    return c != 0 ? c : Long.compare(tenths, o.tenths);
  }
}
