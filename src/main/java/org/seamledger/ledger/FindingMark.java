package org.seamledger.ledger;

import java.util.List;

/**
 * What people did about one finding.
 *
 * @param id derived from code, junction and elements, so that it is the same in the next revision
 * @param place index in the result's list of findings
 * @param state {@code open} or {@code accepted}
 * @param reason why it is accepted; required then
 * @param acceptedBy who accepted it; required then, but not known of what was accepted before names were asked for
 * @param acceptedAt when, in UTC; empty where it is open
 * @param assignee who looks after it, or empty
 * @param version counts changes, for two people at once
 */
public record FindingMark(String id, int place, String state, String reason, String acceptedBy, String acceptedAt, String assignee,
    long version, String updated,
    List<Comment> comments) {

  private static final int LONGEST_NAME = 200;

  public FindingMark {
    comments = List.copyOf(comments);
  }

  /** A remark in the order written. */
  public record Comment(String author, String text, String created) {
  }

  /** Checks what a person typed. */
  public void validate() {
    if (!state.equals("open") && !state.equals("accepted")) {
      throw new LedgerException(LedgerException.Reason.INVALID, "state must be open or accepted");
    }
    if (state.equals("accepted") && reason.isBlank()) {
      throw new LedgerException(LedgerException.Reason.INVALID, "a finding is accepted with a reason");
    }
    if (state.equals("accepted") && acceptedBy.isBlank()) {
      throw new LedgerException(LedgerException.Reason.INVALID, "a finding is accepted by somebody: acceptedBy is a name");
    }
    if (reason.length() > Review.LONGEST_TEXT || assignee.length() > LONGEST_NAME || acceptedBy.length() > LONGEST_NAME) {
      throw new LedgerException(LedgerException.Reason.INVALID,
          "reason may have " + Review.LONGEST_TEXT + " characters, assignee and acceptedBy " + LONGEST_NAME);
    }
  }
}
