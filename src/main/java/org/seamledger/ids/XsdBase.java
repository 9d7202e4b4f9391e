package org.seamledger.ids;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import javax.xml.datatype.DatatypeFactory;
import org.seamledger.schema.TypeDefinition;

/**
 * The types of values in an IDS: IDS 1.0, DataTypes.md, "XML base types", with the form that a text of each has.
 */
public enum XsdBase {
  STRING("string", "(?s).*"),
  BOOLEAN("boolean", "true|false|0|1"),
  INTEGER("integer", "[+-]?\\d+"),
  DOUBLE("double", "[-+]?(?=\\.?[0-9])[0-9]*\\.?[0-9]*([eE][-+]?[0-9]+)?|NaN|\\+INF|-INF"),
  DATE("date", "\\d{4}-\\d{2}-\\d{2}(Z|([+-]\\d{2}:\\d{2}))?"),
  DATE_TIME("dateTime", "\\d{4}-\\d{2}-\\d{2}T\\d{2}:\\d{2}:\\d{2}(\\.\\d+)?(Z|([+-]\\d{2}:\\d{2}))?"),
  TIME("time", "\\d{2}:\\d{2}:\\d{2}(\\.\\d+)?(Z|([+-]\\d{2}:\\d{2}))?"),
  DURATION("duration", "[-+]?P(\\d+Y)?(\\d+M)?(\\d+D)?(T(\\d+H)?(\\d+M)?(\\d+S)?)?");

  private final String local;
  private final Pattern form;

  XsdBase(String local, String form) {
    this.local = local;
    this.form = Pattern.compile(form);
  }

  /** The type of that local name in XML Schema. */
  static Optional<XsdBase> named(String local) {
    for (XsdBase base : values()) {
      if (base.local.equals(local)) {
        return Optional.of(base);
      }
    }
    return Optional.empty();
  }

  /** What the values of an IFC type are in an IDS; empty where none can be stated, as for lists and binary. */
  public static Optional<XsdBase> of(TypeDefinition type) {
    if (type.aggregate()) {
      return Optional.empty();
    }
    return switch (type.keyword()) {
      case "IFCCOUNTMEASURE" -> Optional.of(INTEGER);
      case "IFCDATE" -> Optional.of(DATE);
      case "IFCDATETIME" -> Optional.of(DATE_TIME);
      case "IFCTIME" -> Optional.of(TIME);
      case "IFCDURATION" -> Optional.of(DURATION);
      default -> simple(type.base().name());
    };
  }

  /** What the values of a simple type of EXPRESS, such as {@code REAL}, are in an IDS. */
  public static Optional<XsdBase> simple(String express) {
    return switch (express) {
      case "STRING", "ENUMERATION", "LOGICAL" -> Optional.of(STRING);
      case "REAL", "NUMBER" -> Optional.of(DOUBLE);
      case "INTEGER" -> Optional.of(INTEGER);
      case "BOOLEAN" -> Optional.of(BOOLEAN);
      default -> Optional.empty();
    };
  }

  boolean accepts(String text) {
    return form.matcher(text).matches();
  }

  /** As a restriction's base names it. */
  @Override
  public String toString() {
    return "xs:" + local;
  }

  /** A number; NaN where the text is none. */
  static double number(String text) {
    try {
      return switch (text) {
        case "+INF", "INF" -> Double.POSITIVE_INFINITY;
        case "-INF" -> Double.NEGATIVE_INFINITY;
        default -> Double.parseDouble(text);
      };
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  /** Below zero where the first comes before the second in time, above where after; empty where they can't be compared. */
  static Optional<Integer> compareInTime(String first, String second) {
    try {
      DatatypeFactory factory = DatatypeFactory.newDefaultInstance();
      int order = first.toUpperCase(Locale.ROOT).contains("P")
          ? factory.newDuration(first).compare(factory.newDuration(second))
          : factory.newXMLGregorianCalendar(first).compare(factory.newXMLGregorianCalendar(second));
      return order == javax.xml.datatype.DatatypeConstants.INDETERMINATE ? Optional.empty() : Optional.of(order);
    } catch (IllegalArgumentException | UnsupportedOperationException e) {
      return Optional.empty();
    }
  }
}
