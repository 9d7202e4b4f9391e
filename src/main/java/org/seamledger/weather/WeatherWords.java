package org.seamledger.weather;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.seamledger.measure.Dimension;
import org.seamledger.measure.Measure;
import org.seamledger.measure.MeasureFormatException;
import org.seamledger.measure.Unit;

/** The weather of now, in words: what command line and service take by hand. */
public final class WeatherWords {

  /** Names that are understood; {@code air} and {@code humidity} are needed. */
  public static final List<String> NAMES = List.of("air", "humidity", "sun", "wind", "metal");

  /** Sun on a level surface, W/m², and the share of cloud: estimates, for who has no instrument. */
  private static final Map<String, double[]> SUN =
      Map.of("none", new double[] {0, 0}, "overcast", new double[] {150, 1}, "hazy", new double[] {500, 0.5}, "full",
          new double[] {900, 0});
  private static final double BRIGHTEST = 1500;
  private static final int NOON = 12;

  private WeatherWords() {
  }

  /**
   * Reads the weather.
   *
   * @param words by {@link #NAMES}; what is missing isn't known
   * @throws IllegalArgumentException with a line that says which of them is wrong, and what was expected
   */
  public static WeatherHour read(Map<String, String> words) {
    double air = number(words, "air", "a temperature from -90 to 70 °C such as 12C or 54F",
        t -> range(Measure.temperature(t).in(Unit.CELSIUS), -90, 70));
    double humidity = number(words, "humidity", "a relative humidity from 0 to 100 such as 80", t -> range(share(t), 0, 1));
    if (Double.isNaN(air) || Double.isNaN(humidity)) {
      throw new IllegalArgumentException("weather by hand needs air and humidity, such as air 12C and humidity 80");
    }
    double metal = number(words, "metal", "a temperature from -90 to 130 °C such as 31C, measured on the metal",
        t -> range(Measure.temperature(t).in(Unit.CELSIUS), -90, 130));
    double wind = number(words, "wind", "a speed up to 100 m/s such as 2 m/s or 5 mph",
        t -> range(Measure.parse(Dimension.SPEED, t).value(), 0, 100));
    String sun = words.getOrDefault("sun", "").strip().toLowerCase(Locale.ROOT);
    double[] named = SUN.get(sun);
    double watts = named != null ? named[0]
        : number(words, "sun", "none, overcast, hazy, full or W/m² from 0 to 1500", t -> range(Double.parseDouble(t), 0, BRIGHTEST));
    return WeatherSeries.hour(watts > 0 ? NOON : 0, air, humidity, watts, named == null ? Double.NaN : named[1], wind, metal);
  }

  private static double share(String text) {
    return Double.parseDouble(text.endsWith("%") ? text.substring(0, text.length() - 1).strip() : text) / 100;
  }

  private static double range(double value, double least, double most) {
    if (!(value >= least && value <= most)) {
      throw new NumberFormatException("out of its range");
    }
    return value;
  }

  private static double number(Map<String, String> words, String name, String expected, Function<String, Double> read) {
    String text = words.getOrDefault(name, "").strip();
    if (text.isEmpty()) {
      return Double.NaN;
    }
    try {
      return read.apply(text);
    } catch (NumberFormatException | MeasureFormatException e) {
      throw new IllegalArgumentException(name + " is " + expected + ", not \"" + text + "\"");
    }
  }
}
