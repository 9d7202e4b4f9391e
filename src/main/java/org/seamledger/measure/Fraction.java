package org.seamledger.measure;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;

/**
 * An exact rational number in lowest terms, the denominator positive. Sixteenths of an inch, decimals and unit factors all fit without
 * rounding.
 */
public record Fraction(BigInteger numerator, BigInteger denominator) implements Comparable<Fraction> {

  public static final Fraction ZERO = of(0);
  public static final Fraction ONE = of(1);
  private static final int EXACT_BITS = 53;

  /** @throws ArithmeticException if the denominator is zero */
  public Fraction {
    if (denominator.signum() == 0) {
      throw new ArithmeticException("a fraction's denominator must not be zero");
    }
    BigInteger common = numerator.gcd(denominator);
    if (denominator.signum() < 0) {
      common = common.negate();
    }
    numerator = numerator.divide(common);
    denominator = denominator.divide(common);
  }

  public static Fraction of(long whole) {
    return new Fraction(BigInteger.valueOf(whole), BigInteger.ONE);
  }

  public static Fraction of(long numerator, long denominator) {
    return new Fraction(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
  }

  /** The exact value of a plain decimal such as {@code 0.0254}. */
  public static Fraction ofDecimal(String decimal) {
    BigDecimal d = new BigDecimal(decimal);
    return d.scale() <= 0
        ? new Fraction(d.toBigIntegerExact(), BigInteger.ONE)
        : new Fraction(d.unscaledValue(), BigInteger.TEN.pow(d.scale()));
  }

  public Fraction plus(Fraction o) {
    return new Fraction(numerator.multiply(o.denominator).add(o.numerator.multiply(denominator)), denominator.multiply(o.denominator));
  }

  public Fraction minus(Fraction o) {
    return plus(o.negated());
  }

  public Fraction times(Fraction o) {
    return new Fraction(numerator.multiply(o.numerator), denominator.multiply(o.denominator));
  }

  /** @throws ArithmeticException if {@code o} is zero */
  public Fraction over(Fraction o) {
    return new Fraction(numerator.multiply(o.denominator), denominator.multiply(o.numerator));
  }

  public Fraction negated() {
    return new Fraction(numerator.negate(), denominator);
  }

  public int signum() {
    return numerator.signum();
  }

  /** The nearest double. */
  public double toDouble() {
    if (numerator.bitLength() <= EXACT_BITS && denominator.bitLength() <= EXACT_BITS) {
      // Both are doubles as they stand, and IEEE 754 rounds their quotient once.
      return (double) numerator.longValue() / (double) denominator.longValue();
    }
    return new BigDecimal(numerator).divide(new BigDecimal(denominator), MathContext.DECIMAL128).doubleValue();
  }

  @Override
  public int compareTo(Fraction o) {
    return numerator.multiply(o.denominator).compareTo(o.numerator.multiply(denominator));
  }

  @Override
  public String toString() {
    return denominator.equals(BigInteger.ONE) ? numerator.toString() : numerator + "/" + denominator;
  }
}
