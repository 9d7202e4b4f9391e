package org.seamledger.export.sheet;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import org.seamledger.measure.Measure;
import org.seamledger.measure.MeasureFormat;

/** DrawingUnits of a drawing's words. {@link #BOTH} gives lengths in both, and what the roof system states as it states it. */
public enum DrawingUnits {
  METRIC("metric", "mm, m"), US("us", "in, ft"), BOTH("both", "mm and in");

  /** Below this, a tenth of a millimetre counts: a tape's thickness. */
  private static final double FINE_M = 0.01;

  private final String word;
  private final String label;

  DrawingUnits(String word, String label) {
    this.word = word;
    this.label = label;
  }

  /** As command line and service name them. */
  public String word() {
    return word;
  }

  public String label() {
    return label;
  }

  public static Optional<DrawingUnits> of(String word) {
    return Arrays.stream(values()).filter(u -> u.word.equalsIgnoreCase(word)).findFirst();
  }

  public static String choices() {
    return Arrays.stream(values()).map(DrawingUnits::word).collect(Collectors.joining(", "));
  }

  /** A length along the roof, from metres. */
  public String length(double metres) {
    String metric = MeasureFormat.formatMetres(metres);
    return choose(metric, MeasureFormat.formatFeetInches(metres), metric + " · " + MeasureFormat.formatFeetInches(metres));
  }

  /** A measure of a part, from metres. */
  public String small(double metres) {
    String metric = Math.abs(metres) < FINE_M ? MeasureFormat.plain(metres * 1000, 1) + " mm" : MeasureFormat.formatMillimetres(metres);
    String us = MeasureFormat.formatInches(metres);
    return choose(metric, us, metric + " (" + us + ")");
  }

  /** A length that the roof system states: as it stands where its unit is among the chosen ones. */
  public String stated(Measure length) {
    boolean isUs = length.text().matches(".*(in|ft|yd|\"|'|″|′|inch|inches|foot|feet)\\.?\\s*");
    return this == BOTH || isUs == (this == US) ? length.text() : small(length.value());
  }

  /** A measure that must not be less, rounded up. */
  public String least(double metres) {
    String metric = MeasureFormat.formatMillimetresUp(metres);
    String us = MeasureFormat.formatInchesUp(metres);
    return choose(metric, us, metric + " (" + us + ")");
  }

  /** A slope, from degrees. */
  public String slope(double degrees) {
    return choose(MeasureFormat.fixed(degrees, 1) + "°", MeasureFormat.plain(12 * Math.tan(Math.toRadians(degrees)), 2) + ":12",
        MeasureFormat.formatSlope(degrees));
  }

  private String choose(String metric, String us, String both) {
    return switch (this) {
      case METRIC -> metric;
      case US -> us;
      case BOTH -> both;
    };
  }
}
