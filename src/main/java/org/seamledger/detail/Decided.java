package org.seamledger.detail;

import java.util.ArrayList;
import java.util.List;

/**
 * A decision in force at a junction, beside what the rules say.
 *
 * @param kind chosen by hand, or empty where the rules' kind stands
 * @param detail id of the detail chosen by hand, or empty where the rules chose it
 * @param reason for people
 * @param kindByRules what the rules alone say
 * @param detailByRules id of the detail that the rules alone choose, {@code none} where they choose none
 */
public record Decided(String kind, String detail, String reason, String kindByRules, String detailByRules) {

  /** Such as {@code kind ridge instead of hip, detail ridge-vented instead of hip}. */
  public String words() {
    List<String> parts = new ArrayList<>();
    if (!kind.isEmpty()) {
      parts.add("kind " + instead(kind, kindByRules));
    }
    if (!detail.isEmpty()) {
      parts.add("detail " + instead(detail, detailByRules));
    }
    return String.join(", ", parts);
  }

  private static String instead(String chosen, String byRules) {
    return chosen.equals(byRules) ? chosen + ", as the rules say" : chosen + " instead of " + byRules;
  }
}
