package org.seamledger.order;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Units that prices are for: those of the order's measures, and those that follow from them. */
final class PriceUnit {

  /** Every unit that a price list may have, as messages list them. */
  static final List<String> NAMES = List.of("piece", "m", "ft", "m2", "ft2", "ml", "l", "kg", "lb", "roll", "box", "length", "cartridge",
      "sausage", "pail", "bottle");
  private static final Map<String, String> OTHERS = Map.ofEntries(Map.entry("pc", "piece"), Map.entry("pcs", "piece"),
      Map.entry("pieces", "piece"), Map.entry("each", "piece"), Map.entry("ea", "piece"), Map.entry("m²", "m2"), Map.entry("sqm", "m2"),
      Map.entry("ft²", "ft2"), Map.entry("sqft", "ft2"), Map.entry("foot", "ft"), Map.entry("litre", "l"), Map.entry("metre", "m"));

  /** A derived unit: its base, and how many of it a base unit is. */
  private record Derived(String base, double perBase) {
  }

  private static final Map<String, Derived> DERIVED = Map.of("ft", new Derived("m", 1 / 0.3048), "ft2",
      new Derived("m2", 1 / (0.3048 * 0.3048)), "l", new Derived("ml", 0.001), "lb", new Derived("kg", 1 / 0.45359237));
  private static final int PLACES = 6;

  private PriceUnit() {
  }

  /** The unit by any of its names; empty where there is none. */
  static String named(String text) {
    String word = text.toLowerCase(Locale.ROOT).replace(" ", "");
    String name = OTHERS.getOrDefault(word, word);
    return NAMES.contains(name) ? name : "";
  }

  /** How much of a line is bought in a unit: whole packs. Empty where the line is not measured so. */
  static Optional<BigDecimal> bought(OrderLine line, String unit) {
    if (unit.equals(line.orderUnit())) {
      return Optional.of(BigDecimal.valueOf(line.order()));
    }
    return amount(line, unit, line.order() * line.pack() / line.net());
  }

  /** The net amount of a line in a unit. */
  static Optional<BigDecimal> net(OrderLine line, String unit) {
    if (unit.equals(line.orderUnit()) && !unit.equals(line.unit())) {
      return Optional.of(decimal(line.net() / line.pack()));
    }
    return amount(line, unit, 1);
  }

  private static Optional<BigDecimal> amount(OrderLine line, String unit, double times) {
    Derived derived = DERIVED.get(unit);
    Double measure = line.measures().get(derived == null || line.measures().containsKey(unit) ? unit : derived.base());
    double per = derived == null || line.measures().containsKey(unit) ? 1 : derived.perBase();
    return measure == null ? Optional.empty() : Optional.of(decimal(measure * per * times));
  }

  private static BigDecimal decimal(double value) {
    return new BigDecimal(Double.toString(value)).setScale(PLACES, java.math.RoundingMode.HALF_UP).stripTrailingZeros();
  }
}
