package org.seamledger.ledger;

import java.util.List;
import java.util.stream.Stream;
import org.seamledger.detail.Kinds;

/**
 * What a person said about one junction.
 *
 * @param state one of {@link #STATES}
 * @param note free text
 * @param kind a kind chosen by hand, or empty to keep the program's
 * @param detail a sealing detail chosen by hand, or empty
 * @param reason why kind or detail was chosen by hand; required where either is
 * @param carried true where it came over from the revision before and nobody touched it since
 * @param stale true where a kind or detail chosen by hand came over to a junction that changed since: it has no effect until the
 *     review is saved again
 * @param version counts changes, for two people at once
 * @param updated instant, ISO 8601 UTC
 */
public record Review(String junction, String state, String note, String kind, String detail, String reason,
    boolean carried, boolean stale, long version, String updated) {

  /**
   * {@code open} not looked at; {@code checked} agreed; {@code question} somebody must decide; {@code recheck} changed since it was
   * checked.
   */
  public static final List<String> STATES = List.of("open", "checked", "question", "recheck");

  /** The kinds that a result can hold. */
  public static final List<String> KINDS = Stream.concat(Kinds.ALL.stream(), Stream.of(Kinds.UNCLASSIFIED)).toList();

  static final int LONGEST_TEXT = 4000;

  /** Checks what a person typed; throws a {@link LedgerException} that says what to change. */
  public void validate() {
    require(STATES.contains(state), "state must be one of " + STATES);
    require(kind.isEmpty() || KINDS.contains(kind), "kind must be empty or one of " + KINDS);
    require(detail.length() <= 200, "detail is longer than 200 characters");
    require(note.length() <= LONGEST_TEXT && reason.length() <= LONGEST_TEXT,
        "note and reason may have " + LONGEST_TEXT + " characters each");
    require(kind.isEmpty() && detail.isEmpty() || !reason.isBlank(), "a kind or detail chosen by hand needs a reason");
  }

  private static void require(boolean holds, String message) {
    if (!holds) {
      throw new LedgerException(LedgerException.Reason.INVALID, message);
    }
  }
}
