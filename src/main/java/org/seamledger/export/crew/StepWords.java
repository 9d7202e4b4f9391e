package org.seamledger.export.crew;

import java.util.Locale;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.sequence.Step;

/** Steps in words. */
public final class StepWords {

  private StepWords() {
  }

  /** {@code 12.5 m²}, {@code 7.3 m} or {@code 2 pc}. */
  public static String amount(Step step) {
    return switch (step.work().per()) {
      case FACE_AREA, UPPER_AREA, LOWER_AREA -> MeasureFormat.fixed(step.amount(), 1) + " m²";
      case EACH -> MeasureFormat.plain(step.amount(), 0) + " pc";
      default -> MeasureFormat.fixed(step.amount(), 1) + " m";
    };
  }

  /** {@code 07:30} of 7.5 hours after midnight. */
  public static String clock(double hour) {
    long minutes = Math.round(hour * 60);
    return String.format(Locale.ROOT, "%02d:%02d", minutes / 60, minutes % 60);
  }
}
