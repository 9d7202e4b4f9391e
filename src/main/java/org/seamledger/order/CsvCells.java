package org.seamledger.order;

import java.util.ArrayList;
import java.util.List;

/** Comma-separated values by RFC 4180 with the place of every cell, for messages. */
final class CsvCells {

  /** @param line and column of its first character, from 1 */
  record Cell(String text, int line, int column) {
  }

  private final String text;
  private final char separator;
  private int at;
  private int line = 1;
  private int lineStart;

  private CsvCells(String text, char separator) {
    this.text = text;
    this.separator = separator;
  }

  /**
   * Rows that hold anything. A semicolon parts cells where the first line has one and no comma.
   *
   * @throws IllegalArgumentException never: a quote without an end runs to the end of the text
   */
  static List<List<Cell>> of(String text) {
    String plain = text.startsWith("\ufeff") ? text.substring(1) : text;
    String first = plain.lines().findFirst().orElse("");
    CsvCells cells = new CsvCells(plain, first.indexOf(';') >= 0 && first.indexOf(',') < 0 ? ';' : ',');
    List<List<Cell>> rows = new ArrayList<>();
    while (cells.at < plain.length()) {
      List<Cell> row = cells.row();
      if (row.stream().anyMatch(c -> !c.text().isBlank())) {
        rows.add(row);
      }
    }
    return rows;
  }

  private List<Cell> row() {
    List<Cell> row = new ArrayList<>();
    while (true) {
      row.add(cell());
      if (at >= text.length()) {
        return row;
      }
      char end = text.charAt(at++);
      if (end != separator) {
        if (end == '\r' && at < text.length() && text.charAt(at) == '\n') {
          at++;
        }
        newLine();
        return row;
      }
    }
  }

  private void newLine() {
    line++;
    lineStart = at;
  }

  private Cell cell() {
    int column = at - lineStart + 1;
    int startLine = line;
    StringBuilder value = new StringBuilder();
    if (at < text.length() && text.charAt(at) == '"') {
      at++;
      quoted(value);
    }
    while (at < text.length() && text.charAt(at) != separator && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
      value.append(text.charAt(at++));
    }
    return new Cell(value.toString().strip(), startLine, column);
  }

  private void quoted(StringBuilder value) {
    while (at < text.length()) {
      char c = text.charAt(at++);
      if (c == '"') {
        if (at >= text.length() || text.charAt(at) != '"') {
          return;
        }
        at++;
      } else if (c == '\n') {
        newLine();
      }
      value.append(c);
    }
  }
}
