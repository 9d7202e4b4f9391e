package org.seamledger.export;

import java.util.List;
import org.seamledger.detail.Decided;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.takeoff.Takeoff;

/** What people chose in place of the rules, for people, each with its reason. */
final class HandSection {

  /** How a junction shows that somebody chose its kind or detail. */
  static final String MARK = "manual override";
  private static final String INDENT = "  ";

  private HandSection() {
  }

  static void write(Takeoff takeoff, TextPage page) {
    List<DetailedJunction> decided = takeoff.decided();
    if (!decided.isEmpty()) {
      page.title("Manual overrides");
      decided.forEach(j -> one(j, j.decided().orElseThrow(), page));
    }
  }

  private static void one(DetailedJunction junction, Decided decided, TextPage page) {
    page.paragraph(INDENT, INDENT + INDENT, sentence(junction.junction().junction().id(), decided, junction));
  }

  private static String sentence(String id, Decided decided, DetailedJunction junction) {
    return id + ": " + words(decided, junction) + ". Reason: " + OneLine.of(decided.reason());
  }

  /** What was chosen, and the detail that follows from it where only the kind was. */
  static String words(Decided decided, DetailedJunction junction) {
    String follows = decided.detail().isEmpty() ? ", with detail " + junction.detail().id() + " by the rules" : "";
    return decided.words() + follows;
  }
}
