package org.seamledger.sequence;

import java.util.List;
import java.util.Locale;

/**
 * Something to look at at one place before work goes on there.
 *
 * @param id the place's id, a slash, {@code before-} and the words; or {@code recheck-before-capping}
 * @param before what must not be done before
 * @param check what to see
 * @param ifFails what is done where it isn't so
 * @param steps ids of the steps that wait for it, sorted; at a line also those of the faces that hook over it
 * @param locks the one of them that nobody may do before somebody with a name has looked; empty where it can be skipped
 */
public record PlacedHoldPoint(String id, String before, String check, String ifFails, List<String> steps, String locks) {

  /** The word by which a hold point that can't be skipped is known at its place. */
  public static final String RECHECK = "recheck-before-capping";

  public PlacedHoldPoint {
    steps = List.copyOf(steps);
  }

  /** What is not to be done before, in small letters, digits and single dashes. */
  public static String slug(String before) {
    return before.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
  }

  /** The step at the place itself that waits; empty where only steps elsewhere do. */
  public String step() {
    String place = id.substring(0, id.indexOf('/') + 1);
    for (String step : steps) {
      if (step.startsWith(place)) {
        return step;
      }
    }
    return "";
  }
}
