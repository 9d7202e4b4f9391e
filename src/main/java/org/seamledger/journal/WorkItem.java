package org.seamledger.journal;

import java.util.List;

/**
 * Something to tick: a hold point, or a step of the work that waits for hold points.
 *
 * @param id unique in a result: the place's id, a slash, words
 * @param isStep whether it is a step
 * @param label words: "before closures are set", or what is done
 * @param check what is looked at; empty for a step
 * @param ifFails what is done where it isn't so; may be empty
 * @param needs ids of hold points that have to be ticked before this one may be
 */
public record WorkItem(String id, boolean isStep, String label, String check, String ifFails, List<String> needs) {
  public WorkItem {
    needs = List.copyOf(needs);
  }
}
