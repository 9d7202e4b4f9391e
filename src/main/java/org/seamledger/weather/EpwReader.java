package org.seamledger.weather;

import java.util.ArrayList;
import java.util.List;

/**
 * Hours of an EnergyPlus weather file: eight lines of head, then rows of 35 cells of which the first 22 and the rain are looked at. An hour
 * 1 to 24 is the one that ends then. What its authors mark as missing (99.9, 999, 9999, 999999) is not known.
 */
final class EpwReader {

  static final String BEGIN = "LOCATION,";
  private static final int HEAD = 8;
  private static final int LEAST_CELLS = 22;
  private static final int RAIN = 33;
  private static final int DAYS = 31;

  private final WeatherTable table = new WeatherTable();
  private List<WeatherTable.Cell> row;

  private EpwReader() {
  }

  static List<WeatherHour> read(List<String> lines, String file) {
    EpwReader reader = new EpwReader();
    List<WeatherHour> hours = new ArrayList<>();
    for (int i = HEAD; i < lines.size() && hours.size() <= WeatherTable.MOST_HOURS; i++) {
      if (!lines.get(i).isBlank()) {
        hours.add(reader.hour(lines.get(i), i + 1));
      }
    }
    if (hours.isEmpty()) {
      reader.table.wrong(lines.size() + 1, 1, "rows of hours after " + HEAD + " lines of head", "the end of the file");
    } else if (hours.size() > WeatherTable.MOST_HOURS) {
      reader.table.wrong(WeatherTable.MOST_HOURS + HEAD + 1, 1, "at most " + WeatherTable.MOST_HOURS + " hours", "more");
    }
    if (!reader.table.faults().isEmpty()) {
      throw new WeatherFormatException(file, reader.table.faults());
    }
    return hours;
  }

  private WeatherHour hour(String line, int number) {
    row = WeatherTable.cells(line, number);
    if (row.size() < LEAST_CELLS) {
      WeatherTable.Cell last = row.get(row.size() - 1);
      table.wrong(number, last.column() + last.text().length(), "a row of 35 cells", row.size() + " cells");
      return null;
    }
    double air = value(6, "dry bulb in °C", -90, 70, 99.9);
    double dew = value(7, "dew point in °C", -90, 70, 99.9);
    double humidity = value(8, "relative humidity in %", 0, 110, 999) / 100;
    if (Double.isNaN(humidity) && !Double.isNaN(dew) && !Double.isNaN(air)) {
      humidity = HourDraft.humidity(air, dew);
    }
    double cloud = row.size() > LEAST_CELLS ? value(LEAST_CELLS, "cloud in tenths", 0, 10, 99) / 10 : Double.NaN;
    double rain = row.size() > RAIN ? value(RAIN, "rain in mm", 0, 400, 999) : Double.NaN;
    return new WeatherHour((int) value(1, "a month", 1, 12, Double.NaN), (int) value(2, "a day", 1, DAYS, Double.NaN),
        (int) value(3, "an hour", 1, 24, Double.NaN) - 1, air, humidity, value(9, "pressure in Pa", 31000, 120000, 999999),
        value(13, "solar radiation in Wh/m²", 0, 1500, 9999), value(12, "infrared radiation in Wh/m²", 0, 800, 9999),
        cloud, value(21, "wind in m/s", 0, 100, 999), rain, Double.NaN);
  }

  /** A cell's number; NaN where it is the mark of what is missing, or more. */
  private double value(int index, String what, double least, double most, double missing) {
    WeatherTable.Cell cell = row.get(index);
    try {
      if (!Double.isNaN(missing) && Double.parseDouble(cell.text()) >= missing) {
        return Double.NaN;
      }
    } catch (NumberFormatException e) {
      // It is told below.
      return table.number(cell, what, least, most);
    }
    return table.number(cell, what, least, most);
  }
}
