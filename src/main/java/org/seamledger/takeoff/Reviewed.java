package org.seamledger.takeoff;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.seamledger.detail.Advice;
import org.seamledger.detail.DesignReview;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.drainage.DrainageTrace;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.finding.FindingCauses;
import org.seamledger.node.KindedNode;
import org.seamledger.progress.Progress;
import org.seamledger.quantity.BelowRoof;
import org.seamledger.quantity.DesignFacts;
import org.seamledger.quantity.Quantities;
import org.seamledger.roof.RoofFace;
import org.seamledger.shacl.Rules;

/** What the rules say of the design as a whole: of the roof system, of every face and of every junction. */
record Reviewed(List<Finding> findings, SortedMap<String, Advice> advice) {

  /** The rule of a level face: that its edges are level follows. */
  private static final String LEVEL_FACE = "slope/level-face";

  static Reviewed of(List<RoofFace> faces, List<DetailedJunction> junctions, List<DetailedJunction> joints,
      List<KindedNode> nodes, Quantities quantities,
      DrainageTrace drainage, BelowRoof below, Rules rules, Progress progress) {
    DesignFacts facts = new DesignFacts(junctions, joints, quantities, drainage, below);
    DesignReview review = new DesignReview(rules, facts.system());
    List<Finding> findings = new ArrayList<>(faces.isEmpty() ? List.of() : review.ofSystem());
    for (RoofFace face : progress.part(0, 0.3).over(faces)) {
      findings.addAll(review.ofFace(face, facts.face(face)));
    }
    for (DetailedJunction junction : progress.part(0.3, 1).over(junctions)) {
      findings.addAll(review.ofJunction(junction, facts.junction(junction), facts.elements(junction)));
    }
    nodes.forEach(n -> {
      Map<String, Object> seen = new HashMap<>(n.facts().asMap());
      seen.put("nodeKind", n.kind().id());
      findings.addAll(review.ofNode(n.node(), seen));
    });
    return new Reviewed(findings, review.advice());
  }

  /** All of them, one a cause. */
  static List<Finding> together(List<List<Finding>> parts, SortedMap<String, Advice> advice) {
    List<Finding> once = FindingCauses.of(parts.stream().flatMap(List::stream).toList(),
        code -> Code.isOnce(code) || advice.containsKey(code) && advice.get(code).once());
    return FindingCauses.under(once, Code.FLAT_EDGE.id(), LEVEL_FACE);
  }
}
