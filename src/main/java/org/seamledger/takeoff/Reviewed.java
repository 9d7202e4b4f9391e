package org.seamledger.takeoff;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.seamledger.detail.Advice;
import org.seamledger.detail.DesignReview;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.finding.Finding;
import org.seamledger.quantity.Quantities;
import org.seamledger.roof.RoofFace;
import org.seamledger.shacl.Rules;

/** What the rules say of the design as a whole: of the roof system, of every face and of every junction. */
record Reviewed(List<Finding> findings, SortedMap<String, Advice> advice) {

  static Reviewed of(List<RoofFace> faces, List<DetailedJunction> junctions, Quantities quantities, Rules rules) {
    DesignReview review = new DesignReview(rules, Map.of());
    List<Finding> findings = new ArrayList<>(review.ofSystem());
    faces.forEach(face -> findings.addAll(review.ofFace(face, Map.of())));
    junctions.forEach(junction -> findings.addAll(review.ofJunction(junction, Map.of())));
    return new Reviewed(findings, review.advice());
  }

  @SafeVarargs
  static List<Finding> together(List<Finding>... parts) {
    return Stream.of(parts).flatMap(List::stream).toList();
  }
}
