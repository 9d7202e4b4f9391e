package org.seamledger.export.crew;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.weather.Hindrance;
import org.seamledger.weather.SealantClass;
import org.seamledger.weather.SealingHour;
import org.seamledger.weather.SealingWindows;

/** Windows in words. */
final class WindowWords {

  private WindowWords() {
  }

  /** What a class is called. */
  static String name(SealantClass sealant) {
    return switch (sealant) {
      case TAPE -> "tape";
      case BEAD -> "beads of gun sealant";
      case IN_SEAM -> "non-curing sealant in seams and laps";
    };
  }

  /** {@code 08:00–17:00, 19:00–20:00} of some hours of a day, or why none. */
  static String stretches(List<SealingHour> hours, SealantClass sealant) {
    String all = SealingWindows.windows(hours, sealant).stream().map(w -> {
      int begin = hours.get(w.from()).weather().hour();
      return clock(begin) + "–" + clock(begin + w.to() - w.from());
    }).collect(Collectors.joining(", "));
    return all.isEmpty() ? "not that day: " + reasons(hours, sealant) : all;
  }

  /** Why not, the most frequent first. */
  static String reasons(List<SealingHour> hours, SealantClass sealant) {
    Map<Hindrance, Integer> count = new EnumMap<>(Hindrance.class);
    hours.forEach(h -> h.against().get(sealant).forEach(r -> count.merge(r, 1, Integer::sum)));
    return count.entrySet().stream().sorted((a, b) -> b.getValue() - a.getValue()).map(e -> e.getKey().text())
        .collect(Collectors.joining(", "));
  }

  static String clock(double hour) {
    return StepWords.clock(hour);
  }

  /** {@code 12.3 °C (54.1 °F)}. */
  static String celsius(double celsius) {
    return Double.isNaN(celsius) ? "not known"
        : MeasureFormat.fixed(celsius, 1) + " °C (" + MeasureFormat.fixed(celsius * 1.8 + 32, 0) + " °F)";
  }

  /** {@code 26.8 h}, or that it doesn't end within the weather that is known. */
  static String hours(double hours) {
    return Double.isInfinite(hours) ? "longer than the weather is known" : MeasureFormat.fixed(hours, 1) + " h";
  }

  /** Whether beads stand upright, by their data sheet. */
  static String upright(SealingWindows.Upright upright) {
    return switch (upright) {
      case STANDS -> "the yield stress of the data sheet is enough for an upright bead of this size";
      case SLUMPS -> "THE YIELD STRESS OF THE DATA SHEET IS TOO LOW: AN UPRIGHT BEAD OF THIS SIZE SLUMPS";
      case NOT_STATED -> "the data sheet states no yield stress: look again at upright beads before they are covered";
    };
  }
}
