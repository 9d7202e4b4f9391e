package org.seamledger.export.section;

import org.seamledger.export.sheet.Palette;
import org.seamledger.export.sheet.Svg;

/** How a section looks: line widths, colours and hatches, so that a print in black and white still tells materials apart. */
final class SectionStyle {

  private static final String STYLE = """
      .metal { fill: none; stroke: #14202b; stroke-width: 0.75; stroke-linejoin: round; stroke-linecap: round; }
      .lapping { fill: none; stroke: #14202b; stroke-width: 0.35; stroke-dasharray: 1.4 0.8; }
      .vented { stroke-dasharray: 1.6 1.3; }
      .panel { fill: none; stroke: #2f5d86; stroke-width: 0.55; stroke-linejoin: round; }
      .seam { fill: none; stroke: #2f5d86; stroke-width: 0.3; stroke-dasharray: 2.4 1.2; }
      .underlayment { fill: none; stroke: #7a4a9a; stroke-width: 0.3; stroke-dasharray: 3 0.8; }
      .clip { fill: none; stroke: #2f5d86; stroke-width: 0.4; stroke-dasharray: 0.8 0.6; }
      .deck { stroke: #9a9182; stroke-width: 0.2; }
      .deck-key { fill: url(#ground); stroke: #9a9182; stroke-width: 0.2; }
      .wall { fill: url(#masonry); stroke: none; }
      .furring { fill: url(#wood); stroke: #9a9182; stroke-width: 0.2; }
      .slot { fill: #ffffff; stroke: #6f6a60; stroke-width: 0.25; }
      .edge { stroke: #6f6a60; stroke-width: 0.35; fill: none; }
      .pipe { fill: #f1f3f5; fill-opacity: 0.85; stroke: #55606a; stroke-width: 0.4; }
      .axis { fill: none; stroke: #55606a; stroke-width: 0.18; stroke-dasharray: 5 1 1 1; }
      .break { fill: none; stroke: #55606a; stroke-width: 0.2; }
      .shank { fill: none; stroke: #14202b; stroke-width: 0.5; }
      .washer { fill: none; stroke: #14202b; stroke-width: 0.45; }
      .thread { fill: none; stroke: #14202b; stroke-width: 0.2; }
      .plug { fill: none; stroke: #14202b; stroke-width: 0.25; stroke-dasharray: 0.7 0.5; }
      .screw-head { fill: #14202b; }
      .leader { fill: none; stroke: #55606a; stroke-width: 0.16; }
      .dot { fill: #55606a; }
      .ring { fill: #ffffff; stroke: #1b2530; stroke-width: 0.25; }
      .number { font-size: 2.5px; }
      .list-number { font-size: 2.5px; font-weight: 600; }
      .wedge { fill: #6f7a83; stroke: #14202b; stroke-width: 0.25; }
      .enlarge { fill: none; stroke: #14202b; stroke-width: 0.3; }
      .dim { fill: none; stroke: #14202b; stroke-width: 0.16; }
      .dim-text { font-size: 2.5px; }
      .long { font-size: 3.9px; }
      .mark { fill: none; stroke: #8f3a08; stroke-width: 0.5; }
      .mark-text { font-size: 2.9px; font-weight: 600; fill: #8f3a08; }
      """;

  private SectionStyle() {
  }

  /** The style sheet of a section: seals in the colours that lines sealed so have everywhere. */
  static String style() {
    return STYLE + sealed("tape", "tape") + sealed("soft", "in-seam") + sealed("bead", "bead") + ".exposed { fill: none; stroke: "
        + Palette.light("exposed") + "; stroke-width: 0.45; stroke-dasharray: 0.9 0.7; }\n";
  }

  private static String sealed(String type, String seal) {
    return "." + type + " { fill: url(#" + type + "); stroke: " + Palette.light(seal) + "; stroke-width: 0.25; }\n";
  }

  /** Adds the hatches that the style sheet names. */
  static void hatches(Svg sheet) {
    sheet.open("defs");
    sheet.hatch("ground", 3, 45, "#cfc8ba", "#faf8f4", "M0 1.5H3");
    sheet.hatch("masonry", 4, -45, "#cdd2d6", "#fafbfb", "M0 1H4", "M0 2.2H4");
    sheet.hatch("wood", 2.4, 20, "#dccfb4", "#fdfaf2", "M0 1.2H2.4");
    sheet.hatch("tape", 0.9, 45, Palette.light("tape"), "#d5eeee", "M0 0.45H0.9");
    sheet.hatch("soft", 0.9, 0, Palette.light("in-seam"), "#d3e3cf", "M0 0.45H0.9", "M0.45 0V0.9");
    sheet.hatch("bead", 0.7, 90, Palette.light("bead"), "#e6d6ec", "M0 0.35H0.7");
    sheet.close("defs");
  }
}
