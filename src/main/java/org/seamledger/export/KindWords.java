package org.seamledger.export;

import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Kinds of junction in the order in which people read them, with what each is. A kind that an office adds comes after these. */
final class KindWords {

  private static final Map<String, String> MEANING = Map.ofEntries(
      Map.entry("ridge", "convex and level, both faces fall away"),
      Map.entry("hip", "convex and sloping"),
      Map.entry("valley", "concave and sloping"),
      Map.entry("level-valley", "concave and level, both faces drain into it"),
      Map.entry("transition-convex", "level break, the lower face is steeper"),
      Map.entry("transition-concave", "level break, the lower face is flatter"),
      Map.entry("eave", "free edge at the low end"),
      Map.entry("high-edge", "free edge at the top of a slope"),
      Map.entry("rake", "free edge along the fall"),
      Map.entry("headwall", "wall at the top of a slope"),
      Map.entry("sidewall", "wall along the fall"),
      Map.entry("low-wall", "wall at the low end, the face drains into it"),
      Map.entry("skew-wall", "wall oblique to the fall"),
      Map.entry("curb-upslope", "high side of a thing through the roof"),
      Map.entry("curb-side", "side of a thing through the roof"),
      Map.entry("curb-downslope", "low side of a thing through the roof"),
      Map.entry("pipe", "whole line round a round thing"),
      Map.entry("flat-edge", "edge of a level face, no place for standing seam"),
      Map.entry("unclassified", "no shape, or more than one, claims it"));

  private static final List<String> ORDER = List.of("ridge", "hip", "valley", "level-valley", "transition-convex",
      "transition-concave", "eave", "high-edge", "rake", "headwall", "sidewall", "low-wall", "skew-wall", "curb-upslope", "curb-side",
      "curb-downslope", "pipe", "flat-edge", "unclassified");

  /** Known kinds in their order, then others by name. */
  static final Comparator<String> READING_ORDER =
      Comparator.comparingInt(KindWords::place).thenComparing(Comparator.naturalOrder());

  private KindWords() {
  }

  /** What a kind is, in a few words; empty for a kind that an office added. */
  static String meaning(String kind) {
    return MEANING.getOrDefault(kind, "");
  }

  private static int place(String kind) {
    int place = ORDER.indexOf(kind);
    return place < 0 ? ORDER.size() : place;
  }
}
