package org.seamledger.export.report;

import java.util.List;
import org.seamledger.export.wording.OneLine;
import org.seamledger.quantity.Estimate;
import org.seamledger.quantity.Estimates;
import org.seamledger.takeoff.Takeoff;

/** The physics that a design should know, each figure with the equation and the inputs behind it. */
public final class EstimatesSection {

  private EstimatesSection() {
  }

  public static void write(Takeoff takeoff, TextPage page) {
    List<Estimate> estimates = Estimates.of(takeoff.faces(), takeoff.quantities());
    if (takeoff.faces().isEmpty() || estimates.isEmpty()) {
      return;
    }
    page.title("Water, movement and weather, as estimates");
    for (Estimate e : estimates) {
      page.paragraph("  - ", "    ", OneLine.of(e.name() + ": " + e.value()));
      page.paragraph("    by ", "      ", OneLine.of(e.basis()));
    }
  }
}
