package org.seamledger.export.node;

/** How nodes look; metal, tape and sealants have the colours of sections. */
public final class NodeStyle {

  /** The style sheet of a node's drawing. */
  public static final String STYLE = """
      .ground { fill: #faf8f4; stroke: #cfc8ba; stroke-width: 0.25; }
      .wall-face { fill: #dfe3e6; fill-opacity: 0.6; stroke: #9aa3aa; stroke-width: 0.2; }
      .arm { stroke: #55606a; stroke-width: 0.5; stroke-dasharray: 4 1; }
      .ridge, .hip { stroke: #a8420a; }
      .valley, .level-valley { stroke: #0b5c93; }
      .eave { stroke: #056b4f; stroke-dasharray: none; }
      .wall { stroke: #1b2530; stroke-width: 0.9; }
      .curb { stroke: #8a6400; }
      .arm-name { font-size: 2.6px; fill: #44525f; }
      .fall { stroke: #2f5d86; stroke-width: 0.25; }
      .fall-head { fill: #2f5d86; }
      .piece { fill: #b9c4cd; fill-opacity: 0.55; stroke: #14202b; stroke-width: 0.4; stroke-linejoin: round; }
      .tape-line { fill: none; stroke: #8f3a08; stroke-width: 1.1; }
      .bead-line { fill: none; stroke: #3d2f86; stroke-width: 0.8; stroke-dasharray: 0.8 0.6; }
      .soft-line { fill: none; stroke: #05563f; stroke-width: 0.8; stroke-dasharray: 2 0.6; }
      .fastener { fill: #ffffff; stroke: #14202b; stroke-width: 0.35; }
      .leader { fill: none; stroke: #55606a; stroke-width: 0.16; }
      .dot { fill: #55606a; }
      .balloon { fill: #ffffff; stroke: #14202b; stroke-width: 0.35; }
      .balloon-text { font-size: 3.2px; font-weight: 600; }
      .long { font-size: 4.2px; }
      """;

  private NodeStyle() {
  }
}
