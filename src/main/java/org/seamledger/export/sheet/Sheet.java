package org.seamledger.export.sheet;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.export.wording.OneLine;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.takeoff.Takeoff;

/**
 * What every drawing's sheet has: size, frame, title, scale bars, cautions. A3 across, in millimetres; printed at full size it is to scale.
 */
public final class Sheet {

  public static final double WIDTH = 420;
  public static final double HEIGHT = 297;
  static final double MARGIN = 10;

  private static final double FOOT = 0.3048;
  private static final double INCH = 0.0254;

  private static final String STYLE = """
      text { font-family: "DejaVu Sans", "Liberation Sans", Arial, sans-serif; font-size: 2.6px; fill: #1b2530; }
      .title { font-size: 5.4px; font-weight: 600; }
      .subtitle { font-size: 3.3px; fill: #44525f; }
      .head { font-size: 2.9px; font-weight: 600; }
      .small { font-size: 2.3px; }
      .fine { font-size: 2.25px; fill: #44525f; }
      .paper { fill: #ffffff; }
      .frame { fill: none; stroke: #1b2530; stroke-width: 0.35; }
      .rule { stroke: #8a949d; stroke-width: 0.2; fill: none; }
      .bar { fill: none; stroke: #1b2530; stroke-width: 0.25; }
      .bar-full { fill: #1b2530; stroke: #1b2530; stroke-width: 0.25; }
      .halo { paint-order: stroke; stroke: #ffffff; stroke-width: 1.1px; stroke-linejoin: round; }
      """;

  private Sheet() {
  }

  /**
   * Begins a sheet.
   *
   * @param denominator n of the scale 1:n
   * @param describe what a screen reader says
   */
  public static Svg begin(double height, double denominator, String title, String describe, String style) {
    Svg svg = new Svg();
    // A browser that prints the sheet by itself takes this paper, at full size.
    String page = "@page { size: " + Svg.number(WIDTH) + "mm " + Svg.number(height) + "mm; margin: 0; }\n";
    svg.open("svg", "xmlns", "http://www.w3.org/2000/svg", "width", Svg.number(WIDTH) + "mm", "height", Svg.number(height) + "mm",
        "viewBox",
        "0 0 " + Svg.number(WIDTH) + " " + Svg.number(height), "role", "img", "data-scale", Svg.number(denominator));
    svg.words("title", title).words("desc", describe);
    svg.style(page + STYLE + style);
    svg.empty("rect", "class", "paper", "width", Svg.number(WIDTH), "height", Svg.number(height));
    svg.empty("rect", "class", "frame", "x", "5", "y", "5", "width", Svg.number(WIDTH - 10), "height", Svg.number(height - 10));
    return svg;
  }

  /** Names of the models, without folders. */
  public static String models(Takeoff takeoff) {
    return String.join(", ", takeoff.models().stream().map(m -> OneLine.of(m.file())).toList());
  }

  static String scale(double denominator) {
    return "1:" + MeasureFormat.plain(denominator, 2);
  }

  /** Lines of words, broken between them; gives y below the last. */
  public static double paragraph(Svg svg, String type, Vec2 at, double pitch, int columns, String words) {
    double y = at.v();
    for (String line : wrapped(words, columns)) {
      svg.text(type, new Vec2(at.u(), y), line);
      y += pitch;
    }
    return y;
  }

  public static List<String> wrapped(String words, int columns) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : OneLine.of(words).split("\\s+")) {
      if (!line.isEmpty() && line.length() + 1 + word.length() > columns) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return lines;
  }

  /** Two bars of about 50 mm on paper, one in metric and one in feet or inches, with the scale in words. */
  public static void scaleBars(Svg svg, Vec2 at, double denominator) {
    svg.text("head", at, "Scale " + scale(denominator) + " on A3, figured dimensions govern");
    double most = 50 * denominator / 1000;
    double metric = round(most, 1);
    bar(svg, new Vec2(at.u(), at.v() + 4), metric * 1000 / denominator,
        metric < 1 ? MeasureFormat.plain(metric * 1000, 0) + " mm" : MeasureFormat.plain(metric, 1) + " m");
    boolean feet = most >= 2 * FOOT;
    double us = round(most, feet ? FOOT : INCH);
    bar(svg, new Vec2(at.u(), at.v() + 10.5), us * 1000 / denominator,
        MeasureFormat.plain(us / (feet ? FOOT : INCH), 1) + (feet ? " ft" : " in"));
  }

  /** The greatest 1, 2 or 5 times a power of ten of the unit that is not above. */
  private static double round(double most, double unit) {
    double power = Math.pow(10, Math.floor(Math.log10(most / unit) + 1e-9));
    double share = most / unit / power;
    return (share >= 5 ? 5 : share >= 2 ? 2 : 1) * power * unit;
  }

  private static void bar(Svg svg, Vec2 at, double length, String words) {
    for (int i = 0; i < 4; i++) {
      svg.empty("rect", "class", i % 2 == 0 ? "bar-full" : "bar", "x", Svg.number(at.u() + i * length / 4), "y", Svg.number(at.v()),
          "width",
          Svg.number(length / 4), "height", "1.6");
    }
    svg.text("small", new Vec2(at.u(), at.v() + 4.4), "0");
    svg.text("small", new Vec2(at.u() + length + 1.5, at.v() + 1.7), words);
  }
}
