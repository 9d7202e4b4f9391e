package org.seamledger.ifc.entity;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import org.seamledger.finding.Code;

/**
 * What a model's numbers are measured in.
 *
 * @param metres one length unit, in metres
 * @param squareMetres one area unit
 * @param cubicMetres one volume unit
 * @param radians one plane angle unit, in radians
 * @param lengthName the length unit in words: {@code metre}, {@code millimetre}, {@code foot}
 */
public record Units(double metres, double squareMetres, double cubicMetres, double radians, String lengthName) {

  /** No conversion at all: what unit definitions themselves are written in. */
  static final Units BARE = new Units(1, 1, 1, 1, "metre");

  private static final int DEEPEST = 20;

  /** The units of the project; metres with a finding where it states none. */
  static Units of(Model model) {
    Entity assignment = assignment(model);
    double length = Double.NaN;
    double area = Double.NaN;
    double volume = Double.NaN;
    double angle = Double.NaN;
    String name = "metre";
    if (assignment != null) {
      for (long id : safeReferences(assignment)) {
        try {
          Entity unit = model.get(id);
          switch (unit.word(1)) {
            case "LENGTHUNIT" -> {
              length = factor(unit, new HashSet<>());
              name = name(unit);
            }
            case "AREAUNIT" -> area = factor(unit, new HashSet<>());
            case "VOLUMEUNIT" -> volume = factor(unit, new HashSet<>());
            case "PLANEANGLEUNIT" -> angle = factor(unit, new HashSet<>());
            default -> {
              // Other units measure nothing that a roof needs.
            }
          }
        } catch (EntityProblem p) {
          model.findings().add(p, "A unit of " + model.name() + " can't be read");
        }
      }
    }
    if (!(length > 0)) {
      model.findings().add(Code.NO_UNIT, model.name() + " states no length unit that can be read; metres are assumed.");
      length = 1;
      name = "metre";
    }
    // A unit that is not stated follows from the length unit; angles are then radians, the SI unit.
    return new Units(length, area > 0 ? area : length * length, volume > 0 ? volume : length * length * length,
        angle > 0 ? angle : 1, name);
  }

  private static Iterable<Long> safeReferences(Entity assignment) {
    try {
      return assignment.references(0);
    } catch (EntityProblem p) {
      return Set.of();
    }
  }

  private static Entity assignment(Model model) {
    for (long id : model.idsOf("IFCPROJECT")) {
      try {
        Entity units = model.get(id).optionalEntity(8);
        if (units != null && units.is("IFCUNITASSIGNMENT")) {
          return units;
        }
      } catch (EntityProblem p) {
        model.findings().add(p, "The units of " + model.name() + " can't be read");
      }
    }
    long[] all = model.idsOf("IFCUNITASSIGNMENT");
    return all.length == 0 ? null : model.get(all[0]);
  }

  /** How many SI units (metres, square metres, cubic metres, radians) one of this unit is. */
  public static double factor(Entity unit, Set<Long> seen) {
    if (!seen.add(unit.id()) || seen.size() > DEEPEST) {
      throw EntityProblem.broken(unit + ": the unit is defined by itself");
    }
    switch (unit.keyword()) {
      case "IFCSIUNIT" :
        return Math.pow(prefix(unit), power(unit.word(3)));
      case "IFCCONVERSIONBASEDUNIT", "IFCCONVERSIONBASEDUNITWITHOFFSET" :
        Entity measure = unit.entity(3);
        double value = measure.number(0);
        if (!(value > 0)) {
          throw EntityProblem.broken(measure + ": a conversion factor should be above zero");
        }
        return value * factor(measure.entity(1), seen);
      default :
        throw EntityProblem.unsupported(unit + ": a unit of this kind is not supported");
    }
  }

  private static int power(String name) {
    return switch (name) {
      case "SQUARE_METRE" -> 2;
      case "CUBIC_METRE" -> 3;
      default -> 1;
    };
  }

  private static double prefix(Entity unit) {
    return switch (unit.word(2)) {
      case "EXA" -> 1e18;
      case "PETA" -> 1e15;
      case "TERA" -> 1e12;
      case "GIGA" -> 1e9;
      case "MEGA" -> 1e6;
      case "KILO" -> 1e3;
      case "HECTO" -> 1e2;
      case "DECA" -> 1e1;
      case "DECI" -> 1e-1;
      case "CENTI" -> 1e-2;
      case "MILLI" -> 1e-3;
      case "MICRO" -> 1e-6;
      case "NANO" -> 1e-9;
      case "PICO" -> 1e-12;
      case "FEMTO" -> 1e-15;
      case "ATTO" -> 1e-18;
      case "" -> 1;
      default -> throw EntityProblem.broken(unit + ": " + unit.word(2) + " is no SI prefix");
    };
  }

  private static String name(Entity unit) {
    String word = unit.is("IFCSIUNIT") ? unit.word(2) + unit.word(3) : unit.text(2);
    return word.isBlank() ? "metre" : word.toLowerCase(Locale.ROOT);
  }
}
