package org.seamledger.finding;

/** SHACL's severities, ordered from the mildest. */
public enum Severity {
  INFO("info"), WARNING("warning"), VIOLATION("violation");

  private final String word;

  Severity(String word) {
    this.word = word;
  }

  /** The word used in results: {@code info}, {@code warning} or {@code violation}. */
  public String word() {
    return word;
  }

  public boolean atLeast(Severity limit) {
    return compareTo(limit) >= 0;
  }
}
