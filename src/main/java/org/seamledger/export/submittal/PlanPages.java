package org.seamledger.export.submittal;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.export.plan.PlanSheets;
import org.seamledger.takeoff.Takeoff;

/** The roof plan on as many sheets as it takes. */
final class PlanPages implements SubmittalPages {

  private final SubmittalContent content;
  private final List<String> sheets;

  PlanPages(SubmittalContent content) {
    this.content = content;
    this.sheets = PlanSheets.inSet(content.takeoff(), content.setup().sheets());
  }

  @Override
  public OutlineEntry outline() {
    List<OutlineEntry> below = new ArrayList<>();
    for (int i = 1; i < sheets.size(); i++) {
      below.add(new OutlineEntry("Sheet " + (i + 1) + " of the plan", place(i)));
    }
    return new OutlineEntry(PageSet.KEY_PLAN.title(), place(0), below);
  }

  private static String place(int index) {
    return SubmittalContent.place(PageSet.KEY_PLAN) + (index == 0 ? "" : "-" + (index + 1));
  }

  @Override
  public void write(FoWriter fo) {
    Takeoff takeoff = content.takeoff();
    String all = "Roof plan to scale: " + takeoff.faces().size() + " faces with slope and fall, seams, and " + takeoff.junctions().size()
        + " junction lines. The schedule of junctions has each of them in words.";
    for (int i = 0; i < sheets.size(); i++) {
      content.frame().drawing(sheets.get(i), (i == 0 ? "" : "Sheet " + (i + 1) + ". ") + all, place(i), fo);
    }
  }
}
