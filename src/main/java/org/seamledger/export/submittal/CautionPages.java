package org.seamledger.export.submittal;

import org.seamledger.detail.Detail;
import org.seamledger.detail.HoldPoint;
import org.seamledger.export.wording.ScopeText;

/** What keeps people safe, and what to look at before work is closed. */
final class CautionPages implements SubmittalPages {

  private static final String PLACE = SubmittalContent.place(PageSet.CAUTIONS);

  private final SubmittalContent content;

  CautionPages(SubmittalContent content) {
    this.content = content;
  }

  @Override
  public OutlineEntry outline() {
    return new OutlineEntry(PageSet.CAUTIONS.title(), PLACE);
  }

  @Override
  public void write(FoWriter fo) {
    content.frame().text(PageSet.CAUTIONS.title(), Math.min(2, content.frame().columns()), () -> pages(fo), fo);
  }

  private void pages(FoWriter fo) {
    FoHeadings.title(fo, PLACE, PageSet.CAUTIONS.title());
    for (String sentence : ScopeText.SAFETY.text().split("(?<=\\.) ")) {
      caution(sentence, fo);
    }
    FoHeadings.paragraph(fo, ScopeText.SCOPE.text());
    content.details().forEach((id, served) -> holdPoints(served.get(0).detail(), fo));
  }

  /** A sentence that nobody overlooks. */
  static void caution(String sentence, FoWriter fo) {
    fo.block(sentence, "font-size", "1.25em", "space-after", "1.6mm", "border-start-style", "solid", "border-start-width", "0.8mm",
        "border-start-color", "#c1121f", "padding-start", "2mm", "start-indent", "2.8mm");
  }

  private void holdPoints(Detail detail, FoWriter fo) {
    if (!detail.holdPoints().isEmpty()) {
      FoHeadings.head(fo, PLACE + "-" + detail.id(), detail.title());
      for (HoldPoint point : detail.holdPoints()) {
        fo.block("□ Before " + point.before() + ": " + point.check() + ".", "start-indent", "4mm", "text-indent", "-4mm", "space-after",
            "0.8mm");
      }
    }
  }
}
