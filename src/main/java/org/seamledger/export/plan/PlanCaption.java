package org.seamledger.export.plan;

import java.util.List;
import java.util.stream.Collectors;
import org.seamledger.detail.Kind;
import org.seamledger.detail.KindedJunction;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.wording.ScopeText;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.takeoff.Takeoff;

/** What stands around a plan: legend, north, scale, lines without room for words, scope. Millimetres on paper. */
public final class PlanCaption {

  private static final double LEFT = 14;
  private static final double TOP = 28;
  private static final double LEGEND = 334;
  private static final double TABLE = 246;
  private static final double PITCH = 3.6;

  private PlanCaption() {
  }

  /** Height of a sheet that lists as many lines below its plan, millimetres. */
  public static double height(int unlabelled) {
    return Math.max(Sheet.HEIGHT, TABLE + 8 + Math.ceil(unlabelled / 4.0) * PITCH + 22);
  }

  /**
   * The caption of a plan at scale 1:{@code denominator} on a sheet of a height in millimetres.
   *
   * @param unlabelled what found no room for its words
   */
  public static Svg of(Takeoff takeoff, List<String> unlabelled, double denominator, double height) {
    Svg svg = new Svg();
    legend(takeoff, svg);
    north(svg, new Vec2(LEGEND + 8, TOP + 132));
    Sheet.scaleBars(svg, new Vec2(LEGEND, TOP + 160), denominator);
    svg.line("rule", new Vec2(LEFT, TABLE - 7), new Vec2(Sheet.WIDTH - LEFT, TABLE - 7));
    if (!unlabelled.isEmpty()) {
      svg.text("head", new Vec2(LEFT, TABLE - 2), "Without room for words on the plan at this scale");
      int rows = (int) Math.ceil(unlabelled.size() / 4.0);
      for (int i = 0; i < unlabelled.size(); i++) {
        svg.text("small", new Vec2(LEFT + i / rows * 98.0, TABLE + 2.5 + i % rows * PITCH), unlabelled.get(i));
      }
    }
    Sheet.paragraph(svg, "fine", new Vec2(LEFT, height - 15), 3.2, 250, ScopeText.SCOPE.text());
    return svg;
  }

  private static void legend(Takeoff takeoff, Svg svg) {
    svg.text("head", new Vec2(LEGEND, TOP + 4), "Junction lines");
    double y = TOP + 10;
    for (PlanStyle style : PlanStyle.ALL) {
      List<KindedJunction> lines = takeoff.junctions().stream().filter(j -> j.type().line() == style.line()).toList();
      if (lines.isEmpty()) {
        continue;
      }
      double length = lines.stream().mapToDouble(j -> j.junction().lengthM()).sum();
      svg.line(style.word(), new Vec2(LEGEND, y - 1), new Vec2(LEGEND + 20, y - 1));
      double below = Sheet.paragraph(svg, "", new Vec2(LEGEND + 23, y), 3.4, 34, labels(lines));
      svg.text("fine", new Vec2(LEGEND + 23, below), MeasureFormat.formatBoth(length));
      y = below + 5.6;
    }
    svg.line("seam", new Vec2(LEGEND, y - 1), new Vec2(LEGEND + 20, y - 1));
    svg.text("", new Vec2(LEGEND + 23, y), "seam, spacing " + takeoff.system().panel().coverage());
    svg.line("fall", new Vec2(LEGEND, y + 5), new Vec2(LEGEND + 16, y + 5));
    svg.polygon("fall-head", List.of(new Vec2(LEGEND + 19, y + 5), new Vec2(LEGEND + 16, y + 4), new Vec2(LEGEND + 16, y + 6)));
    svg.text("", new Vec2(LEGEND + 23, y + 6), "slope of the face, downwards");
    Sheet.paragraph(svg, "fine", new Vec2(LEGEND, y + 13), 3.2, 54, "Lengths are true lengths in space; the plan shows them projected."
        + " A junction's id works by its beginning: section MODEL JUNCTION."
        + (takeoff.decided().isEmpty() ? "" : " A star after an id: manual override of kind or detail."));
  }

  /** What the kinds of lines are called, in their order. */
  private static String labels(List<KindedJunction> lines) {
    return lines.stream().map(KindedJunction::type).distinct().sorted().map(Kind::label).collect(Collectors.joining("; "));
  }

  private static void north(Svg svg, Vec2 at) {
    svg.polygon("bar-full", List.of(at.plus(new Vec2(0, -11)), at.plus(new Vec2(-3.5, 3)), at));
    svg.polygon("bar", List.of(at.plus(new Vec2(0, -11)), at.plus(new Vec2(3.5, 3)), at));
    svg.text("head", at.plus(new Vec2(7, -5)), "N");
    svg.text("fine", at.plus(new Vec2(7, -1)), "model north, +Y of the model");
    svg.text("fine", at.plus(new Vec2(7, 2.4)), "(not surveyed north)");
  }
}
