package org.seamledger.detail;

import java.util.List;
import java.util.Locale;

/**
 * Ids for parts, seals and fastenings of files that give none: such files were written when drawings found their places by these words.
 * Each list pairs words that a label may have with the id that they stand for; the first that occur in it win.
 */
final class DerivedIds {

  private static final List<String> PARTS = List.of(
      "vented closure", "vented-closure", "closure", "closure", "counterflashing", "counterflashing",
      "receiver bar", "receiver-bar", "cricket", "cricket", "fascia cleat", "fascia-cleat", "eave cleat", "eave-cleat",
      "cleat", "cleat", "plate", "plate", "cap", "cap", "lining", "lining", "gutter", "lining", "pan", "pan", "apron", "flashing",
      "flashing", "flashing", "trim", "trim", "boot", "boot", "clamp", "clamp", "Z", "z");
  private static final List<String> SEALS = List.of(
      "at the closure's", "closure-beads", "closure's bottom", "closure-foot", "closure's foot", "closure-foot",
      "closure's top", "closure-top",
      "under the cleat", "cleat", "in the ends of the", "seam-ends", "seam terminations", "seam-ends", "in the reglet", "reglet",
      "receiver bar", "receiver-bar",
      "sealant lip", "bar-lip", "bar's sealant edge", "bar-lip", "between trim and panel", "trim", "under the Z", "z",
      "base flashing's flange", "flange",
      "boot's flange", "boot", "under the plate", "plate", "flange, both edges", "flange", "behind the back pan", "pan-back",
      "above the clamp", "clamp", "under the cap", "cap", "laps", "laps");
  private static final List<String> FASTENINGS = List.of(
      "closure foot", "closure", "cap edge", "cover", "flashing edge", "cover", "apron edge", "cover", "eave cleat", "eave-cleat",
      "fascia cleat", "fascia-cleat", "cleat", "cleat", "base flashing", "flange", "curb flange", "curb-flange",
      "boot flange", "boot", "flange", "flange", "gable trim", "trim", "eave", "eave", "plate", "plate",
      "receiver bar", "receiver-bar", "reglet wedges", "wedges", "Z", "z");

  private DerivedIds() {
  }

  static String part(String label) {
    return first(PARTS, label);
  }

  static String seal(String place) {
    return first(SEALS, place);
  }

  static String fastening(String place) {
    return first(FASTENINGS, place);
  }

  /** What a line of fasteners joins, by its id, in a file that doesn't say. */
  static Joins joins(String fastening) {
    return switch (fastening) {
      case "cover" -> Joins.METAL_METAL;
      case "cleat", "eave-cleat", "fascia-cleat", "trim" -> Joins.METAL_DECK;
      case "curb-flange", "receiver-bar", "wedges" -> Joins.METAL_WALL;
      default -> Joins.PANEL_METAL;
    };
  }

  /** Whether panels are fixed by a line of fasteners with this id, in a file that doesn't say. */
  static boolean fixes(String fastening) {
    return fastening.equals("closure") || fastening.equals("eave");
  }

  private static String first(List<String> pairs, String label) {
    for (int i = 0; i < pairs.size(); i += 2) {
      if (label.contains(pairs.get(i))) {
        return pairs.get(i + 1);
      }
    }
    return plain(label);
  }

  /** The label's own words, joined by dashes. */
  static String plain(String label) {
    return label.toLowerCase(Locale.ROOT).replace("'", "").replaceAll("[^\\p{L}\\p{N}]+", "-").replaceAll("^-|-$", "");
  }
}
