package org.seamledger.export.submittal;

/** Headings as they are tagged and set; each may be a place that something leads to. */
final class FoHeadings {

  private FoHeadings() {
  }

  /** The title of a part. */
  static void title(FoWriter fo, String id, String words) {
    fo.block(words, "id", id, "role", "H1", "font-size", "6mm", "font-weight", "bold", "line-height", "1.2", "space-after", "3mm",
        "keep-with-next.within-column", "always");
  }

  static void head(FoWriter fo, String id, String words) {
    fo.block(words, "id", id, "role", "H2", "font-size", "1.15em", "font-weight", "bold", "space-before", "3mm", "space-after", "1mm",
        "keep-with-next.within-column", "always");
  }

  static void paragraph(FoWriter fo, String words) {
    fo.block(words, "space-after", "1.2mm", "widows", "2", "orphans", "2");
  }

  /** A word in heavy letters and what belongs to it. */
  static void labelled(FoWriter fo, String label, String words) {
    fo.open("block", "space-after", "1mm");
    fo.words("inline", label + " ", "font-weight", "bold").text(words);
    fo.close("block");
  }
}
