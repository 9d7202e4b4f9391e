package org.seamledger.weather;

import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import org.seamledger.weather.HourDraft.Field;

/**
 * Hours of a table: a head line such as {@code time,air_C,humidity_%,sun_W/m2,wind_m/s,rain_mm}, then an hour a line, each an hour after
 * the one before. An empty cell is not known.
 */
final class HourlyCsvReader {

  private static final Map<String, Column> COLUMNS = columns();

  private final WeatherTable table = new WeatherTable();
  private final List<Column> head = new ArrayList<>();

  /** What stands in a column, and how it becomes a value of an hour. */
  private record Column(Field field, String what, double least, double most, DoubleUnaryOperator value) {
  }

  private HourlyCsvReader() {
  }

  private static Map<String, Column> columns() {
    DoubleUnaryOperator same = v -> v;
    DoubleUnaryOperator celsius = v -> (v - 32) / 1.8;
    DoubleUnaryOperator share = v -> v / 100;
    Map<String, Column> all = new LinkedHashMap<>();
    for (Map.Entry<String, Field> e : Map.of("air", Field.AIR, "dewpoint", Field.DEW_POINT, "metal", Field.METAL).entrySet()) {
      all.put(e.getKey() + "_c", new Column(e.getValue(), "°C", -90, 130, same));
      all.put(e.getKey() + "_f", new Column(e.getValue(), "°F", -130, 270, celsius));
    }
    all.put("humidity_%", new Column(Field.HUMIDITY, "relative humidity in %", 0, 100, share));
    all.put("cloud_%", new Column(Field.CLOUD, "cloud in %", 0, 100, share));
    all.put("pressure_hpa", new Column(Field.PRESSURE, "pressure in hPa", 310, 1200, v -> v * 100));
    all.put("sun_w/m2", new Column(Field.SUN, "solar radiation in W/m²", 0, 1500, same));
    all.put("wind_m/s", new Column(Field.WIND, "wind in m/s", 0, 100, same));
    all.put("wind_km/h", new Column(Field.WIND, "wind in km/h", 0, 360, v -> v / 3.6));
    all.put("wind_mph", new Column(Field.WIND, "wind in mph", 0, 250, v -> v * 0.44704));
    all.put("rain_mm", new Column(Field.RAIN, "rain in mm", 0, 400, same));
    all.put("rain_in", new Column(Field.RAIN, "rain in inches", 0, 16, v -> v * 25.4));
    return all;
  }

  private static final String NAMES = String.join(", ", new TreeSet<>(COLUMNS.keySet()));

  static List<WeatherHour> read(List<String> lines, String file) {
    HourlyCsvReader reader = new HourlyCsvReader();
    reader.head(WeatherTable.cells(lines.get(0), 1));
    List<WeatherHour> hours = reader.table.faults().isEmpty() ? reader.rows(lines) : List.of();
    if (hours.isEmpty() && reader.table.faults().isEmpty()) {
      reader.table.wrong(2, 1, "an hour a line", "the end of the file");
    } else if (hours.size() > WeatherTable.MOST_HOURS) {
      reader.table.wrong(WeatherTable.MOST_HOURS + 2, 1, "at most " + WeatherTable.MOST_HOURS + " hours", "more");
    }
    if (!reader.table.faults().isEmpty()) {
      throw new WeatherFormatException(file, reader.table.faults());
    }
    return hours;
  }

  private List<WeatherHour> rows(List<String> lines) {
    List<WeatherHour> hours = new ArrayList<>();
    LocalDateTime last = null;
    for (int i = 1; i < lines.size() && hours.size() <= WeatherTable.MOST_HOURS; i++) {
      if (!lines.get(i).isBlank()) {
        List<WeatherTable.Cell> cells = WeatherTable.cells(lines.get(i), i + 1);
        LocalDateTime time = time(cells.get(0), last);
        last = time == null ? last == null ? null : last.plusHours(1) : time;
        hours.add(hour(cells, last));
      }
    }
    return hours;
  }

  private void head(List<WeatherTable.Cell> cells) {
    Set<Field> seen = new TreeSet<>();
    for (WeatherTable.Cell cell : cells) {
      String name = cell.text().toLowerCase(Locale.ROOT).replace(" ", "_").replace("°", "").replace("²", "2");
      if (head.isEmpty() && cell == cells.get(0)) {
        if (!name.equals("time")) {
          table.wrong(cell, "LOCATION as an EPW file begins, or a head line that begins with time");
        }
        continue;
      }
      Column column = COLUMNS.get(name);
      if (column == null) {
        table.wrong(cell, "one of the columns " + NAMES);
      } else if (!seen.add(column.field())) {
        table.wrong(cell, "each value once");
      } else {
        head.add(column);
      }
    }
    if (table.faults().isEmpty() && !(seen.contains(Field.AIR) && (seen.contains(Field.HUMIDITY) || seen.contains(Field.DEW_POINT)))) {
      table.wrong(1, 1, "columns air_C or air_F, and humidity_% or dewpoint_C or dewpoint_F", "a head line without them");
    }
  }

  private LocalDateTime time(WeatherTable.Cell cell, LocalDateTime last) {
    try {
      LocalDateTime time = LocalDateTime.parse(cell.text().replace(' ', 'T'));
      if (time.getMinute() != 0 || time.getSecond() != 0 || time.getNano() != 0) {
        table.wrong(cell, "the beginning of an hour");
      } else if (last != null && !time.equals(last.plusHours(1))) {
        table.wrong(cell, "the next hour, " + last.plusHours(1));
      }
      return time;
    } catch (DateTimeParseException e) {
      table.wrong(cell, "a date and a time such as 2026-03-14T08:00");
      return null;
    }
  }

  private WeatherHour hour(List<WeatherTable.Cell> cells, LocalDateTime time) {
    HourDraft draft = new HourDraft();
    if (cells.size() - 1 > head.size() && cells.subList(head.size() + 1, cells.size()).stream().anyMatch(c -> !c.text().isEmpty())) {
      table.wrong(cells.get(head.size() + 1), "at most " + (head.size() + 1) + " cells");
    }
    for (int i = 1; i < cells.size() && i <= head.size(); i++) {
      Column column = head.get(i - 1);
      if (!cells.get(i).text().isEmpty()) {
        double value = table.number(cells.get(i), column.what(), column.least(), column.most());
        draft.set(column.field(), column.value().applyAsDouble(value));
      }
    }
    return time == null ? null : draft.at(time);
  }
}
