package org.seamledger.export.submittal;

import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.TitleStrip;
import org.seamledger.takeoff.Takeoff;

/**
 * The sheets of a submittal: every page has the paper's true size, a frame and a title block. A drawing brings its own; what is missing
 * there, which sheet of how many it is, is set over it.
 */
final class SheetFrame {

  private static final double INSET = 5;
  private static final double GAP = 9;
  private static final String END = "end";

  private final Takeoff takeoff;
  private final SheetSetup setup;
  private final Paper paper;
  private Pages waiting;

  /** A page sequence, written when the next is there: the last one alone is known by an id of its own. */
  @FunctionalInterface
  private interface Pages {
    void write(String... id);
  }

  SheetFrame(Takeoff takeoff, SheetSetup setup) {
    this.takeoff = takeoff;
    this.setup = setup;
    this.paper = setup.paper();
  }

  /** Height of usual letters, millimetres. */
  double textSize() {
    return paper.isSmall() ? 2.7 : 3;
  }

  /** Columns of running text, so that lines don't get too long to read. */
  int columns() {
    return paper.isSmall() ? 2 : paper.widthMm() > 500 ? 4 : 3;
  }

  /** Where words go. */
  PaperBox room() {
    return TitleStrip.room(paper).inset(INSET);
  }

  private static String mm(double value) {
    return Svg.number(value) + "mm";
  }

  void masters(FoWriter fo) {
    fo.open("layout-master-set");
    master("sheet", new PaperBox(0, 0, paper.widthMm(), paper.heightMm()), 1, fo);
    for (int n = 1; n <= columns(); n++) {
      master("columns-" + n, room(), n, fo);
    }
    fo.close("layout-master-set");
  }

  private void master(String name, PaperBox body, int columns, FoWriter fo) {
    fo.open("simple-page-master", "master-name", name, "page-width", mm(paper.widthMm()), "page-height", mm(paper.heightMm()));
    fo.empty("region-body", "margin-left", mm(body.left()), "margin-top", mm(body.top()), "margin-right",
        mm(paper.widthMm() - body.right()),
        "margin-bottom", mm(paper.heightMm() - body.bottom()), "column-count", Integer.toString(columns), "column-gap", mm(GAP));
    fo.empty("region-before", "extent", "0mm");
    fo.empty("region-after", "extent", "0mm");
    fo.close("simple-page-master");
  }

  private void add(Pages pages) {
    if (waiting != null) {
      waiting.write();
    }
    waiting = pages;
  }

  /** Writes the last pages. */
  void finish() {
    waiting.write("id", END);
    waiting = null;
  }

  private static String[] with(String[] id, String master) {
    return id.length == 0 ? new String[] {"master-reference", master} : new String[] {id[0], id[1], "master-reference", master};
  }

  /** Pages of words in so many columns, with a title block. */
  void text(String title, int columns, Runnable flow, FoWriter fo) {
    add(id -> written(title, columns, flow, fo, id));
  }

  private void written(String title, int columns, Runnable flow, FoWriter fo, String... id) {
    fo.open("page-sequence", with(id, "columns-" + columns));
    fo.open("static-content", "flow-name", "xsl-region-before", "role", "artifact");
    whole(TitleStrip.alone(takeoff, setup, title), title, fo);
    fo.close("static-content");
    number(fo);
    fo.open("flow", "flow-name", "xsl-region-body");
    flow.run();
    fo.close("flow").close("page-sequence");
  }

  /** A sheet that is a drawing, with the words that stand for it where it can't be seen. */
  void drawing(String svg, String instead, String place, FoWriter fo) {
    add(id -> drawn(svg, instead, place, fo, id));
  }

  private void drawn(String svg, String instead, String place, FoWriter fo, String... id) {
    fo.open("page-sequence", with(id, "sheet"));
    number(fo);
    fo.open("flow", "flow-name", "xsl-region-body");
    fo.open("block", "id", place, "font-size", "0", "line-height", "0");
    whole(svg, instead, fo);
    fo.close("block").close("flow").close("page-sequence");
  }

  private void whole(String svg, String instead, FoWriter fo) {
    fo.open("block-container", "absolute-position", "fixed", "left", "0mm", "top", "0mm", "width", mm(paper.widthMm()), "height",
        mm(paper.heightMm()));
    fo.open("block", "font-size", "0", "line-height", "0");
    fo.drawing(svg, instead, "content-width", mm(paper.widthMm()), "content-height", mm(paper.heightMm()));
    fo.close("block").close("block-container");
  }

  /** Which sheet it is: over all else, in the title block's own cell. */
  private void number(FoWriter fo) {
    PaperBox cell = TitleStrip.sheetCell(paper);
    fo.open("static-content", "flow-name", "xsl-region-after", "role", "artifact");
    fo.open("block-container", "absolute-position", "fixed", "left", mm(cell.left()), "top", mm(cell.top()), "width", mm(cell.width()),
        "height", mm(cell.height()));
    fo.open("block", "font-size", "2.7mm", "line-height", "1");
    fo.empty("page-number").text(" of ").empty("page-number-citation-last", "ref-id", END);
    fo.close("block").close("block-container").close("static-content");
  }
}
