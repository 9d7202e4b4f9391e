package org.seamledger.weather;

import java.time.LocalDateTime;
import java.util.EnumMap;
import java.util.Map;
import org.seamledger.quantity.physics.Air;

/** An hour while it is read: by what its table or the command line calls its values. */
final class HourDraft {

  /** What an hour can say; values in °C, shares, Pa, W/m², m/s, mm. */
  enum Field {
    AIR, DEW_POINT, HUMIDITY, PRESSURE, SUN, CLOUD, WIND, RAIN, METAL
  }

  private final Map<Field, Double> values = new EnumMap<>(Field.class);

  HourDraft set(Field field, double value) {
    values.put(field, value);
    return this;
  }

  private double get(Field field) {
    return values.getOrDefault(field, Double.NaN);
  }

  /** Relative humidity of air whose dew point is known: a ratio of two saturation pressures. */
  static double humidity(double airC, double dewPointC) {
    return Math.min(1, Air.saturationPa(dewPointC) / Air.saturationPa(airC));
  }

  WeatherHour at(LocalDateTime begin) {
    double humidity = get(Field.HUMIDITY);
    if (Double.isNaN(humidity) && values.containsKey(Field.DEW_POINT)) {
      humidity = humidity(get(Field.AIR), get(Field.DEW_POINT));
    }
    return new WeatherHour(begin.getMonthValue(), begin.getDayOfMonth(), begin.getHour(), get(Field.AIR), humidity, get(Field.PRESSURE),
        get(Field.SUN), Double.NaN, get(Field.CLOUD), get(Field.WIND), get(Field.RAIN), get(Field.METAL));
  }
}
