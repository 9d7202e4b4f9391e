package org.seamledger.takeoff;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import org.seamledger.detail.Advice;
import org.seamledger.detail.DesignReview;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.finding.Finding;
import org.seamledger.progress.Headway;
import org.seamledger.quantity.DesignFacts;
import org.seamledger.quantity.Quantities;
import org.seamledger.roof.RoofFace;
import org.seamledger.shacl.Rules;

/** What the rules say of the design as a whole: of the roof system, of every face and of every junction. */
record Reviewed(List<Finding> findings, SortedMap<String, Advice> advice) {

  static Reviewed of(List<RoofFace> faces, List<DetailedJunction> junctions, Quantities quantities, Rules rules, Headway headway) {
    DesignFacts facts = new DesignFacts(faces, junctions, quantities);
    DesignReview review = new DesignReview(rules, facts.system());
    List<Finding> findings = new ArrayList<>(review.ofSystem());
    for (RoofFace face : headway.part(0, 0.3).over(faces)) {
      findings.addAll(review.ofFace(face, facts.face(face)));
    }
    for (DetailedJunction junction : headway.part(0.3, 1).over(junctions)) {
      findings.addAll(review.ofJunction(junction, facts.junction(junction)));
    }
    return new Reviewed(findings, review.advice());
  }

  static List<Finding> together(List<List<Finding>> parts) {
    return parts.stream().flatMap(List::stream).toList();
  }
}
