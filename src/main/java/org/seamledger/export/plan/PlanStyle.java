package org.seamledger.export.plan;

import java.util.List;
import org.seamledger.detail.Kind;
import org.seamledger.export.sheet.Svg;

/**
 * How lines of one family of kinds look: each differs in dashes and width, so that colour is never needed to tell them apart.
 *
 * @param dashes millimetres on paper, empty for a solid line
 */
public record PlanStyle(Kind.Line line, String colour, double width, String dashes) {

  /** In the order of the legend; colours of a palette that colour-blind people tell apart (Okabe and Ito, darkened for white paper). */
  public static final List<PlanStyle> ALL = List.of(
      new PlanStyle(Kind.Line.RIDGE, "#a8420a", 1.0, ""),
      new PlanStyle(Kind.Line.VALLEY, "#0b5c93", 1.2, "5 1.5"),
      new PlanStyle(Kind.Line.BREAK, "#7a3b78", 0.8, "6 1.2 1.2 1.2"),
      new PlanStyle(Kind.Line.EAVE, "#056b4f", 0.7, ""),
      new PlanStyle(Kind.Line.EDGE, "#3f4a54", 0.45, "3 1"),
      new PlanStyle(Kind.Line.WALL, "#1b2530", 1.6, "2.2 0.9"),
      new PlanStyle(Kind.Line.CURB, "#8a6400", 0.7, "1.2 0.7"),
      new PlanStyle(Kind.Line.OTHER, "#111111", 1.2, "0.4 1.2"));

  /** For the style sheet. */
  public String word() {
    return line.word();
  }

  public String css() {
    return "." + word() + " { fill: none; stroke: " + colour + "; stroke-width: " + Svg.number(width) + "; stroke-linejoin: round;"
        + (dashes.isEmpty() ? "" : " stroke-dasharray: " + dashes + ";") + " }\n";
  }
}
