package org.seamledger.export.crew;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.weather.Hindrance;
import org.seamledger.weather.SealantClass;
import org.seamledger.weather.SealingHour;
import org.seamledger.weather.SealingWindows;

/**
 * Windows of some days as a picture: for each day the course of air, metal and dew point, and below it a row for each class of sealant, an
 * hour a cell, full where it may be applied, with a letter where not. Millimetres.
 */
public final class WindowsDrawing {

  private static final double LEFT = 34;
  private static final double HOUR = 6;
  private static final double CURVES = 24;
  private static final double ROW = 5;
  private static final double DAY = CURVES + 3 * ROW + 9;
  private static final double TOP = 16;
  private static final double FOOT = 17;
  private static final int HOURS = 24;
  private static final double WIDTH = LEFT + HOURS * HOUR + 14;
  private static final String STYLE = """
      text { font-family: "DejaVu Sans", "Liberation Sans", Arial, sans-serif; fill: #1b2530; font-size: 2.6px; }
      .title { font-size: 4.2px; font-weight: 600; } .fine { font-size: 2.25px; fill: #44525f; }
      .letter { font-size: 2.6px; fill: #5a2a2a; }
      .paper { fill: #ffffff; } .open { fill: #1d7a5f; stroke: #ffffff; stroke-width: 0.3; }
      .shut { fill: #ece6e0; stroke: #ffffff; stroke-width: 0.3; } .work { fill: #f3f6f8; } .grid { stroke: #d5dbe0; stroke-width: 0.15; }
      .air { fill: none; stroke: #0b4f8a; stroke-width: 0.5; } .metal { fill: none; stroke: #b3541e; stroke-width: 0.7; }
      .dew { fill: none; stroke: #44525f; stroke-width: 0.5; stroke-dasharray: 1.4 0.9; }
      """;

  private final SealingWindows windows;
  private final RoofSystem system;
  private final Svg svg = new Svg();
  private double low;
  private double high;

  private WindowsDrawing(SealingWindows windows, RoofSystem system) {
    this.windows = windows;
    this.system = system;
  }

  /** The picture as SVG text; the same weather and system give the same text. Weather by hand is one cell wide. */
  public static String svg(SealingWindows windows, RoofSystem system, int days) {
    return svg(windows, system, 1, days);
  }

  /** The same from a day on, the first of which is 1. */
  public static String svg(SealingWindows windows, RoofSystem system, int first, int days) {
    return new WindowsDrawing(windows, system).drawn(first, days);
  }

  private String drawn(int first, int most) {
    List<List<SealingHour>> days = new ArrayList<>();
    if (windows.byHand()) {
      days.add(windows.hours().subList(0, 1));
    } else {
      for (int day = first; day < first + most && !windows.onDay(day).isEmpty(); day++) {
        days.add(windows.onDay(day));
      }
    }
    range(days);
    double height = TOP + days.size() * DAY + FOOT;
    svg.open("svg", "xmlns", "http://www.w3.org/2000/svg", "width", Svg.number(WIDTH) + "mm", "height", Svg.number(height) + "mm",
        "viewBox",
        "0 0 " + Svg.number(WIDTH) + " " + Svg.number(height), "role", "img", "aria-label", "Sealing windows: " + windows.source());
    svg.style(STYLE);
    svg.empty("rect", "class", "paper", "width", Svg.number(WIDTH), "height", Svg.number(height));
    svg.text("title", new Vec2(4, 7), "Sealing windows, weather " + (windows.byHand() ? "" : "from ") + windows.source());
    svg.text("fine", new Vec2(4, 11.5), "Metal: estimated for a level surface that absorbs " + system.finish().solarAbsorptance()
        + " of the sun, unless it was measured. Data sheets of the roof system \"" + system.name() + "\" govern.");
    for (int i = 0; i < days.size(); i++) {
      day(days.get(i), TOP + i * DAY);
    }
    legend(height - FOOT + 5);
    return svg.close("svg").toString();
  }

  private void range(List<List<SealingHour>> days) {
    low = days.stream().flatMap(List::stream).flatMapToDouble(h -> java.util.stream.DoubleStream.of(h.dewPointC(), h.metalC(),
        h.weather().airC())).filter(Double::isFinite).min().orElse(0);
    high = days.stream().flatMap(List::stream).flatMapToDouble(h -> java.util.stream.DoubleStream.of(h.metalC(), h.weather().airC()))
        .filter(Double::isFinite).max().orElse(1);
    low = Math.floor(low / 10) * 10;
    high = Math.max(low + 10, Math.ceil(high / 10) * 10);
  }

  private double x(SealingHour hour) {
    return LEFT + (windows.byHand() ? 0 : hour.weather().hour() * HOUR);
  }

  private double y(double celsius, double top) {
    return top + 4 + (high - celsius) / (high - low) * (CURVES - 6);
  }

  private void day(List<SealingHour> hours, double top) {
    int columns = windows.byHand() ? 1 : HOURS;
    double begins = system.crew().begins().value() / 3600;
    double ends = Math.min(HOURS, begins + system.crew().day().value() / 3600);
    if (!windows.byHand()) {
      rect("work", LEFT + begins * HOUR, top + 3, (ends - begins) * HOUR, CURVES + 3 * ROW - 2);
    }
    svg.text("value", new Vec2(4, top + 7), windows.byHand() ? "now" : hours.get(0).weather().date());
    for (double c = low; c <= high + 1e-9; c += (high - low) / 2) {
      svg.line("grid", new Vec2(LEFT, y(c, top)), new Vec2(LEFT + columns * HOUR, y(c, top)));
      svg.text("fine", new Vec2(LEFT - 12, y(c, top) + 0.8), MeasureFormat.fixed(c, 0) + " °C");
    }
    curve("dew", hours, SealingHour::dewPointC, top);
    curve("air", hours, h -> h.weather().airC(), top);
    curve("metal", hours, SealingHour::metalC, top);
    double y = top + CURVES + 1;
    for (SealantClass c : SealantClass.values()) {
      svg.text("fine", new Vec2(4, y + 3.4), c == SealantClass.IN_SEAM ? "in seams, laps" : c == SealantClass.BEAD ? "beads" : "tape");
      for (SealingHour h : hours) {
        cell(h, c, y);
      }
      y += ROW;
    }
    for (int h = 0; h <= HOURS && !windows.byHand(); h += 3) {
      svg.turned("fine", new Vec2(LEFT + h * HOUR, y + 2.8), 0, StepWords.clock(h));
    }
  }

  private void cell(SealingHour hour, SealantClass c, double y) {
    Set<Hindrance> against = hour.against().get(c);
    rect(against.isEmpty() ? "open" : "shut", x(hour), y, HOUR, ROW);
    if (windows.byHand()) {
      svg.text("value", new Vec2(x(hour) + HOUR + 3, y + 3.6), against.isEmpty() ? "may be applied now"
          : "not now: " + WindowWords.reasons(List.of(hour), c));
    }
    if (!against.isEmpty()) {
      svg.turned("letter", new Vec2(x(hour) + HOUR / 2, y + 3.5), 0, against.iterator().next().letter());
    }
  }

  private void rect(String type, double x, double y, double width, double height) {
    svg.empty("rect", "class", type, "x", Svg.number(x), "y", Svg.number(y), "width", Svg.number(width), "height", Svg.number(height));
  }

  private void curve(String type, List<SealingHour> hours, ToDoubleFunction<SealingHour> value, double top) {
    List<Vec2> points = new ArrayList<>();
    for (SealingHour h : hours) {
      double celsius = value.applyAsDouble(h);
      if (Double.isFinite(celsius)) {
        points.add(new Vec2(x(h) + HOUR / 2, y(Math.max(low, celsius), top)));
      }
    }
    if (points.size() == 1) {
      points = List.of(points.get(0).plus(new Vec2(-2, 0)), points.get(0).plus(new Vec2(2, 0)));
    }
    if (!points.isEmpty()) {
      svg.polyline(type, points);
    }
  }

  private void legend(double y) {
    double x = 4;
    for (String[] item : new String[][] {{"metal", "metal"}, {"air", "air"}, {"dew", "dew point"}}) {
      svg.line(item[0], new Vec2(x, y - 0.9), new Vec2(x + 7, y - 0.9));
      svg.text("fine", new Vec2(x + 8.5, y), item[1]);
      x += 12 + item[1].length() * 1.6;
    }
    rect("open", x, y - 3, 6, 3.6);
    svg.text("fine", new Vec2(x + 7.5, y), "may be applied");
    rect("shut", x + 32, y - 3, 6, 3.6);
    svg.text("fine", new Vec2(x + 39.5, y), "may not, and why:");
    svg.text("fine", new Vec2(4, y + 5),
        "R rain · S rain before a bead has a skin · D metal too near the dew point · C metal or air too cold · "
            + "H too hot · W air too humid · ? no data. Shaded: hours of work.");
  }
}
