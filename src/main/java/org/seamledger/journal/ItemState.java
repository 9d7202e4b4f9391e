package org.seamledger.journal;

import java.util.List;
import java.util.Locale;

/**
 * How a hold point or a step stands.
 *
 * @param answers the last events about it that nobody answered with knowledge of them: one, or several of senders who had not seen each
 *     other's
 * @param isLocked whether it can't be ticked yet
 */
public record ItemState(WorkItem item, Standing standing, List<SiteEvent> answers, boolean isLocked) {

  /** In words as requests have them. */
  public enum Standing {
    OPEN, TICKED, FAILED, DEVIATES,
    /** Senders who did not know of each other said different things: a person has to say what holds. */
    CONFLICT;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public ItemState {
    answers = List.copyOf(answers);
  }

  /** Whether somebody looked at it and it is settled: as it should be, or otherwise for a stated reason. */
  public boolean isSettled() {
    return standing == Standing.TICKED || standing == Standing.DEVIATES;
  }
}
