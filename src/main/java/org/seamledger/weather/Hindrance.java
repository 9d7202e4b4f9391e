package org.seamledger.weather;

/** Why something may not be sealed in an hour. */
public enum Hindrance {
  /** Air or humidity is not known. */
  UNKNOWN("unknown", "?", "no data"),
  /** It rains. */
  RAIN("rain", "R", "rain"),
  /** Metal is too near the dew point, or below it. */
  DEW("dew", "D", "metal too near the dew point"),
  /** Metal below what the data sheet allows. */
  COLD_METAL("cold-metal", "C", "metal too cold"),
  /** Air below what the data sheet allows. */
  COLD_AIR("cold-air", "C", "air too cold"),
  /** Metal above what the data sheet allows. */
  HOT_METAL("hot-metal", "H", "metal too hot"),
  /** Air above what the data sheet allows. */
  HOT_AIR("hot-air", "H", "air too hot"),
  /** Air more humid than the data sheet allows. */
  HUMID("humid", "W", "air too humid"),
  /** Rain comes before a skin has formed. */
  RAIN_SOON("rain-soon", "S", "rain before it has a skin");

  private final String word;
  private final String letter;
  private final String text;

  Hindrance(String word, String letter, String text) {
    this.word = word;
    this.letter = letter;
    this.text = text;
  }

  /** The name in results. */
  public String word() {
    return word;
  }

  /** A letter for pictures. */
  public String letter() {
    return letter;
  }

  /** In words. */
  public String text() {
    return text;
  }
}
