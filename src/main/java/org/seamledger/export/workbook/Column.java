package org.seamledger.export.workbook;

import java.util.function.Function;

/**
 * A column of a table.
 *
 * @param title unique in its table
 * @param width in characters
 * @param format a spreadsheet's number format, or empty for text
 * @param value text, a finite number, a flag, a {@link Link}, a {@link Formula}, or null for an empty cell
 */
record Column<T>(String title, double width, String format, Function<T, Object> value) {

  static final String WHOLE = "#,##0";
  static final String THREE = "#,##0.000";
  static final String TWO = "#,##0.00";

  /** A cell that leads to a place in this workbook. */
  record Link(String text, String place) {
  }

  /** A cell that calculates; a column's title in braces stands for that cell of its own row. */
  record Formula(String text) {
  }

  static <T> Column<T> text(String title, double width, Function<T, Object> value) {
    return new Column<>(title, width, "", value);
  }

  static <T> Column<T> number(String title, String format, Function<T, Object> value) {
    return new Column<>(title, Math.max(11, title.length() + 2), format, value);
  }
}
