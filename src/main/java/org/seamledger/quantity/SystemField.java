package org.seamledger.quantity;

import java.util.List;

/**
 * A value of the roof system, as a form shows it.
 *
 * @param path such as {@code panel.coverage}, as the system's file has it
 * @param type what stands there
 * @param usual its text in the built-in system
 * @param what of a measure: a length, a share …; empty for others
 * @param min least value of a measure or count, as text with its unit; empty where nothing bounds it
 * @param max greatest value, likewise
 * @param choices words to choose from; empty for others
 * @param meaning what it is
 * @param source where its default comes from, or who states it
 */
public record SystemField(String path, Type type, String usual, String what, String min, String max, List<String> choices, String meaning,
    String source) {

  /** Types of values. */
  public enum Type {
    MEASURE, CHOICE, SWITCH, COUNT, TEXT;

    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  public SystemField {
    choices = List.copyOf(choices);
  }
}
