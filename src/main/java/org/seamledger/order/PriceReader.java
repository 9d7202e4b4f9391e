package org.seamledger.order;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.seamledger.order.PriceFormatException.Problem;

/** A price list from comma-separated values: a head line that names the columns, then a price a line. */
final class PriceReader {

  private static final int LONGEST = 1 << 20;
  private static final Pattern DECIMAL = Pattern.compile("\\d{1,12}(\\.\\d{1,6})?");
  private static final Map<String, String> COLUMNS = Map.ofEntries(Map.entry("id", "id"), Map.entry("orderid", "id"),
      Map.entry("pattern", "id"), Map.entry("unit", "unit"), Map.entry("price", "price"), Map.entry("labourhours", "labourHours"),
      Map.entry("laborhours", "labourHours"), Map.entry("labour", "labourHours"), Map.entry("hours", "labourHours"),
      Map.entry("labourhoursperunit", "labourHours"), Map.entry("labourhoursaunit", "labourHours"), Map.entry("note", "note"),
      Map.entry("currency", "currency"));

  private final List<Problem> problems = new ArrayList<>();
  private final Map<String, Integer> columns = new HashMap<>();
  private final List<PriceList.Row> rows = new ArrayList<>();
  private final Set<String> known = new HashSet<>();
  private String currency = "";

  private PriceReader() {
  }

  static PriceList read(String text, String file) {
    PriceReader reader = new PriceReader();
    if (text.length() > LONGEST) {
      reader.problems.add(new Problem(1, 1, "at most " + LONGEST + " characters", text.length() + " characters"));
    } else {
      reader.read(CsvCells.of(text));
    }
    if (!reader.problems.isEmpty()) {
      throw new PriceFormatException(file, reader.problems);
    }
    return new PriceList(file, reader.currency, reader.rows);
  }

  private void read(List<List<CsvCells.Cell>> lines) {
    if (lines.isEmpty()) {
      problems.add(new Problem(1, 1, "a head line with id, unit and price", "nothing"));
      return;
    }
    head(lines.get(0));
    if (problems.isEmpty()) {
      lines.subList(1, lines.size()).forEach(this::row);
    }
  }

  private void head(List<CsvCells.Cell> cells) {
    for (int i = 0; i < cells.size(); i++) {
      CsvCells.Cell cell = cells.get(i);
      String name = COLUMNS.get(cell.text().toLowerCase(Locale.ROOT).replaceAll("[^a-z]", ""));
      if (name == null && !cell.text().isEmpty()) {
        wrong(cell, "one of the columns id, unit, price, labourHours, currency, note");
      } else if (name != null && columns.putIfAbsent(name, i) != null) {
        wrong(cell, "each column once");
      }
    }
    for (String needed : List.of("id", "unit", "price")) {
      if (!columns.containsKey(needed) && problems.isEmpty()) {
        problems.add(new Problem(cells.get(0).line(), 1, "a column " + needed, "none in the head line"));
      }
    }
  }

  private void wrong(CsvCells.Cell cell, String expected) {
    String text = cell.text().length() > 40 ? cell.text().substring(0, 40) + "…" : cell.text();
    problems.add(new Problem(cell.line(), cell.column(), expected, text.isEmpty() ? "an empty cell" : "\"" + text + "\""));
  }

  private CsvCells.Cell cell(List<CsvCells.Cell> cells, String column) {
    CsvCells.Cell last = cells.get(cells.size() - 1);
    int i = columns.getOrDefault(column, Integer.MAX_VALUE);
    return i < cells.size() ? cells.get(i) : new CsvCells.Cell("", last.line(), last.column() + last.text().length());
  }

  private void row(List<CsvCells.Cell> cells) {
    int before = problems.size();
    CsvCells.Cell id = cell(cells, "id");
    if (id.text().isEmpty()) {
      wrong(id, "the id of a line of the order, or a pattern such as trim:*");
    }
    CsvCells.Cell unit = cell(cells, "unit");
    String named = PriceUnit.named(unit.text());
    if (named.isEmpty()) {
      wrong(unit, "one of the units " + String.join(", ", PriceUnit.NAMES));
    }
    BigDecimal price = decimal(cell(cells, "price"), "a price such as 12.50, with a point and without a currency", false);
    BigDecimal hours = decimal(cell(cells, "labourHours"), "hours of labour such as 0.25, or nothing", true);
    currency(cell(cells, "currency"));
    if (problems.size() == before && !known.add(id.text())) {
      wrong(id, "each id or pattern once");
    }
    if (cells.size() > columns.size() && cells.subList(columns.size(), cells.size()).stream().anyMatch(c -> !c.text().isEmpty())) {
      wrong(cells.get(columns.size()), "at most " + columns.size() + " cells");
    }
    if (problems.size() == before) {
      rows.add(new PriceList.Row(id.line(), id.text(), named, price, hours, cell(cells, "note").text()));
    }
  }

  private BigDecimal decimal(CsvCells.Cell cell, String expected, boolean optional) {
    if (optional && cell.text().isEmpty()) {
      return BigDecimal.ZERO;
    }
    if (!DECIMAL.matcher(cell.text()).matches()) {
      wrong(cell, expected);
      return BigDecimal.ZERO;
    }
    return new BigDecimal(cell.text());
  }

  private void currency(CsvCells.Cell cell) {
    if (!cell.text().isEmpty() && !currency.isEmpty() && !cell.text().equals(currency)) {
      wrong(cell, "one currency for the whole file, " + currency);
    } else if (!cell.text().isEmpty()) {
      currency = cell.text();
    }
  }
}
