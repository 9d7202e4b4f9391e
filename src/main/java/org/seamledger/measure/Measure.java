package org.seamledger.measure;

import java.util.Objects;

/**
 * A value with its unit: exact, and as it was written.
 *
 * @param si exact value in the SI unit of the dimension (a slope's tangent; a share of one). The tangent of an angle given in degrees is
 *     the nearest double, since it is no fraction.
 * @param text as a person wrote it, with its unit
 */
public record Measure(Dimension dimension, Fraction si, String text) {

  public Measure {
    Objects.requireNonNull(dimension);
    Objects.requireNonNull(si);
    Objects.requireNonNull(text);
  }

  /**
   * Reads a measure such as {@code "1 1/2 in"}.
   *
   * @throws MeasureFormatException if the text is something else
   */
  public static Measure parse(Dimension dimension, String text) {
    return new MeasureParser(dimension, text).parse();
  }

  public static Measure length(String text) {
    return parse(Dimension.LENGTH, text);
  }

  public static Measure slope(String text) {
    return parse(Dimension.SLOPE, text);
  }

  public static Measure volume(String text) {
    return parse(Dimension.VOLUME, text);
  }

  public static Measure share(String text) {
    return parse(Dimension.SHARE, text);
  }

  public static Measure temperature(String text) {
    return parse(Dimension.TEMPERATURE, text);
  }

  public static Measure temperatureDifference(String text) {
    return parse(Dimension.TEMPERATURE_DIFFERENCE, text);
  }

  /** So many of a unit; the text is the number and the unit's sign. */
  public static Measure of(Fraction number, Unit unit) {
    return new Measure(unit.dimension(), unit.toSi(number), MeasureFormat.number(number) + " " + unit.symbol());
  }

  /** Value in the SI unit: metres, cubic metres, kelvin, …, a slope's tangent. */
  public double value() {
    return si.toDouble();
  }

  /** How many of {@code unit} this is. */
  public double in(Unit unit) {
    return exactIn(unit).toDouble();
  }

  /** How many of {@code unit} this is, exact. */
  public Fraction exactIn(Unit unit) {
    if (unit.dimension() != dimension) {
      throw new IllegalArgumentException(dimension.noun() + " can't be shown in " + unit.symbol());
    }
    return unit.fromSi(si);
  }

  /** A slope as an angle. */
  public double degrees() {
    return dimension == Dimension.ANGLE ? value() : Math.toDegrees(Math.atan(value()));
  }

  @Override
  public String toString() {
    return text;
  }
}
