package org.seamledger.export.report;

import java.util.List;
import org.seamledger.detail.Decided;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.wording.OneLine;
import org.seamledger.export.wording.OverrideText;
import org.seamledger.takeoff.Takeoff;

/** The manual overrides, each with its reason. */
public final class OverridesSection {

  private static final String INDENT = "  ";

  private OverridesSection() {
  }

  public static void write(Takeoff takeoff, TextPage page) {
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
    return id + ": " + OverrideText.of(decided, junction) + ". Reason: " + OneLine.of(decided.reason());
  }
}
