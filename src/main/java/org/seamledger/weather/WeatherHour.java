package org.seamledger.weather;

import org.seamledger.quantity.physics.Air;

/**
 * The weather of one hour of local time. What isn't known is NaN.
 *
 * @param month from 1
 * @param day of the month, from 1
 * @param hour in which it begins, 0 to 23
 * @param airC temperature of the air, °C
 * @param humidity relative, a share of one
 * @param pressurePa of the air
 * @param sunWm2 global solar radiation on a level surface
 * @param skyWm2 infrared radiation that comes from the sky
 * @param cloud share of the sky that is covered
 * @param windMs wind
 * @param rainMm rain in the hour
 * @param metalC temperature of the metal where somebody measured it, °C
 */
public record WeatherHour(int month, int day, int hour, double airC, double humidity, double pressurePa, double sunWm2, double skyWm2,
    double cloud, double windMs, double rainMm, double metalC) {

  /** Whether air and humidity are known: without them nothing can be said. */
  public boolean isKnown() {
    return !Double.isNaN(airC) && !Double.isNaN(humidity);
  }

  /** Temperature at which this air's moisture settles, °C. */
  public double dewPointC() {
    return Air.dewPointC(airC, Math.min(1, humidity));
  }

  /** {@code 03-14 08:00}. */
  public String label() {
    return date() + " " + (hour < 10 ? "0" : "") + hour + ":00";
  }

  /** {@code 03-14}: month and day. */
  public String date() {
    return (month < 10 ? "0" : "") + month + (day < 10 ? "-0" : "-") + day;
  }
}
