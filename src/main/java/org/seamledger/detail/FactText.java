package org.seamledger.detail;

import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.seamledger.junction.FactList;
import org.seamledger.measure.MeasureFormat;

/** Facts in sentences for people: each in its unit. */
final class FactText {

  private static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");

  /** In a litre a second: 60 / 3.785411784. */
  private static final double GALLONS_PER_MINUTE = 60 / 3.785411784;

  private FactText() {
  }

  /** A message with every {@code {fact}} replaced by its value; "unknown" where the fact is missing. */
  static String fill(String message, Map<String, ?> facts) {
    return PLACE.matcher(message).replaceAll(m -> java.util.regex.Matcher.quoteReplacement(value(m, facts)));
  }

  private static String value(MatchResult place, Map<String, ?> facts) {
    String name = place.group(1);
    Object value = facts.get(name);
    if (value == null) {
      return "unknown";
    }
    return value instanceof Double d ? number(name, d) : name.equals("kind") ? value.toString().replace('-', ' ') : value.toString();
  }

  private static String number(String name, double d) {
    return switch (FactList.unit(name)) {
      case DEGREES -> MeasureFormat.fixed(d, 2) + "°";
      case SHARE -> MeasureFormat.plain(100 * d, 1) + " %";
      case MEGAPASCALS -> MeasureFormat.fixed(d, 0) + " MPa";
      case PASCALS -> MeasureFormat.fixed(d, 0) + " Pa";
      case SQUARE_METRES -> MeasureFormat.plain(d, 1) + " m² (" + MeasureFormat.plain(d / (0.3048 * 0.3048), 0) + " ft²)";
      case LITRES_PER_SECOND -> MeasureFormat.plain(d, 2) + " l/s (" + MeasureFormat.plain(d * GALLONS_PER_MINUTE, 0) + " gpm)";
      case METRES -> length(d);
      case CELSIUS -> MeasureFormat.plain(d, 1) + " °C";
      case KELVINS -> MeasureFormat.plain(d, 1) + " K";
      case NONE -> MeasureFormat.plain(d, 3);
    };
  }

  /** Below a metre in millimetres and inches, else in metres and feet. */
  private static String length(double m) {
    if (m >= 1) {
      return MeasureFormat.formatBoth(m);
    }
    return MeasureFormat.plain(1000 * m, m < 0.1 ? 2 : 0) + " mm (" + MeasureFormat.plain(m / 0.0254, 3) + " in)";
  }
}
