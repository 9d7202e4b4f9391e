package org.seamledger.quantity.formula;

/**
 * What to order: waste is added and the sum is rounded up once for the project. Orders of single lines must never be added up: three
 * lines of 0.4 cartridge are two cartridges, not three.
 *
 * @param net what the drawing takes
 * @param withWaste net · (1 + waste)
 * @param units whole units of sale
 */
public record Order(double net, double withWaste, long units) {

  /** Against one unit more for the last bit of a sum. */
  private static final double NOISE = 1e-9;

  /**
   * @param net sum over the project
   * @param waste share of one
   * @param unit content of a unit of sale, in the same unit as net
   */
  public static Order of(double net, double waste, double unit) {
    if (!(net >= 0) || !(waste >= 0) || !(unit > 0)) {
      throw new IllegalArgumentException("net " + net + ", waste " + waste + ", unit " + unit);
    }
    double withWaste = net * (1 + waste);
    return new Order(net, withWaste, (long) Math.ceil(withWaste / unit - NOISE));
  }
}
