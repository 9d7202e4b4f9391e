package org.seamledger.export.sheet;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.export.wording.OneLine;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.takeoff.Takeoff;

/** What every drawing's sheet has: paper, frame, scale bars. Millimetres; printed at full size it is to scale. */
public final class Sheet {

  /** The frame's distance from the paper's edge; on the left there is room for binding (ISO 5457). */
  private static final double MARGIN = 10;
  private static final double BINDING = 20;

  private static final double FOOT = 0.3048;
  private static final double INCH = 0.0254;

  private static final String STYLE = """
      text { font-family: "DejaVu Sans", "Liberation Sans", Arial, sans-serif; fill: #1b2530; }
      svg { font-size: 2.6px; }
      .title { font-size: 5px; font-weight: 600; }
      .subtitle { font-size: 2.9px; fill: #44525f; }
      .head { font-size: 2.9px; font-weight: 600; }
      .small { font-size: 2.3px; }
      .fine { font-size: 2.25px; fill: #44525f; }
      .caption { font-size: 1.8px; fill: #44525f; }
      .value { font-size: 2.7px; }
      .paper { fill: #ffffff; }
      .frame { fill: none; stroke: #1b2530; stroke-width: 0.5; }
      .cell, .rule { stroke: #8a949d; stroke-width: 0.2; fill: none; }
      .bar { fill: none; stroke: #1b2530; stroke-width: 0.25; }
      .bar-full { fill: #1b2530; stroke: #1b2530; stroke-width: 0.25; }
      .halo { paint-order: stroke; stroke: #ffffff; stroke-width: 0.9px; stroke-linejoin: round; }
      .key-face { fill: #e9eef1; stroke: #7d8890; stroke-width: 0.13; fill-rule: evenodd; }
      .key-mark { fill: none; stroke: #c1121f; stroke-width: 0.9; stroke-linejoin: round; }
      .key-dot { fill: none; stroke: #c1121f; stroke-width: 0.5; }
      .key-part { fill: none; stroke: #44525f; stroke-width: 0.2; stroke-dasharray: 1 0.6; }
      .key-word { font-size: 2.3px; font-weight: 600; }
      """;

  private Sheet() {
  }

  /** The frame of a sheet, within which everything stands. */
  public static PaperBox frame(Paper paper) {
    return new PaperBox(BINDING, MARGIN, paper.widthMm() - MARGIN, paper.heightMm() - MARGIN);
  }

  /**
   * Begins a sheet.
   *
   * @param denominator n of the scale 1:n
   * @param describe what a screen reader says
   */
  public static Svg begin(Paper paper, double denominator, String title, String describe, String style) {
    Svg svg = new Svg();
    String width = Svg.number(paper.widthMm());
    String height = Svg.number(paper.heightMm());
    // A browser that prints the sheet by itself takes this paper, at full size.
    String page = "@page { size: " + width + "mm " + height + "mm; margin: 0; }\n";
    svg.open("svg", "xmlns", "http://www.w3.org/2000/svg", "width", width + "mm", "height", height + "mm", "viewBox",
        "0 0 " + width + " " + height, "role", "img", "data-scale", Svg.number(denominator));
    svg.words("title", title).words("desc", describe);
    svg.style(page + STYLE + style);
    PaperBox frame = frame(paper);
    svg.empty("rect", "class", "paper", "width", width, "height", height);
    svg.empty("rect", "class", "frame", "x", Svg.number(frame.left()), "y", Svg.number(frame.top()), "width", Svg.number(frame.width()),
        "height", Svg.number(frame.height()));
    return svg;
  }

  /** Names of the models, without folders. */
  public static String models(Takeoff takeoff) {
    return String.join(", ", takeoff.models().stream().map(m -> OneLine.of(m.file())).toList());
  }

  /** The day on which the first model was written, as its header states it; empty where it states none. */
  public static String date(Takeoff takeoff) {
    return takeoff.models().stream().map(m -> OneLine.of(m.written())).filter(d -> d.matches("\\d{4}-\\d{2}-\\d{2}(T.*)?"))
        .map(d -> d.substring(0, 10)).findFirst().orElse("");
  }

  public static String scale(double denominator) {
    return "1:" + MeasureFormat.plain(denominator, 2);
  }

  /** Words as they stand in markup. */
  public static String escaped(String words) {
    return Svg.escape(words);
  }

  /** Words of at most so many characters, with a mark where some are left out. */
  public static String cut(String words, int most, boolean isCut) {
    return words.length() > most || isCut ? words.substring(0, Math.max(0, Math.min(words.length(), most - 2))) + " …" : words;
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

  /** A bar of about 50 mm on paper for each chosen unit, with the scale in words. */
  public static void scaleBars(Svg svg, Vec2 at, double denominator, SheetSetup setup, double width) {
    boolean isNarrow = width < 36;
    svg.text("head", at, "Scale " + scale(denominator) + (isNarrow ? "" : " on " + setup.paper().label()));
    svg.text("small", at.plus(new Vec2(0, 3.6)), isNarrow ? "Figures govern" : "Figured dimensions govern");
    double most = Math.min(50, width - 16) * denominator / 1000;
    double y = at.v() + 7;
    if (setup.units() != DrawingUnits.US) {
      double metric = round(most, 1);
      bar(svg, new Vec2(at.u(), y), metric * 1000 / denominator,
          metric < 1 ? MeasureFormat.plain(metric * 1000, 0) + " mm" : MeasureFormat.plain(metric, 1) + " m");
      y += 7;
    }
    if (setup.units() != DrawingUnits.METRIC) {
      boolean feet = most >= 2 * FOOT;
      double us = round(most, feet ? FOOT : INCH);
      bar(svg, new Vec2(at.u(), y), us * 1000 / denominator,
          MeasureFormat.plain(us / (feet ? FOOT : INCH), 1) + (feet ? " ft" : " in"));
    }
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
