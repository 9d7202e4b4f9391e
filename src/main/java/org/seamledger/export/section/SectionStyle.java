package org.seamledger.export.section;

import org.seamledger.export.sheet.Svg;

/** How a section looks: line widths, colours and hatches, so that a print in black and white still tells materials apart. */
public final class SectionStyle {

  /** The style sheet of a section. */
  public static final String STYLE = """
      .metal { fill: none; stroke: #14202b; stroke-width: 0.75; stroke-linejoin: round; stroke-linecap: round; }
      .vented { stroke-dasharray: 1.6 1.3; }
      .panel { fill: none; stroke: #2f5d86; stroke-width: 0.55; stroke-linejoin: round; }
      .seam { fill: none; stroke: #2f5d86; stroke-width: 0.3; stroke-dasharray: 2.4 1.2; }
      .underlayment { fill: none; stroke: #7a4a9a; stroke-width: 0.3; stroke-dasharray: 3 0.8; }
      .clip { fill: none; stroke: #2f5d86; stroke-width: 0.4; stroke-dasharray: 0.8 0.6; }
      .beyond { stroke-width: 0.4; stroke-dasharray: 2 1; }
      .deck { fill: url(#ground); stroke: #9a9182; stroke-width: 0.2; }
      .wall { fill: url(#masonry); stroke: none; }
      .furring { fill: url(#wood); stroke: #9a9182; stroke-width: 0.2; }
      .slot { fill: #ffffff; stroke: #6f6a60; stroke-width: 0.25; }
      .edge { stroke: #6f6a60; stroke-width: 0.35; fill: none; }
      .pipe { fill: #f1f3f5; fill-opacity: 0.85; stroke: #55606a; stroke-width: 0.4; }
      .axis { fill: none; stroke: #55606a; stroke-width: 0.18; stroke-dasharray: 5 1 1 1; }
      .break { fill: none; stroke: #55606a; stroke-width: 0.2; }
      .tape { fill: url(#tape); stroke: #8f3a08; stroke-width: 0.25; }
      .soft { fill: url(#soft); stroke: #05563f; stroke-width: 0.25; }
      .bead { fill: url(#bead); stroke: #3d2f86; stroke-width: 0.25; }
      .exposed { fill: none; stroke: #3d2f86; stroke-width: 0.35; stroke-dasharray: 0.9 0.7; }
      .shank { fill: none; stroke: #14202b; stroke-width: 0.5; }
      .screw-head { fill: #14202b; }
      .leader { fill: none; stroke: #55606a; stroke-width: 0.16; }
      .dot { fill: #55606a; }
      .dim { fill: none; stroke: #14202b; stroke-width: 0.16; }
      .dim-text { font-size: 2.5px; }
      .label { font-size: 2.8px; }
      .long { font-size: 4.2px; }
      .mark { fill: none; stroke: #8f3a08; stroke-width: 0.5; }
      .mark-text { font-size: 2.9px; font-weight: 600; fill: #8f3a08; }
      """;

  private SectionStyle() {
  }

  /** Adds the hatches that the style sheet names. */
  public static void hatches(Svg sheet) {
    sheet.open("defs");
    sheet.hatch("ground", 3, 45, "#cfc8ba", "#faf8f4", "M0 1.5H3");
    sheet.hatch("masonry", 4, -45, "#cdd2d6", "#fafbfb", "M0 1H4", "M0 2.2H4");
    sheet.hatch("wood", 2.4, 20, "#dccfb4", "#fdfaf2", "M0 1.2H2.4");
    sheet.hatch("tape", 0.9, 45, "#8f3a08", "#f6c9a4", "M0 0.45H0.9");
    sheet.hatch("soft", 0.9, 0, "#05563f", "#b5e3d2", "M0 0.45H0.9", "M0.45 0V0.9");
    sheet.hatch("bead", 0.7, 90, "#3d2f86", "#cfc8f2", "M0 0.35H0.7");
    sheet.close("defs");
  }
}
