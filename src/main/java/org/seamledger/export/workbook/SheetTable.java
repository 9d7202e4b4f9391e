package org.seamledger.export.workbook;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.dhatim.fastexcel.BorderSide;
import org.dhatim.fastexcel.BorderStyle;
import org.dhatim.fastexcel.HyperLink;
import org.dhatim.fastexcel.PaperSize;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** A sheet with a title, a note, and one table whose head stays in view, filters, and prints on every page. */
final class SheetTable<T> {

  /** Rows above the table: title, note, sums. */
  private static final int TITLE = 0;
  private static final int NOTE = 1;
  private static final int SUMS = 2;
  static final int HEAD = 3;

  /** A sheet with more than 65,530 links is one that spreadsheets refuse (limits as Excel's documentation states them). */
  private static final int MOST_LINKS = 65_000;

  private static final String HEAD_COLOUR = "D9DDD6";
  private static final String INPUT_COLOUR = "FFF6D6";

  private final Worksheet sheet;
  private final List<Column<T>> columns;
  private final Map<String, Integer> places = new HashMap<>();
  private int links;

  SheetTable(Workbook book, String name, String title, String note, List<Column<T>> columns) {
    this.sheet = book.newWorksheet(name);
    this.columns = columns;
    Cells.text(sheet, TITLE, 0, title);
    sheet.style(TITLE, 0).bold().fontSize(14).set();
    Cells.text(sheet, NOTE, 0, note);
    sheet.style(NOTE, 0).italic().set();
    for (int c = 0; c < columns.size(); c++) {
      places.put(columns.get(c).title(), c);
      sheet.width(c, columns.get(c).width());
      Cells.text(sheet, HEAD, c, columns.get(c).title());
      sheet.style(HEAD, c).bold().fillColor(HEAD_COLOUR).wrapText(true).verticalAlignment("top")
          .borderStyle(BorderSide.BOTTOM, BorderStyle.THIN)
          .set();
    }
    sheet.freezePane(1, HEAD + 1);
    sheet.repeatRows(HEAD);
    sheet.paperSize(PaperSize.A4_PAPER);
    sheet.pageOrientation("landscape");
    sheet.fitToWidth((short) 1);
    sheet.fitToHeight((short) 0);
    sheet.footer("&A, page &P of &N", org.dhatim.fastexcel.Position.CENTER);
  }

  /** Number of a row, from 1 as formulas count, by its place in the table from 0. */
  static int row(int place) {
    return HEAD + 2 + place;
  }

  /** Writes the rows. @param sums titles of columns that get a sum above their head, of what the filter leaves */
  void rows(List<T> rows, List<String> sums) {
    for (int r = 0; r < rows.size(); r++) {
      for (int c = 0; c < columns.size(); c++) {
        cell(HEAD + 1 + r, c, rows.get(r));
      }
    }
    if (rows.isEmpty()) {
      return;
    }
    int last = HEAD + rows.size();
    sheet.setAutoFilter(HEAD, 0, last, columns.size() - 1);
    for (String title : sums) {
      int c = places.get(title);
      String range = Cells.letter(c) + row(0) + ":" + Cells.letter(c) + row(rows.size() - 1);
      // Where no row shown has a number there is no sum: 0 would say that it costs nothing.
      sheet.formula(SUMS, c, "IF(SUBTOTAL(102," + range + ")=0,\"\",SUBTOTAL(109," + range + "))");
      sheet.style(SUMS, c).bold().format(columns.get(c).format()).set();
    }
    if (!sums.isEmpty()) {
      Cells.text(sheet, SUMS, 0, "sum of the rows shown");
    }
  }

  private void cell(int row, int c, T of) {
    Column<T> column = columns.get(c);
    Object value = column.value().apply(of);
    if (value instanceof Column.Link link && ++links > MOST_LINKS) {
      Cells.text(sheet, row, c, link.text());
    } else if (value instanceof Column.Link link) {
      sheet.hyperlink(row, c, HyperLink.internal(link.place(), Cells.clean(link.text())));
      sheet.style(row, c).fontColor("1F4E79").underlined().set();
    } else if (value instanceof Column.Formula formula) {
      sheet.formula(row, c, inRow(formula.text(), row));
    } else {
      Cells.value(sheet, row, c, value);
    }
    if (!column.format().isEmpty()) {
      sheet.style(row, c).format(column.format()).set();
    }
  }

  private String inRow(String formula, int row) {
    String text = formula;
    for (Map.Entry<String, Integer> place : places.entrySet()) {
      text = text.replace("{" + place.getKey() + "}", Cells.letter(place.getValue()) + (row + 1));
    }
    return text;
  }

  /** Marks columns whose values a user may change: what depends on them follows. */
  void inputs(int rows, String... titles) {
    List<Integer> marked = new ArrayList<>();
    for (String title : titles) {
      marked.add(places.get(title));
    }
    for (int c : marked) {
      for (int r = 0; r < rows; r++) {
        sheet.style(HEAD + 1 + r, c).fillColor(INPUT_COLOUR).format(columns.get(c).format().isEmpty() ? "@" : columns.get(c).format())
            .set();
      }
    }
  }
}
