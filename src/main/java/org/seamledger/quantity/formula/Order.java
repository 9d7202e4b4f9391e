package org.seamledger.quantity.formula;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

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
  private static final int NANO_PLACES = 9;

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

  /** Whole units with waste added, rounded up once: for what is sold as it was counted, such as the lengths of a cutting plan. */
  public static long whole(long units, double waste) {
    return (long) Math.ceil(units * (1 + waste) - NOISE);
  }

  /**
   * The same for a sum that was added exactly: sums of any size, and no order of adding gives another result.
   *
   * @param nano whole thousand-millionths of the unit that {@code unit} is in
   */
  public static Order exact(BigInteger nano, double waste, double unit) {
    if (nano.signum() < 0 || !(waste >= 0) || !(unit > 0)) {
      throw new IllegalArgumentException("net " + nano + " / 10^9, waste " + waste + ", unit " + unit);
    }
    BigDecimal net = new BigDecimal(nano, NANO_PLACES);
    BigDecimal withWaste = net.multiply(BigDecimal.ONE.add(BigDecimal.valueOf(waste)));
    BigDecimal units = withWaste.divide(BigDecimal.valueOf(unit), 2 * NANO_PLACES, RoundingMode.HALF_UP);
    return new Order(net.doubleValue(), withWaste.doubleValue(),
        units.subtract(BigDecimal.valueOf(NOISE)).setScale(0, RoundingMode.CEILING).longValueExact());
  }

  /** An amount in whole thousand-millionths of its unit, to be added exactly. */
  public static BigInteger nano(double amount) {
    return BigDecimal.valueOf(amount).movePointRight(NANO_PLACES).setScale(0, RoundingMode.HALF_UP).toBigIntegerExact();
  }
}
