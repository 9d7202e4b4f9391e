package org.seamledger.detail;

/** The one line along which a panel can't move, by the words of {@code shapes/fixity.ttl}. */
public enum FixedLine {
  LOW_END("low-end"), HIGH_END("high-end"), CLIP("clip"),
  /** The rules give it no line, or more than one: always with a finding. */
  NONE("none");

  private final String word;

  FixedLine(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }
}
