package org.seamledger.export;

import java.util.List;

/**
 * How lines of one family of kinds look: each differs in dashes and width, so that colour is never needed to tell them apart.
 *
 * @param word for the style sheet
 * @param dashes millimetres on paper, empty for a solid line
 */
record PlanStyle(String word, String title, List<String> kinds, String colour, double width, String dashes) {

  private static final PlanStyle OTHER = new PlanStyle("other", "unclassified, level edge", List.of(), "#111111", 1.2, "0.4 1.2");

  /** In the order of the legend; colours of a palette that colour-blind people tell apart (Okabe and Ito, darkened for white paper). */
  static final List<PlanStyle> ALL = List.of(
      new PlanStyle("ridge", "ridge, hip", List.of("ridge", "hip"), "#a8420a", 1.0, ""),
      new PlanStyle("valley", "valley", List.of("valley", "level-valley"), "#0b5c93", 1.2, "5 1.5"),
      new PlanStyle("break", "transition", List.of("transition-convex", "transition-concave"), "#7a3b78", 0.8, "6 1.2 1.2 1.2"),
      new PlanStyle("eave", "eave", List.of("eave"), "#056b4f", 0.7, ""),
      new PlanStyle("edge", "rake, high edge", List.of("rake", "high-edge"), "#3f4a54", 0.45, "3 1"),
      new PlanStyle("wall", "wall", List.of("headwall", "sidewall", "low-wall", "skew-wall"), "#1b2530", 1.6, "2.2 0.9"),
      new PlanStyle("curb", "curb, pipe", List.of("curb-upslope", "curb-side", "curb-downslope", "pipe"), "#8a6400", 0.7, "1.2 0.7"),
      OTHER);

  PlanStyle {
    kinds = List.copyOf(kinds);
  }

  static PlanStyle of(String kind) {
    return ALL.stream().filter(s -> s.kinds.contains(kind)).findFirst().orElse(OTHER);
  }

  String css() {
    return "." + word + " { fill: none; stroke: " + colour + "; stroke-width: " + Svg.number(width) + "; stroke-linejoin: round;"
        + (dashes.isEmpty() ? "" : " stroke-dasharray: " + dashes + ";") + " }\n";
  }
}
