package org.seamledger.export.wording;

import org.seamledger.detail.Decided;
import org.seamledger.detail.DetailedJunction;

/** How outputs name a manual override. */
public final class OverrideText {

  /** How a junction shows that its kind or detail is a manual override. */
  public static final String MARK = "manual override";

  private OverrideText() {
  }

  /** What was chosen, and the detail that follows from it where only the kind was. */
  public static String of(Decided decided, DetailedJunction junction) {
    String follows = decided.detail().isEmpty() ? ", with detail " + junction.detail().id() + " by the rules" : "";
    return decided.words() + follows;
  }
}
