package org.seamledger.finding;

import java.util.Locale;

/** How far one word is from another, so that a message can name the word that was meant. */
public final class EditDistance {

  private EditDistance() {
  }

  /**
   * Letters to insert, remove or replace to make one word of the other, capitals and small letters being the same (V. I. Levenshtein,
   * "Binary codes capable of correcting deletions, insertions, and reversals", 1966).
   */
  public static int between(String one, String other) {
    String a = one.toLowerCase(Locale.ROOT);
    String b = other.toLowerCase(Locale.ROOT);
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      row[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(replaced, Math.min(row[j], row[j - 1]) + 1);
      }
    }
    return row[b.length()];
  }
}
