package org.seamledger.export.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.KindedJunction;
import org.seamledger.export.sheet.KeyPlan;
import org.seamledger.export.sheet.Palette;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.TitleStrip;
import org.seamledger.geometry.Vec2;
import org.seamledger.junction.Junction;
import org.seamledger.takeoff.Takeoff;

/**
 * The sheets of a roof plan: the whole roof; where that is too small to be read, its parts with match lines; and where the list of short
 * lines has no room beside the plan, the rest of it.
 */
public final class PlanSheets {

  private static final String STYLE = """
      .face { fill: #f0f3f5; stroke: none; fill-rule: evenodd; }
      .face-2 { fill: #e3eaee; }
      .seam { stroke: #9fb0bb; stroke-width: 0.13; }
      .fall { stroke: #44525f; stroke-width: 0.3; fill: none; }
      .fall-head { fill: #44525f; }
      .water { stroke: #2f7fd6; stroke-opacity: 0.6; fill: none; stroke-linecap: round; stroke-linejoin: round; }
      .label { font-size: 2.4px; }
      .slope { font-size: 2.7px; fill: #2c3944; }
      .tag-ring { fill: #ffffff; stroke: #1b2530; stroke-width: 0.2; }
      .tag-line { stroke: #1b2530; stroke-width: 0.18; }
      .tag-number { font-size: 2.1px; }
      .grid { font-size: 2.4px; fill: #44525f; }
      .match { stroke: #1b2530; stroke-width: 0.7; stroke-dasharray: 9 1.5 1.5 1.5; fill: none; }
      .match-word { font-size: 2.7px; font-weight: 600; }
      .part { fill: none; stroke: #44525f; stroke-width: 0.3; stroke-dasharray: 4 1.5; }
      """;
  private static final double ROW = 3.2;

  private final Takeoff takeoff;
  private final SheetSetup setup;
  private final boolean isInSet;
  private final PlanNames names;
  private final PlanView whole;
  private final List<PlanView> parts;
  private final PlanFigure figure;
  private final List<String> rows = new ArrayList<>();
  private final int rowsBeside;

  private PlanSheets(Takeoff takeoff, SheetSetup setup, boolean isInSet) {
    this.takeoff = takeoff;
    this.setup = setup;
    this.isInSet = isInSet;
    names = new PlanNames(takeoff);
    PaperBox place = place(setup.paper());
    whole = PlanView.whole(takeoff, place);
    parts = PlanView.parts(takeoff, whole, place);
    figure = new PlanFigure(takeoff, whole, names, setup.units(), place);
    names.number(inReadingOrder());
    schedule();
    double below = PlanCaption.legend(takeoff, setup, names.hasOverrides(), column(setup.paper()), new Svg());
    rowsBeside = (int) Math.max(0, (column(setup.paper()).bottom() - below - 8) / ROW);
  }

  /** Each sheet as SVG text, the whole roof first; the same takeoff and setup give the same text. */
  public static List<String> draw(Takeoff takeoff, SheetSetup setup) {
    return drawn(new PlanSheets(takeoff, setup, false));
  }

  /** The same as sheets of a larger set, which numbers them: what they refer to is parts of the plan, not sheets. */
  public static List<String> inSet(Takeoff takeoff, SheetSetup setup) {
    return drawn(new PlanSheets(takeoff, setup, true));
  }

  private static List<String> drawn(PlanSheets sheets) {
    List<String> drawn = new ArrayList<>();
    for (int i = 0; i < sheets.count(); i++) {
      drawn.add(sheets.sheet(i));
    }
    return drawn;
  }

  private static double columnWidth(Paper paper) {
    return paper.isSmall() ? 70 : 84;
  }

  private static PaperBox place(Paper paper) {
    PaperBox room = TitleStrip.room(paper);
    return new PaperBox(room.left() + 1, room.top() + 1, room.right() - columnWidth(paper) - 1, room.bottom() - 1);
  }

  private static PaperBox column(Paper paper) {
    PaperBox room = TitleStrip.room(paper);
    return new PaperBox(room.right() - columnWidth(paper) + 3, room.top() + 2, room.right() - 2, room.bottom() - 2);
  }

  /** Short lines by the fields of the first sheet, from its top left, so that a number is found where it is looked for. */
  private List<String> inReadingOrder() {
    PlanGrid grid = new PlanGrid(Sheet.frame(setup.paper()));
    List<Junction> short0 = new ArrayList<>(takeoff.lines().stream().map(j -> j.junction().junction())
        .filter(j -> !figure.labelled().contains(j.id())).toList());
    short0.sort(Comparator.comparing((Junction j) -> grid.field(middle(j))).thenComparing(j -> middle(j).u())
        .thenComparing(Junction::id));
    return short0.stream().map(Junction::id).toList();
  }

  private Vec2 middle(Junction junction) {
    List<Vec2> at = figure.stretch(junction);
    return at.isEmpty() ? whole.paper(junction.path().get(0)) : at.get(0).towards(at.get(1), 0.5);
  }

  /** What short lines and narrow faces are, and where: what the plan itself has no room to say. */
  private void schedule() {
    PlanGrid grid = new PlanGrid(Sheet.frame(setup.paper()));
    Map<String, KindedJunction> byId = new HashMap<>();
    takeoff.lines().forEach(j -> byId.put(j.junction().junction().id(), j.junction()));
    names.tags().forEach((id, tag) -> {
      KindedJunction j = byId.get(id);
      rows.add(tag + "  " + grid.field(middle(j.junction())) + "  " + names.name(id) + " · " + setup.units().length(j.junction().lengthM())
          + " · " + j.type().label());
    });
    rows.addAll(figure.unlabelledFaces());
  }

  private int rowsPerSheet() {
    PaperBox room = TitleStrip.room(setup.paper());
    return listColumns() * (int) ((room.height() - 14) / ROW);
  }

  private int listColumns() {
    return (int) (TitleStrip.room(setup.paper()).width() / columnWidth(setup.paper()));
  }

  private int count() {
    int rest = Math.max(0, rows.size() - rowsBeside);
    return 1 + parts.size() + (rest + rowsPerSheet() - 1) / rowsPerSheet();
  }

  private String sheet(int index) {
    boolean isList = index > parts.size();
    PlanView view = index == 0 || isList ? whole : parts.get(index - 1);
    StringBuilder css = new StringBuilder(STYLE);
    Palette.seals().forEach(e -> css.append(e.css()));
    String what = isList ? "Roof plan, list of short lines" : index == 0 ? "Roof plan" : "Roof plan, part " + index + " of " + parts.size();
    String title = what + ": " + Sheet.models(takeoff);
    Svg svg = Sheet.begin(setup.paper(), view.denominator(), title, "Faces, falls, seams and junction lines of the roof, seen from above.",
        css.toString());
    PlanGrid grid = new PlanGrid(Sheet.frame(setup.paper()));
    grid.draw(svg);
    String scale = isList ? "none" : Sheet.scale(view.denominator());
    String words = what + ", " + takeoff.system().name() + ", " + takeoff.faces().size() + " faces, " + takeoff.junctions().size()
        + " junctions" + (takeoff.joints().isEmpty() ? "" : ", " + takeoff.joints().size() + " panel joints");
    KeyPlan key = TitleStrip.draw(takeoff, setup,
        isInSet ? TitleStrip.Words.inSet(words, scale) : new TitleStrip.Words(words, scale, index + 1, count()),
        isList ? 0 : view.denominator(), svg);
    for (int i = 0; i < parts.size(); i++) {
      key.mark(parts.get(i).low(), parts.get(i).high(), Integer.toString(isInSet ? i + 1 : i + 2), index == i + 1, svg);
    }
    if (isList) {
      list(index - parts.size() - 1, svg);
    } else {
      plan(index, view, svg);
    }
    return svg.close("svg").toString();
  }

  private void plan(int index, PlanView view, Svg svg) {
    PaperBox column = column(setup.paper());
    svg.line("rule", new Vec2(column.left() - 2, column.top() - 2), new Vec2(column.left() - 2, column.bottom() + 2));
    if (index == 0) {
      svg.add(figure.draw());
      parts.forEach(p -> outline(p, svg));
    } else {
      svg.add(new PlanFigure(takeoff, view, names, setup.units(), place(setup.paper())).draw());
      matchLines(view, svg);
    }
    double y = PlanCaption.legend(takeoff, setup, names.hasOverrides(), column, svg);
    if (!rows.isEmpty()) {
      svg.text("head", new Vec2(column.left(), y + 4), rows.size() > rowsBeside ? "Short lines (more on the list's own sheet)"
          : "Short lines, narrow faces");
      rows(rows.subList(0, Math.min(rowsBeside, rows.size())), new Vec2(column.left(), y + 8), column.width(), svg);
    }
  }

  private static void rows(List<String> rows, Vec2 at, double width, Svg svg) {
    int most = (int) (width / (2.3 * 0.57));
    for (int i = 0; i < rows.size(); i++) {
      svg.text("small", at.plus(new Vec2(0, i * ROW)), Sheet.cut(rows.get(i), most, false));
    }
  }

  private void list(int page, Svg svg) {
    PaperBox room = TitleStrip.room(setup.paper());
    svg.text("title", new Vec2(room.left() + 4, room.top() + 8), "Short lines and narrow faces");
    int perColumn = rowsPerSheet() / listColumns();
    int from = rowsBeside + page * rowsPerSheet();
    for (int c = 0; c < listColumns(); c++) {
      int first = Math.min(rows.size(), from + c * perColumn);
      int last = Math.min(rows.size(), first + perColumn);
      rows(rows.subList(first, last), new Vec2(room.left() + 4 + c * columnWidth(setup.paper()), room.top() + 13),
          columnWidth(setup.paper()) - 4, svg);
    }
  }

  /** Where a part lies on the whole roof's sheet. */
  private void outline(PlanView part, Svg svg) {
    PaperBox w = whole.window();
    double k = 1000 / whole.denominator();
    double left = w.left() + (part.low().u() - whole.low().u()) * k;
    double bottom = w.bottom() - (part.low().v() - whole.low().v()) * k;
    svg.empty("rect", "class", "part", "x", Svg.number(left), "y", Svg.number(bottom - (part.high().v() - part.low().v()) * k), "width",
        Svg.number((part.high().u() - part.low().u()) * k), "height", Svg.number((part.high().v() - part.low().v()) * k));
  }

  /** Match lines where a part meets its neighbours. */
  private void matchLines(PlanView view, Svg svg) {
    PaperBox w = view.window();
    for (int i = 0; i < parts.size(); i++) {
      PlanView other = parts.get(i);
      int right = other.column() - view.column();
      int up = other.row() - view.row();
      if (Math.abs(right) + Math.abs(up) != 1) {
        continue;
      }
      double x = right > 0 ? w.right() : w.left();
      double y = up > 0 ? w.top() : w.bottom();
      Vec2 a = right == 0 ? new Vec2(w.left() - 5, y) : new Vec2(x, w.top() - 5);
      Vec2 b = right == 0 ? new Vec2(w.right() + 5, y) : new Vec2(x, w.bottom() + 5);
      svg.line("match", a, b);
      Vec2 out = new Vec2(right * 8.0, -up * 8.0);
      svg.turned("match-word halo", a.towards(b, 0.5).plus(out).plus(new Vec2(0, right == 0 ? 1 : 0)), right == 0 ? 0 : 90,
          isInSet ? "match line, see part " + (i + 1) : "match line, see sheet " + (i + 2));
    }
  }
}
