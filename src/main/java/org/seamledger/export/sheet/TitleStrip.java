package org.seamledger.export.sheet;

import java.util.List;
import org.seamledger.export.wording.ScopeText;
import org.seamledger.geometry.Vec2;
import org.seamledger.takeoff.Takeoff;

/** The foot of every sheet: limits, scale bars, key plan and title block (fields of ISO 7200, 180 mm wide as it asks). */
public final class TitleStrip {

  private static final double BLOCK_WIDTH = 180;
  private static final double BLOCK_HEIGHT = 34;
  private static final double KEY_WIDTH = 42;
  private static final double FINE = 2.25;
  private static final double SHEET_WIDTH = 26;
  private static final double SCALE_WIDTH = 66;

  private TitleStrip() {
  }

  /**
   * What a sheet's title block says of the sheet itself.
   *
   * @param sheet from 1; 0 where the set that it belongs to says it
   */
  public record Words(String title, String scale, int sheet, int sheets) {

    /** A sheet of a set whose numbers are not known yet. */
    public static Words inSet(String title, String scale) {
      return new Words(title, scale, 0, 0);
    }

    private String number() {
      return sheet == 0 ? "" : sheet + " of " + sheets;
    }
  }

  /** Where the number of a sheet stands: what a set of sheets fills in. */
  public static PaperBox sheetCell(Paper paper) {
    PaperBox frame = Sheet.frame(paper);
    double top = frame.bottom() - BLOCK_HEIGHT;
    return new PaperBox(frame.right() - SHEET_WIDTH + 1.2, top + 3.6, frame.right() - 1, top + 8);
  }

  /** What the strip leaves free between scale bars and key plan; nothing on small paper. */
  public static PaperBox spare(Paper paper) {
    PaperBox frame = Sheet.frame(paper);
    double left = frame.left() + SCALE_WIDTH;
    return new PaperBox(left, frame.bottom() - BLOCK_HEIGHT, Math.max(left, frame.right() - BLOCK_WIDTH - KEY_WIDTH), frame.bottom());
  }

  /** A sheet with nothing but frame, limits and title block, for words to be set on it. */
  public static String alone(Takeoff takeoff, SheetSetup setup, String title) {
    Svg svg = Sheet.begin(setup.paper(), 1, title, title, "");
    PaperBox frame = Sheet.frame(setup.paper());
    double top = frame.bottom() - BLOCK_HEIGHT;
    scope(setup.paper(), top, svg);
    block(SheetSubject.of(takeoff), setup, Words.inSet(title, ""),
        new PaperBox(frame.right() - BLOCK_WIDTH, top, frame.right(), frame.bottom()), svg);
    return svg.close("svg").toString();
  }

  /** What is left of a sheet for its drawing. */
  public static PaperBox room(Paper paper) {
    PaperBox frame = Sheet.frame(paper);
    return new PaperBox(frame.left(), frame.top(), frame.right(), frame.bottom() - BLOCK_HEIGHT - scope(paper).size() * 3 - 3);
  }

  private static List<String> scope(Paper paper) {
    PaperBox frame = Sheet.frame(paper);
    return Sheet.wrapped(ScopeText.SCOPE.text(), (int) ((frame.width() - 6) / (FINE * 0.56)));
  }

  /** Draws the strip; gives the key plan, for what the sheet shows to be marked on it. */
  public static KeyPlan draw(Takeoff takeoff, SheetSetup setup, Words words, double denominator, Svg svg) {
    return draw(SheetSubject.of(takeoff), setup, words, denominator, svg);
  }

  /** The same of what a sheet says of its result. */
  public static KeyPlan draw(SheetSubject of, SheetSetup setup, Words words, double denominator, Svg svg) {
    PaperBox frame = Sheet.frame(setup.paper());
    double top = frame.bottom() - BLOCK_HEIGHT;
    scope(setup.paper(), top, svg);
    double left = frame.right() - BLOCK_WIDTH;
    block(of, setup, words, new PaperBox(left, top, frame.right(), frame.bottom()), svg);
    PaperBox key = new PaperBox(left - KEY_WIDTH, top, left, frame.bottom());
    svg.line("rule", new Vec2(key.left(), key.top()), new Vec2(key.left(), key.bottom()));
    svg.text("caption", new Vec2(key.left() + 1.2, key.top() + 2.4), "Key plan, model north up");
    KeyPlan plan = new KeyPlan(of, new PaperBox(key.left() + 3, key.top() + 4.5, key.right() - 3, key.bottom() - 2.5));
    plan.draw(svg);
    if (denominator > 0) {
      Sheet.scaleBars(svg, new Vec2(frame.left() + 3, top + 6), denominator, setup, key.left() - frame.left() - 8);
    }
    return plan;
  }

  private static void scope(Paper paper, double top, Svg svg) {
    PaperBox frame = Sheet.frame(paper);
    List<String> scope = scope(paper);
    double y = top - scope.size() * 3 - 3;
    svg.line("rule", new Vec2(frame.left(), y), new Vec2(frame.right(), y));
    for (int i = 0; i < scope.size(); i++) {
      svg.text("fine", new Vec2(frame.left() + 3, y + 3.4 + i * 3), scope.get(i));
    }
    svg.line("rule", new Vec2(frame.left(), top), new Vec2(frame.right(), top));
  }

  private static void block(SheetSubject of, SheetSetup setup, Words words, PaperBox at, Svg svg) {
    TitleBlock t = setup.title();
    String date = t.date().isEmpty() ? of.date() : t.date();
    double top = at.top();
    row(svg, at.left(), top, 10, new double[] {92, 40, 22, SHEET_WIDTH},
        new String[] {"Project", t.project(), "Number", t.number(), "Revision",
            t.revision(), "Sheet", words.number()});
    row(svg, at.left(), top + 10, 13, new double[] {114, 40, 26}, new String[] {"Title", words.title(), "Scale at " + setup.paper().label(),
        words.scale(), "Units", setup.units().label()});
    row(svg, at.left(), top + 23, 11, new double[] {76, 26, 26, 26, 26}, new String[] {"Model", of.models(), "Date of the model",
        date, "Drawn", t.drawn(), "Checked", t.checked(), "Program", "seamledger " + of.version()});
    svg.empty("rect", "class", "frame", "x", Svg.number(at.left()), "y", Svg.number(top), "width", Svg.number(at.width()), "height",
        Svg.number(at.height()));
  }

  private static void row(Svg svg, double left, double top, double height, double[] widths, String[] words) {
    double x = left;
    for (int i = 0; i < widths.length; i++) {
      svg.empty("rect", "class", "cell", "x", Svg.number(x), "y", Svg.number(top), "width", Svg.number(widths[i]), "height",
          Svg.number(height));
      svg.text("caption", new Vec2(x + 1.2, top + 2.4), words[2 * i]);
      List<String> lines = Sheet.wrapped(words[2 * i + 1], (int) ((widths[i] - 2.4) / (2.7 * 0.6)));
      int most = (int) ((height - 3.4) / 3.2);
      for (int k = 0; k < Math.min(most, lines.size()); k++) {
        boolean isCut = k == most - 1 && lines.size() > most;
        svg.text("value", new Vec2(x + 1.2, top + 6 + k * 3.3), Sheet.cut(lines.get(k), (int) ((widths[i] - 2.4) / (2.7 * 0.6)), isCut));
      }
      x += widths[i];
    }
  }
}
