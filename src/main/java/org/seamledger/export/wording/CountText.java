package org.seamledger.export.wording;

/** A number of things with its noun. */
public final class CountText {

  private CountText() {
  }

  /** "1 line", "2 lines". */
  public static String of(long n, String noun) {
    return n + " " + noun + (n == 1 ? "" : "s");
  }
}
