package org.seamledger.measure;

import static org.seamledger.measure.Dimension.ANGLE;
import static org.seamledger.measure.Dimension.AREA;
import static org.seamledger.measure.Dimension.DENSITY;
import static org.seamledger.measure.Dimension.LENGTH;
import static org.seamledger.measure.Dimension.PRESSURE;
import static org.seamledger.measure.Dimension.SHARE;
import static org.seamledger.measure.Dimension.SLOPE;
import static org.seamledger.measure.Dimension.SPEED;
import static org.seamledger.measure.Dimension.TEMPERATURE;
import static org.seamledger.measure.Dimension.TEMPERATURE_DIFFERENCE;
import static org.seamledger.measure.Dimension.TIME;
import static org.seamledger.measure.Dimension.VOLUME;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Units with exact factors to the SI unit of their dimension. The inch is 0.0254 m and the US gallon 231 in³ by definition; the pound
 * force is 4.4482216152605 N and the mile 1609.344 m (NIST SP 811, appendix B, from memory).
 */
public enum Unit {
  METRE(LENGTH, "1", "0", "m", "metre", "metres", "meter", "meters"),
  MILLIMETRE(LENGTH, "0.001", "0", "mm"),
  CENTIMETRE(LENGTH, "0.01", "0", "cm"),
  KILOMETRE(LENGTH, "1000", "0", "km"),
  INCH(LENGTH, "0.0254", "0", "in", "\"", "″", "inch", "inches", "in."),
  FOOT(LENGTH, "0.3048", "0", "ft", "'", "′", "foot", "feet", "ft."),
  YARD(LENGTH, "0.9144", "0", "yd"),

  SQUARE_METRE(AREA, "1", "0", "m2", "m²", "sq m"),
  SQUARE_MILLIMETRE(AREA, "0.000001", "0", "mm2", "mm²"),
  SQUARE_FOOT(AREA, "0.09290304", "0", "ft2", "ft²", "sq ft"),
  SQUARE_INCH(AREA, "0.00064516", "0", "in2", "in²", "sq in"),

  CUBIC_METRE(VOLUME, "1", "0", "m3", "m³"),
  LITRE(VOLUME, "0.001", "0", "l", "L"),
  MILLILITRE(VOLUME, "0.000001", "0", "ml", "mL"),
  CUBIC_INCH(VOLUME, "0.000016387064", "0", "in3", "in³"),
  CUBIC_FOOT(VOLUME, "0.028316846592", "0", "ft3", "ft³"),
  US_GALLON(VOLUME, "0.003785411784", "0", "gal"),
  US_FLUID_OUNCE(VOLUME, "0.0000295735295625", "0", "fl oz", "oz", "fl. oz."),

  RISE_PER_RUN(SLOPE, "1", "0", ":12"),
  SLOPE_PERCENT(SLOPE, "0.01", "0", "%"),

  DEGREE(ANGLE, "1", "0", "deg", "°", "degree", "degrees"),

  KELVIN(TEMPERATURE, "1", "0", "K"),
  CELSIUS(TEMPERATURE, "1", "273.15", "°C", "C", "degC", "deg C"),
  /** Offset 459.67 °F times 5/9. */
  FAHRENHEIT(TEMPERATURE, "5/9", "45967/180", "°F", "F", "degF", "deg F"),

  KELVIN_STEP(TEMPERATURE_DIFFERENCE, "1", "0", "K", "°C", "C", "degC", "deg C"),
  FAHRENHEIT_STEP(TEMPERATURE_DIFFERENCE, "5/9", "0", "°F", "F", "degF", "deg F"),

  METRE_PER_SECOND(SPEED, "1", "0", "m/s"),
  KILOMETRE_PER_HOUR(SPEED, "5/18", "0", "km/h"),
  MILE_PER_HOUR(SPEED, "0.44704", "0", "mph"),
  FOOT_PER_SECOND(SPEED, "0.3048", "0", "ft/s"),
  INCH_PER_HOUR(SPEED, "127/18000000", "0", "in/h", "in/hr"),
  MILLIMETRE_PER_HOUR(SPEED, "1/3600000", "0", "mm/h"),

  PASCAL(PRESSURE, "1", "0", "Pa"),
  KILOPASCAL(PRESSURE, "1000", "0", "kPa"),
  MEGAPASCAL(PRESSURE, "1000000", "0", "MPa"),
  POUND_PER_SQUARE_INCH(PRESSURE, "44482216152605/6451600000", "0", "psi"),
  POUND_PER_SQUARE_FOOT(PRESSURE, "44482216152605/929030400000", "0", "psf"),
  INCH_OF_WATER(PRESSURE, "249.08891", "0", "inH2O"),

  SECOND(TIME, "1", "0", "s"),
  MINUTE(TIME, "60", "0", "min"),
  HOUR(TIME, "3600", "0", "h", "hr"),
  DAY(TIME, "86400", "0", "d", "day", "days"),

  KILOGRAM_PER_CUBIC_METRE(DENSITY, "1", "0", "kg/m3", "kg/m³"),

  PERCENT(SHARE, "0.01", "0", "%");

  private final Dimension dimension;
  private final Fraction factor;
  private final Fraction offset;
  private final List<String> symbols;

  Unit(Dimension dimension, String factor, String offset, String... symbols) {
    this.dimension = dimension;
    this.factor = exact(factor);
    this.offset = exact(offset);
    this.symbols = List.of(symbols);
  }

  private static Fraction exact(String text) {
    int slash = text.indexOf('/');
    return slash < 0 ? Fraction.ofDecimal(text)
        : Fraction.ofDecimal(text.substring(0, slash)).over(Fraction.ofDecimal(text.substring(slash + 1)));
  }

  public Dimension dimension() {
    return dimension;
  }

  /** The usual sign, such as {@code in}. */
  public String symbol() {
    return symbols.get(0);
  }

  /** SI value of {@code number} of these units, exact. */
  public Fraction toSi(Fraction number) {
    return number.times(factor).plus(offset);
  }

  /** How many of these units {@code si} is, exact. */
  public Fraction fromSi(Fraction si) {
    return si.minus(offset).over(factor);
  }

  public double toSi(double number) {
    return number * factor.toDouble() + offset.toDouble();
  }

  public double fromSi(double si) {
    return (si - offset.toDouble()) / factor.toDouble();
  }

  /** The unit of a dimension that has this sign; capitals count only where two signs differ by nothing else. */
  static Optional<Unit> find(Dimension dimension, String sign) {
    for (boolean exact : new boolean[] {true, false}) {
      for (Unit unit : values()) {
        if (unit.dimension == dimension && unit.symbols.stream().anyMatch(s -> exact ? s.equals(sign) : s.equalsIgnoreCase(sign))) {
          return Optional.of(unit);
        }
      }
    }
    return Optional.empty();
  }

  /** The first sign of each unit of a dimension, in order. */
  static List<String> signs(Dimension dimension) {
    List<String> signs = new ArrayList<>();
    for (Unit unit : values()) {
      if (unit.dimension == dimension) {
        signs.add(unit.symbol());
      }
    }
    return signs;
  }
}
