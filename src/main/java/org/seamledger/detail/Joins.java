package org.seamledger.detail;

/** What a line of fasteners joins. Those of a panel with the deck are the panel's fixed line, and no others. */
public enum Joins {
  PANEL_METAL("panel-metal"), METAL_METAL("metal-metal"), METAL_DECK("metal-deck"), PANEL_DECK("panel-deck"), METAL_WALL("metal-wall"),
  CLIP_DECK("clip-deck");

  private final String word;

  Joins(String word) {
    this.word = word;
  }

  /** The word used in results and in {@code shapes/details-content.ttl}. */
  public String word() {
    return word;
  }
}
