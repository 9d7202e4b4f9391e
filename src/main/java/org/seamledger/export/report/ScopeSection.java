package org.seamledger.export.report;

import org.seamledger.export.wording.ScopeText;

/** What every report says about its limits and about working on roofs. */
public final class ScopeSection {

  private ScopeSection() {
  }

  public static void write(TextPage page) {
    page.title("Scope and cautions");
    page.paragraph("  ", "  ", ScopeText.SCOPE.text());
    page.paragraph("  ", "  ", ScopeText.SAFETY.text());
  }
}
