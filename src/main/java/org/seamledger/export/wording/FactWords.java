package org.seamledger.export.wording;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.junction.Facts;
import org.seamledger.measure.MeasureFormat;

/** The facts of a junction that an estimator wants beside its length, in words. */
public final class FactWords {

  private static final double LEVEL_DEGREES = 0.05;

  private FactWords() {
  }

  public static String of(Facts facts) {
    List<String> words = new ArrayList<>();
    if (facts.has("foldDegrees")) {
      words.add("fold " + degrees(Math.abs(facts.number("foldDegrees"))));
    }
    if (facts.has("diameterM")) {
      words.add("⌀ " + MeasureFormat.formatMillimetres(facts.number("diameterM")));
    } else if (facts.has("widthAcrossFallM")) {
      words.add(MeasureFormat.formatMillimetres(facts.number("widthAcrossFallM")) + " wide");
    }
    if (facts.has("upstandM")) {
      words.add("stands " + MeasureFormat.formatMillimetres(facts.number("upstandM")) + " high");
    }
    if (facts.number("inclinationDegrees") >= LEVEL_DEGREES) {
      words.add("rises " + degrees(facts.number("inclinationDegrees")));
    }
    if (facts.flag("oblique")) {
      words.add("oblique, " + degrees(facts.number("obliquityDegrees")) + " to the slope");
    }
    if (facts.flag("curved")) {
      words.add("curved");
    }
    return String.join(", ", words);
  }

  private static String degrees(double degrees) {
    return MeasureFormat.fixed(degrees, 1) + "°";
  }
}
