package org.seamledger.export.submittal;

import java.util.List;

/** A table with a head on every page: columns of fixed shares, rows of cells in their order. */
final class FoTable {

  /**
   * A column.
   *
   * @param share of the table's width, in parts of the sum of all
   */
  record Column(String head, double share, boolean isNumber) {

    static Column words(String head, double share) {
      return new Column(head, share, false);
    }

    static Column number(String head, double share) {
      return new Column(head, share, true);
    }
  }

  private static final String RULE = "0.15mm solid #b9c2c9";

  private final FoWriter fo;
  private final List<Column> columns;
  private int cell;
  private String id = "";

  private FoTable(FoWriter fo, List<Column> columns) {
    this.fo = fo;
    this.columns = columns;
  }

  /** Opens the table; {@link #close} ends it. At least one row has to follow. */
  static FoTable open(FoWriter fo, Column... columns) {
    FoTable table = new FoTable(fo, List.of(columns));
    fo.open("table", "table-layout", "fixed", "width", "100%", "space-after", "3mm", "font-size", "0.92em");
    table.columns.forEach(c -> fo.empty("table-column", "column-width", "proportional-column-width(" + c.share() + ")"));
    fo.open("table-header").open("table-row");
    for (Column c : table.columns) {
      fo.open("table-cell", "padding", "0.7mm 1.6mm", "border-bottom", "0.35mm solid #1b2530");
      fo.block(c.head(), "font-weight", "bold", "text-align", c.isNumber() ? "end" : "start").close("table-cell");
    }
    fo.close("table-row").close("table-header").open("table-body");
    return table;
  }

  FoTable row() {
    return row("");
  }

  /** A row that something leads to: to its first cell's block, for the formatter knows no place of a row. */
  FoTable row(String place) {
    fo.open("table-row", "keep-together.within-column", "always");
    cell = 0;
    id = place;
    return this;
  }

  FoTable cell(String words) {
    return cell(() -> fo.text(words));
  }

  /** A cell with what is written into its block. */
  FoTable cell(Runnable content) {
    fo.open("table-cell", "padding", "0.6mm 1.6mm", "border-bottom", RULE);
    String align = columns.get(cell).isNumber() ? "end" : "start";
    if (id.isEmpty()) {
      fo.open("block", "text-align", align);
    } else {
      fo.open("block", "text-align", align, "id", id);
    }
    id = "";
    content.run();
    fo.close("block").close("table-cell");
    cell++;
    return this;
  }

  void endRow() {
    fo.close("table-row");
  }

  void close() {
    fo.close("table-body").close("table");
  }
}
