package org.seamledger.finding;

/**
 * What somebody said about a finding.
 *
 * @param by who, or the empty string
 * @param when a day or a time as {@link Acceptance} has it, or the empty string
 * @param text never blank
 */
public record Remark(String by, String when, String text) {

  /** @throws IllegalArgumentException where there is no text, or the time is none */
  public Remark {
    if (text.isBlank()) {
      throw new IllegalArgumentException("a remark has a text");
    }
    if (!when.isEmpty() && !Acceptance.isTime(when)) {
      throw new IllegalArgumentException("when something was said is a day or a time in ISO 8601, not " + when);
    }
  }
}
