package org.seamledger.export.report;

import java.util.ArrayList;
import java.util.List;

/** Columns of text that line up, two blanks apart; the last column is cut where the page ends. */
public final class Table {

  private static final String GAP = "  ";

  private final String indent;
  private final boolean[] right;
  private final List<List<String>> rows = new ArrayList<>();

  /** @param alignment one letter a column: {@code l} or {@code r} */
  public Table(String indent, String alignment) {
    this.indent = indent;
    this.right = new boolean[alignment.length()];
    for (int i = 0; i < right.length; i++) {
      right[i] = alignment.charAt(i) == 'r';
    }
  }

  public Table row(String... cells) {
    rows.add(List.of(cells));
    return this;
  }

  /** A row whose one cell may run over all columns. */
  Table span(String text) {
    return row(text);
  }

  /** Widths of the columns, each that of its widest cell. */
  private int[] widths() {
    int[] widths = new int[right.length];
    for (List<String> row : rows) {
      for (int i = 0; row.size() > 1 && i < row.size(); i++) {
        widths[i] = Math.max(widths[i], columns(row.get(i)));
      }
    }
    return widths;
  }

  public void on(TextPage page) {
    int[] widths = widths();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder(indent);
      for (int i = 0; i < row.size(); i++) {
        String pad = row.size() == 1 ? "" : " ".repeat(widths[i] - columns(row.get(i)));
        line.append(i > 0 ? GAP : "").append(right[i] ? pad + row.get(i) : row.get(i) + pad);
      }
      page.line(cut(line.toString().stripTrailing()));
    }
  }

  private static String cut(String line) {
    return columns(line) <= TextPage.WIDTH ? line : line.substring(0, line.offsetByCodePoints(0, TextPage.WIDTH - 1)) + "…";
  }

  private static int columns(String text) {
    return text.codePointCount(0, text.length());
  }
}
