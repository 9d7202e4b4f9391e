package org.seamledger.export.node;

import org.seamledger.detail.Seal;
import org.seamledger.export.sheet.Palette;
import org.seamledger.export.sheet.Svg;

/** How nodes look; metal, tape and sealants have the colours of sections. */
final class NodeStyle {

  private static final String STYLE = """
      .ground { fill: #faf8f4; stroke: #cfc8ba; stroke-width: 0.25; }
      .wall-face { fill: #dfe3e6; fill-opacity: 0.6; stroke: #9aa3aa; stroke-width: 0.2; }
      .arm { stroke: #55606a; stroke-width: 0.5; stroke-dasharray: 4 1; }
      .ridge, .hip { stroke: #a8420a; }
      .valley, .level-valley { stroke: #0b5c93; }
      .eave { stroke: #056b4f; stroke-dasharray: none; }
      .wall { stroke: #1b2530; stroke-width: 0.9; }
      .curb { stroke: #8a6400; }
      .arm-name { font-size: 2.6px; fill: #44525f; }
      .fall { stroke: #2f5d86; stroke-width: 0.35; }
      .fall-head { fill: #2f5d86; }
      .piece { fill: #dde3e8; stroke: #14202b; stroke-width: 0.4; stroke-linejoin: round; }
      .stands { fill: #b7c2cb; }
      .hem { stroke: #14202b; stroke-width: 0.2; stroke-dasharray: 1.2 0.6; }
      .rise { stroke: #55606a; stroke-width: 0.18; stroke-dasharray: 0.5 0.9; }
      .fastener { fill: #ffffff; stroke: #14202b; stroke-width: 0.35; }
      .leader { fill: none; stroke: #55606a; stroke-width: 0.16; }
      .dot { fill: #55606a; }
      .balloon { fill: #ffffff; stroke: #14202b; stroke-width: 0.35; }
      .balloon-text { font-size: 3.2px; font-weight: 600; }
      .long { font-size: 4.2px; }
      .dim { fill: none; stroke: #14202b; stroke-width: 0.16; }
      .dim-text { font-size: 2.5px; }
      .enlarge { fill: #ffffff; stroke: #14202b; stroke-width: 0.3; }
      .metal { stroke: #14202b; stroke-width: 0.75; }
      .panel { stroke: #2f5d86; stroke-width: 0.55; }
      .shank { stroke: #14202b; stroke-width: 0.5; }
      .screw-head { fill: #14202b; }
      """;

  private NodeStyle() {
  }

  /** The style sheet of a node's drawing. */
  static String style() {
    return STYLE + line("tape-line", "tape", "stroke-width: 1.1")
        + line("bead-line", "bead", "stroke-width: 0.8; stroke-dasharray: 0.8 0.6")
        + line("soft-line", "in-seam", "stroke-width: 0.8; stroke-dasharray: 2 0.6") + ".tape { fill: url(#tape); stroke: "
        + Palette.light("tape") + "; stroke-width: 0.25; }\n";
  }

  private static String line(String type, String seal, String more) {
    return "." + type + " { fill: none; stroke: " + Palette.light(seal) + "; " + more + "; }\n";
  }

  /** Adds the hatches that the style sheet names. */
  static void hatches(Svg svg) {
    svg.open("defs").hatch("tape", 0.9, 45, Palette.light("tape"), "#d5eeee", "M0 0.45H0.9").close("defs");
  }

  /** The type of a seal's line. */
  static String look(Seal.Form form) {
    return switch (form) {
      case TAPE -> "tape-line";
      case BEAD -> "bead-line";
      case IN_SEAM -> "soft-line";
    };
  }
}
