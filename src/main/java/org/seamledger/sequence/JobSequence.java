package org.seamledger.sequence;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.node.KindedNode;
import org.seamledger.quantity.Quantities;
import org.seamledger.roof.RoofFace;
import org.seamledger.shacl.Rules;

/**
 * All work on a roof in its order.
 *
 * @param steps each after those that it needs, but for the steps of a cycle
 * @param holdPoints by id of the place, in the order of work
 * @param cycle ids of steps each of which must come before the next, and the last before the first; empty if all is well
 */
public record JobSequence(List<Step> steps, SortedMap<String, List<PlacedHoldPoint>> holdPoints, List<String> cycle) {

  /** Of a roof of which nothing is known. */
  public static final JobSequence NONE = new JobSequence(List.of(), new TreeMap<>(), List.of());

  public JobSequence {
    steps = List.copyOf(steps);
    holdPoints = Collections.unmodifiableSortedMap(new TreeMap<>(holdPoints));
    cycle = List.copyOf(cycle);
  }

  /**
   * The order that the rules give. Steps that may come in any order are listed stage by stage, higher faces first, what closes the roof
   * before what opens more of it, at last by their ids.
   *
   * @param junctions those of the roof, and the joints within faces
   */
  public static JobSequence of(List<RoofFace> faces, List<DetailedJunction> junctions, List<KindedNode> nodes, Quantities quantities,
      Rules rules) {
    WorkRules work = new WorkRules(rules);
    RoofPlaces places = RoofPlaces.of(faces, junctions, nodes, quantities);
    StepTable table = StepFinder.find(places, quantities, work);
    StepPairs.link(places, table, work);
    SortedMap<String, List<PlacedHoldPoint>> holds = HoldPointPlaces.of(places, table);
    StepOrder order = new StepOrder(places, table);
    return new JobSequence(order.steps(holds), holds, order.cycle());
  }

  /** What to look at at a junction or a node, in the order of work. */
  public List<PlacedHoldPoint> holdPoints(String place) {
    return holdPoints.getOrDefault(place, List.of());
  }

  /** What there is to say about it: the cycle. */
  public List<Finding> findings() {
    return cycle.isEmpty() ? List.of() : List.of(Finding.of(Code.WORK_CYCLE,
        "each of these steps must come before the next, and the last before the first: " + String.join(", ", cycle), List.of()));
  }
}
