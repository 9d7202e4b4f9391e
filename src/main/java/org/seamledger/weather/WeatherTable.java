package org.seamledger.weather;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Lines of cells between commas, each with its place; collects what is wrong with them. */
final class WeatherTable {

  static final int MOST_HOURS = 20_000;
  private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,9}(\\.\\d{0,9})?([eE][+-]?\\d{1,2})?");
  private static final int SHOWN = 40;

  private final List<WeatherFormatException.Fault> faults = new ArrayList<>();

  /** A cell without the blanks around it; line and column from 1. */
  record Cell(String text, int line, int column) {
  }

  static List<Cell> cells(String line, int number) {
    List<Cell> cells = new ArrayList<>();
    int from = 0;
    while (from <= line.length()) {
      int comma = line.indexOf(',', from);
      int to = comma < 0 ? line.length() : comma;
      String text = line.substring(from, to);
      int blanks = text.length() - text.stripLeading().length();
      cells.add(new Cell(unquoted(text.strip()), number, from + blanks + 1));
      from = to + 1;
    }
    return cells;
  }

  private static String unquoted(String text) {
    return text.length() >= 2 && text.startsWith("\"") && text.endsWith("\"") ? text.substring(1, text.length() - 1).strip() : text;
  }

  void wrong(Cell cell, String expected) {
    String text = cell.text().length() > SHOWN ? cell.text().substring(0, SHOWN) + "…" : cell.text();
    wrong(cell.line(), cell.column(), expected, text.isEmpty() ? "an empty cell" : "\"" + text + "\"");
  }

  void wrong(int line, int column, String expected, String found) {
    faults.add(new WeatherFormatException.Fault(line, column, expected, found));
  }

  List<WeatherFormatException.Fault> faults() {
    return faults;
  }

  /** A number of a range; NaN, and a fault, where it is something else. */
  double number(Cell cell, String what, double least, double most) {
    if (NUMBER.matcher(cell.text()).matches()) {
      double value = Double.parseDouble(cell.text());
      if (value >= least && value <= most) {
        return value;
      }
    }
    wrong(cell, what + String.format(Locale.ROOT, " from %.0f to %.0f", least, most));
    return Double.NaN;
  }
}
