package org.seamledger.export.submittal;

import java.util.List;
import org.seamledger.export.report.FindingsSection;
import org.seamledger.export.wording.CountText;
import org.seamledger.export.wording.FindingAdvice;
import org.seamledger.export.wording.FindingGroups;
import org.seamledger.finding.Finding;
import org.seamledger.takeoff.Takeoff;

/** All findings: the worst first, those of one code together with why they matter and what to do. */
final class FindingPages implements SubmittalPages {

  private final SubmittalContent content;
  private final Takeoff takeoff;
  private final List<List<Finding>> groups;

  FindingPages(SubmittalContent content) {
    this.content = content;
    this.takeoff = content.takeoff();
    this.groups = FindingGroups.of(takeoff.findings());
  }

  @Override
  public OutlineEntry outline() {
    return new OutlineEntry(PageSet.FINDINGS.title(), SubmittalContent.place(PageSet.FINDINGS));
  }

  @Override
  public void write(FoWriter fo) {
    content.frame().text(PageSet.FINDINGS.title(), content.frame().columns(), () -> begin(fo), fo);
  }

  private void begin(FoWriter fo) {
    FoHeadings.title(fo, SubmittalContent.place(PageSet.FINDINGS), PageSet.FINDINGS.title());
    FoHeadings.paragraph(fo, takeoff.findings().isEmpty() ? "None." : FindingsSection.counts(takeoff.findings()) + ".");
    java.util.Set<String> placed = new java.util.HashSet<>();
    for (List<Finding> group : groups) {
      Finding first = group.get(0);
      String place = SubmittalContent.findingPlace(first.code()) + (placed.add(first.code()) ? "" : "-" + first.severity().word());
      FoHeadings.head(fo, place, FindingsSection.noun(first.severity()) + ": " + first.code()
          + (group.size() > 1 ? ", " + CountText.of(group.size(), "time") : ""));
      advice("Why", FindingAdvice.reason(takeoff, first.code()), fo);
      advice("What to do", FindingAdvice.action(takeoff, first.code()), fo);
      group.forEach(f -> finding(f, fo));
    }
  }

  private static void advice(String label, String words, FoWriter fo) {
    if (!words.isBlank()) {
      FoHeadings.labelled(fo, label, words);
    }
  }

  private void finding(Finding finding, FoWriter fo) {
    fo.open("block", "space-after", "0.8mm", "start-indent", "3mm", "text-indent", "-2mm").text("– " + finding.message() + " ");
    if (!finding.junction().isEmpty()) {
      content.place(finding.junction(), fo);
    }
    fo.close("block");
    finding.acceptance()
        .ifPresent(a -> note("Accepted by " + a.by() + (a.when().isEmpty() ? "" : " on " + a.when()) + ": " + a.reason(), fo));
    finding.remarks().forEach(r -> note("Remark by " + (r.by().isBlank() ? "another user" : r.by())
        + (r.when().isEmpty() ? "" : " on " + r.when()) + ": " + r.text(), fo));
  }

  private static void note(String words, FoWriter fo) {
    fo.block(words, "space-after", "0.8mm", "start-indent", "6mm", "color", "#44525f");
  }
}
