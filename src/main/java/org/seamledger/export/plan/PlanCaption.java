package org.seamledger.export.plan;

import java.util.List;
import java.util.stream.Collectors;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.export.sheet.Palette;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.takeoff.Takeoff;

/** Legend and north beside a plan. Millimetres on paper. */
final class PlanCaption {

  private PlanCaption() {
  }

  /** Draws the legend from the top of a column; gives y below it. */
  static double legend(Takeoff takeoff, SheetSetup setup, boolean hasOverrides, PaperBox column, Svg svg) {
    double left = column.left();
    int columns = (int) ((column.width() - 20) / 1.45);
    svg.text("head", new Vec2(left, column.top() + 4), "Lines by what seals them");
    double y = column.top() + 9;
    for (Palette.Entry entry : Palette.seals()) {
      List<DetailedJunction> lines = takeoff.lines().stream().filter(j -> SealClass.of(j).equals(entry.id())).toList();
      if (lines.isEmpty()) {
        continue;
      }
      double length = lines.stream().mapToDouble(j -> j.junction().junction().lengthM()).sum();
      svg.line("seal-" + entry.id(), new Vec2(left, y - 0.8), new Vec2(left + 16, y - 0.8));
      svg.text("small", new Vec2(left + 19, y), entry.text() + ", " + setup.units().length(length));
      y = Sheet.paragraph(svg, "fine", new Vec2(left + 19, y + 3), 2.9, columns, labels(lines)) + 1.6;
    }
    svg.line("seam", new Vec2(left, y - 0.8), new Vec2(left + 16, y - 0.8));
    svg.text("small", new Vec2(left + 19, y), "seam, spacing " + setup.units().stated(takeoff.system().panel().coverage()));
    y += 4;
    svg.line("fall", new Vec2(left, y - 0.8), new Vec2(left + 13, y - 0.8));
    svg.polygon("fall-head", List.of(new Vec2(left + 16, y - 0.8), new Vec2(left + 13, y - 1.7), new Vec2(left + 13, y + 0.1)));
    svg.text("small", new Vec2(left + 19, y), "slope of the face, downwards");
    y += 4;
    svg.empty("path", "class", "water", "stroke-width", "0.6", "d",
        "M" + Svg.points(List.of(new Vec2(left, y - 0.8), new Vec2(left + 16, y - 0.8))));
    svg.text("small", new Vec2(left + 19, y), "where its water goes, wider for more");
    y = north(svg, new Vec2(left + 5, y + 13), y);
    return Sheet.paragraph(svg, "fine", new Vec2(left, y + 2), 2.9, (int) (column.width() / 1.4), "Lengths are true lengths in space;"
        + " the plan shows them projected. Numbers stand for short lines and are listed with the field of the sheet. An id works by its"
        + " beginning: section MODEL JUNCTION." + (hasOverrides ? " A star after an id: manual override of kind or detail." : "")) + 2;
  }

  /** What the kinds of lines are called, in their order. */
  private static String labels(List<DetailedJunction> lines) {
    return lines.stream().map(j -> j.junction().type()).distinct().sorted().map(Kind::label).collect(Collectors.joining("; "));
  }

  private static double north(Svg svg, Vec2 at, double y) {
    svg.polygon("bar-full", List.of(at.plus(new Vec2(0, -10)), at.plus(new Vec2(-3, 3)), at));
    svg.polygon("bar", List.of(at.plus(new Vec2(0, -10)), at.plus(new Vec2(3, 3)), at));
    svg.text("head", at.plus(new Vec2(7, -4)), "N");
    svg.text("fine", at.plus(new Vec2(12, -4)), "model north, +Y of the model");
    svg.text("fine", at.plus(new Vec2(12, -1)), "(not surveyed north)");
    return y + 18;
  }
}
