package org.seamledger.sequence;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.node.KindedNode;
import org.seamledger.quantity.Quantities;
import org.seamledger.roof.RoofFace;
import org.seamledger.shacl.Rules;

/** All work on a roof in its order. Few outputs list the steps: they are put in order when somebody asks for them. */
public final class JobSequence {

  /** Of a roof of which nothing is known. */
  public static final JobSequence NONE = new JobSequence(List::of, new TreeMap<>(), List.of());

  private final SortedMap<String, List<PlacedHoldPoint>> holdPoints;
  private final List<String> cycle;
  private Supplier<List<Step>> order;
  private List<Step> steps;

  private JobSequence(Supplier<List<Step>> order, SortedMap<String, List<PlacedHoldPoint>> holdPoints, List<String> cycle) {
    this.order = order;
    this.holdPoints = Collections.unmodifiableSortedMap(holdPoints);
    this.cycle = List.copyOf(cycle);
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
    StepFinder finder = StepFinder.find(places, quantities, work);
    StepPairs.link(places, finder.table(), work);
    SortedMap<String, List<PlacedHoldPoint>> holds = HoldPointPlaces.of(places, finder.table());
    Supplier<List<Step>> order = () -> {
      finder.measure();
      return StepOrder.steps(places, finder.table(), holds);
    };
    return new JobSequence(order, holds, StepOrder.cycle(places, finder.table()));
  }

  /** Each after those that it needs, but for the steps of a cycle. */
  public synchronized List<Step> steps() {
    if (steps == null) {
      steps = List.copyOf(order.get());
      order = null;
    }
    return steps;
  }

  /** By id of the place, in the order of work. */
  public SortedMap<String, List<PlacedHoldPoint>> holdPoints() {
    return holdPoints;
  }

  /** What to look at at a junction or a node, in the order of work. */
  public List<PlacedHoldPoint> holdPoints(String place) {
    return holdPoints.getOrDefault(place, List.of());
  }

  /** Ids of steps each of which must come before the next, and the last before the first; empty if all is well. */
  public List<String> cycle() {
    return cycle;
  }

  @Override
  public boolean equals(Object o) {
    return o instanceof JobSequence s && holdPoints.equals(s.holdPoints) && cycle.equals(s.cycle) && steps().equals(s.steps());
  }

  @Override
  public int hashCode() {
    return holdPoints.hashCode();
  }

  /** What there is to say about it: the cycle. */
  public List<Finding> findings() {
    return cycle.isEmpty() ? List.of() : List.of(Finding.of(Code.WORK_CYCLE,
        "each of these steps must come before the next, and the last before the first: " + String.join(", ", cycle), List.of()));
  }
}
