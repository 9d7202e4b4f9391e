package org.seamledger.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Remark;
import org.seamledger.takeoff.Takeoff;

/**
 * What people said about the findings of a stored result.
 *
 * @param accepted in a form that stays true in the next export
 * @param remarks by the finding's place in the result, in their order
 */
public record FindingReviews(List<AcceptedFinding> accepted, Map<Integer, List<Remark>> remarks) {

  public static final FindingReviews NONE = new FindingReviews(List.of(), Map.of());

  public FindingReviews {
    accepted = List.copyOf(accepted);
    remarks = Map.copyOf(remarks);
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
