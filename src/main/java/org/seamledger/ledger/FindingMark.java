package org.seamledger.ledger;

import java.util.List;

/**
 * What people did about one finding.
 *
 * @param id derived from code, junction and elements, so that it is the same in the next revision
 * @param place index in the result's list of findings
 * @param state {@code open} or {@code accepted}
 * @param reason why it is accepted; required then
 * @param assignee who looks after it, or empty
 * @param version counts changes, for two people at once
 */
public record FindingMark(String id, int place, String state, String reason, String assignee, long version, String updated,
    List<Comment> comments) {

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
    if (reason.length() > Review.LONGEST_TEXT || assignee.length() > 200) {
      throw new LedgerException(LedgerException.Reason.INVALID,
          "reason may have " + Review.LONGEST_TEXT + " characters and assignee 200");
    }
  }
}
