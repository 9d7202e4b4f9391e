package org.seamledger.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Remark;
import org.seamledger.ledger.FindingMark;
import org.seamledger.ledger.Reviews;
import org.seamledger.takeoff.Takeoff;

/**
 * What people said about the findings of a stored result.
 *
 * @param accepted in a form that stays true in the next export
 * @param remarks by the finding's place in the result, in their order
 */
public record FindingReviews(List<AcceptedFinding> accepted, Map<Integer, List<Remark>> remarks) {

  public FindingReviews {
    accepted = List.copyOf(accepted);
    remarks = Map.copyOf(remarks);
  }

  /** Those of a stored analysis. */
  public static FindingReviews of(Reviews reviews, String analysis) {
    Map<Integer, List<Remark>> remarks = new HashMap<>();
    for (FindingMark m : reviews.findings(analysis)) {
      if (!m.comments().isEmpty()) {
        remarks.put(m.place(), m.comments().stream().map(c -> new Remark(c.author(), c.created(), c.text())).toList());
      }
    }
    return new FindingReviews(reviews.accepted(analysis), remarks);
  }

  /** The result with them. */
  Takeoff on(Takeoff takeoff) {
    if (accepted.isEmpty() && remarks.isEmpty()) {
      return takeoff;
    }
    List<Finding> said = new ArrayList<>(takeoff.findings());
    remarks.forEach((place, list) -> said.set(place, said.get(place).saying(list)));
    return takeoff.withFindings(said).withAccepted(accepted);
  }
}
