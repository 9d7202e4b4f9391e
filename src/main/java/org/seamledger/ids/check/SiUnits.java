package org.seamledger.ids.check;

import java.util.HashMap;
import java.util.Map;
import org.seamledger.step.Instance;
import org.seamledger.step.Value;

/** From a model's units to those of IDS (IDS 1.0, units.md): SI without prefix, but kilogram. */
final class SiUnits {

  /** x of the unit is {@code x · factor + offset} of the SI unit. */
  record Conversion(double factor, double offset) {
    static final Conversion NONE = new Conversion(1, 0);

    double apply(double x) {
      return this == NONE ? x : x * factor + offset;
    }
  }

  private static final double KELVIN_AT_ZERO_CELSIUS = 273.15;
  private static final int DEEPEST = 20;
  /** Types that are not named like their unit: units.md, column "Unit enumeration". */
  private static final Map<String, String> NAMED_OTHERWISE = Map.of("IFCPOSITIVELENGTHMEASURE", "LENGTHUNIT", "IFCNONNEGATIVELENGTHMEASURE",
      "LENGTHUNIT", "IFCPOSITIVEPLANEANGLEMEASURE", "PLANEANGLEUNIT", "IFCTHERMALCONDUCTIVITYMEASURE", "THERMALCONDUCTANCEUNIT");
  private static final Map<String, Integer> PREFIXES = Map.ofEntries(Map.entry("EXA", 18), Map.entry("PETA", 15), Map.entry("TERA", 12),
      Map.entry("GIGA", 9), Map.entry("MEGA", 6), Map.entry("KILO", 3), Map.entry("HECTO", 2), Map.entry("DECA", 1), Map.entry("DECI", -1),
      Map.entry("CENTI", -2), Map.entry("MILLI", -3), Map.entry("MICRO", -6), Map.entry("NANO", -9), Map.entry("PICO", -12),
      Map.entry("FEMTO", -15), Map.entry("ATTO", -18));

  private final ModelAccess model;
  private final Map<Long, Conversion> byId = new HashMap<>();
  private Map<String, Conversion> assigned;

  SiUnits(ModelAccess model) {
    this.model = model;
  }

  /** Of a value of a type, in the unit that the project assigns to it; none where it assigns none, or the type has none. */
  Conversion of(String type) {
    if (assigned == null) {
      assigned = read();
    }
    return assigned.getOrDefault(unitOf(type), Conversion.NONE);
  }

  /** Of a value that states its unit itself. */
  Conversion of(long unit) {
    return byId.computeIfAbsent(unit, id -> conversion(id, 0));
  }

  static String unitOf(String type) {
    String named = NAMED_OTHERWISE.get(type);
    return named != null ? named
        : type.startsWith("IFC") && type.endsWith("MEASURE") ? type.substring(3, type.length() - "MEASURE".length()) + "UNIT" : "";
  }

  private Map<String, Conversion> read() {
    Map<String, Conversion> units = new HashMap<>();
    for (long project : model.file().idsOf("IFCPROJECT")) {
      model.find(project).flatMap(p -> model.target(p, "UnitsInContext")).ifPresent(a -> {
        for (Instance unit : model.targets(a, "Units")) {
          String kind = ModelAccess.word(model.value(unit, "UnitType"));
          if (!kind.isEmpty() && !kind.equals("USERDEFINED")) {
            units.putIfAbsent(kind, conversion(unit.id(), 0));
          }
        }
      });
    }
    return units;
  }

  private Conversion conversion(long id, int depth) {
    Instance unit = depth > DEEPEST ? null : model.find(id).orElse(null);
    if (unit == null) {
      return Conversion.NONE;
    }
    return switch (unit.keyword()) {
      case "IFCSIUNIT" -> si(unit);
      case "IFCCONVERSIONBASEDUNIT", "IFCCONVERSIONBASEDUNITWITHOFFSET" -> based(unit, depth);
      case "IFCDERIVEDUNIT" -> derived(unit, depth);
      default -> Conversion.NONE;
    };
  }

  private Conversion si(Instance unit) {
    String name = ModelAccess.word(model.value(unit, "Name"));
    int power = switch (name) {
      case "SQUARE_METRE" -> 2;
      case "CUBIC_METRE" -> 3;
      default -> 1;
    };
    int exponent = PREFIXES.getOrDefault(ModelAccess.word(model.value(unit, "Prefix")), 0) * power;
    return new Conversion(Double.parseDouble("1e" + (name.equals("GRAM") ? exponent - 3 : exponent)),
        name.equals("DEGREE_CELSIUS") ? KELVIN_AT_ZERO_CELSIUS : 0);
  }

  /** The offset is added "after the inherited ConversionFactor was applied" (IFC4, IfcConversionBasedUnitWithOffset). */
  private Conversion based(Instance unit, int depth) {
    Instance measure = model.target(unit, "ConversionFactor").orElse(null);
    if (measure == null) {
      return Conversion.NONE;
    }
    Conversion of = model.target(measure, "UnitComponent").map(u -> conversion(u.id(), depth + 1)).orElse(Conversion.NONE);
    double factor = ModelAccess.number(model.value(measure, "ValueComponent"));
    double offset = ModelAccess.number(model.value(unit, "ConversionOffset"));
    return Double.isFinite(factor) ? new Conversion(factor * of.factor(), Double.isFinite(offset) ? offset * of.factor() : 0)
        : Conversion.NONE;
  }

  private Conversion derived(Instance unit, int depth) {
    double factor = 1;
    for (Instance element : model.targets(unit, "Elements")) {
      Conversion of = model.target(element, "Unit").map(u -> conversion(u.id(), depth + 1)).orElse(Conversion.NONE);
      Value exponent = model.value(element, "Exponent");
      factor *= Math.pow(of.factor(), exponent instanceof Value.Whole w ? w.value() : 1);
    }
    return new Conversion(factor, 0);
  }
}
