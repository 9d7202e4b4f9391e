package org.seamledger.sequence;

import java.util.List;

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

  public PlacedHoldPoint {
    steps = List.copyOf(steps);
  }

  /** The step at the place itself that waits; empty where only steps elsewhere do. */
  public String step() {
    String place = id.substring(0, id.indexOf('/') + 1);
    return steps.stream().filter(s -> s.startsWith(place)).findFirst().orElse("");
  }
}
