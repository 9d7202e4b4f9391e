package org.seamledger.export.submittal;

import java.util.List;

/** The contents with the numbers of the sheets. */
final class ContentsPages implements SubmittalPages {

  private final SubmittalContent content;
  private final List<SubmittalPages> parts;

  /** @param parts of the whole document; those that come later are in the list when this is written */
  ContentsPages(SubmittalContent content, List<SubmittalPages> parts) {
    this.content = content;
    this.parts = parts;
  }

  @Override
  public OutlineEntry outline() {
    return new OutlineEntry(PageSet.CONTENTS.title(), SubmittalContent.place(PageSet.CONTENTS));
  }

  @Override
  public void write(FoWriter fo) {
    content.frame().text(PageSet.CONTENTS.title(), Math.min(2, content.frame().columns()), () -> page(fo), fo);
  }

  private void page(FoWriter fo) {
    FoHeadings.title(fo, SubmittalContent.place(PageSet.CONTENTS), PageSet.CONTENTS.title());
    fo.open("block", "role", "TOC");
    parts.stream().filter(p -> p != this).forEach(p -> entry(p.outline(), 0, fo));
    fo.close("block");
  }

  private static void entry(OutlineEntry entry, int depth, FoWriter fo) {
    fo.open("block", "text-align-last", "justify", "start-indent", depth * 5 + "mm", "font-weight", depth == 0 ? "bold" : "normal",
        "space-before", depth == 0 ? "1.6mm" : "0mm", "role", "TOCI");
    fo.open("basic-link", "internal-destination", entry.id(), "fox:alt-text", "To " + entry.title());
    fo.text(entry.title()).open("leader", "leader-pattern", "dots").close("leader").empty("page-number-citation", "ref-id", entry.id());
    fo.close("basic-link").close("block");
    entry.below().forEach(e -> entry(e, depth + 1, fo));
  }
}
