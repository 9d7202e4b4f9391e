package org.seamledger.detail;

/**
 * Types of fasteners. Screws are at least No. 14 self-tapping or No. 12 self-drilling (UFGS 07412, metal roof panels); which head and point
 * a joint takes is common practice, no source.
 */
public enum FastenerType {
  /** Sheet to sheet, self-drilling, with a sealing washer. */
  STITCH_SCREW("stitch-screw", "stitch screw with a sealing washer"),
  /** Into the deck, with a sealing washer. */
  DECK_SCREW("deck-screw", "deck screw with a sealing washer"),
  /** Into the deck under other metal, its head flat. */
  PANCAKE_SCREW("pancake-screw", "pancake-head screw"),
  /** Into masonry or concrete. */
  WALL_ANCHOR("wall-anchor", "masonry anchor with a sealing washer"),
  /** Holds metal in a reglet: not a screw. */
  WEDGE("wedge", "wedge"),
  /** Sheet to the pan, closed at its end: a screw's point would bite into a solid deck, and hold the panel. */
  RIVET("rivet", "closed-end rivet");

  private final String word;
  private final String label;

  FastenerType(String word, String label) {
    this.word = word;
    this.label = label;
  }

  /** The word used in results and in {@code shapes/details-content.ttl}. */
  public String word() {
    return word;
  }

  /** For users. */
  public String label() {
    return label;
  }

  /** What a joint takes where a detail doesn't say. */
  static FastenerType of(Joins joins) {
    return switch (joins) {
      case PANEL_METAL -> RIVET;
      case METAL_METAL -> STITCH_SCREW;
      case METAL_DECK, CLIP_DECK -> PANCAKE_SCREW;
      case PANEL_DECK -> DECK_SCREW;
      case METAL_WALL -> WALL_ANCHOR;
    };
  }
}
