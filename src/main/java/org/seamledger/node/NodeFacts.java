package org.seamledger.node;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Fact;
import org.seamledger.junction.FactList;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.junction.JunctionNode;
import org.seamledger.junction.LineEnd;
import org.seamledger.roof.RoofFace;

/** Measures what the rules see of a node: {@link FactList#NODE} lists it. */
final class NodeFacts {

  /** Lines turned against each other by less (degrees) go on straight. */
  private static final double STRAIGHT = 5;
  private static final String CRICKET = "cricket";

  private final Map<String, Integer> none = new HashMap<>();
  private final Map<String, LineSort> sorts = new HashMap<>();
  private final Map<String, RoofFace> faces = new HashMap<>();
  private final Map<String, Boolean> crickets = new HashMap<>();

  NodeFacts(Collection<DetailedJunction> junctions, List<RoofFace> faces) {
    for (DetailedJunction j : junctions) {
      String id = j.junction().junction().id();
      sorts.put(id, LineSort.of(j.junction()));
      crickets.put(id, j.detail().metal().stream().anyMatch(m -> m.id().equals(CRICKET)));
    }
    FactList.NODE.stream().filter(f -> f.type() == Fact.FactType.COUNT).forEach(f -> none.put(f.name(), 0));
    faces.forEach(f -> this.faces.put(f.id(), f));
  }

  Facts of(JunctionNode node) {
    List<LineEnd> ends = node.leaving();
    Facts.Builder facts = Facts.builder();
    counts(ends).forEach(facts::count);
    facts.word("through", node.through().stream().map(this::sort).map(LineSort::word).sorted().findFirst().orElse("none"));
    facts.flag(CRICKET, ends.stream().anyMatch(e -> crickets.get(e.junction().id())));
    facts.flag("straight", ends.size() == 2 && isStraight(ends.get(0), ends.get(1)));
    facts.number("cornerDegrees", corner(ends.stream().filter(e -> sort(e.junction()).isEdge()).toList()));
    return facts.build();
  }

  /** The lines that lead away from a node. */
  List<NodeLine> lines(JunctionNode node) {
    return node.leaving().stream().map(e -> new NodeLine(e, sort(e.junction()))).toList();
  }

  private LineSort sort(Junction j) {
    return sorts.get(j.id());
  }

  private Map<String, Integer> counts(List<LineEnd> ends) {
    Map<String, Integer> counts = new HashMap<>(none);
    counts.put("endCount", ends.size());
    for (LineEnd e : ends) {
      LineSort sort = sort(e.junction());
      counts.computeIfPresent(sort.fact(e.height()), (name, n) -> n + 1);
      counts.computeIfPresent(sort.isWall() ? "wallEnds" : sort.isCurb() ? "curbEnds" : "", (name, n) -> n + 1);
    }
    return counts;
  }

  private static boolean isStraight(LineEnd a, LineEnd b) {
    Vec3 d = a.direction();
    Vec3 e = b.direction().negated();
    return Math.toDegrees(Math.atan2(d.cross(e).length(), d.dot(e))) < STRAIGHT;
  }

  /** Plan angle from one line to the other over the roof, degrees; not a number where there aren't two, or they contradict each other. */
  private double corner(List<LineEnd> edges) {
    if (edges.size() != 2) {
      return Double.NaN;
    }
    Vec3 d = edges.get(0).direction();
    Vec3 e = edges.get(1).direction();
    if (d.planLength() == 0 || e.planLength() == 0) {
      return Double.NaN;
    }
    double turn = Math.toDegrees(Math.atan2(d.x() * e.y() - d.y() * e.x(), d.x() * e.x() + d.y() * e.y()));
    double left = turn < 0 ? turn + 360 : turn;
    boolean leftOfFirst = roofOnTheLeft(edges.get(0));
    return leftOfFirst == roofOnTheLeft(edges.get(1)) ? Double.NaN : leftOfFirst ? left : 360 - left;
  }

  /** Whether the line's face lies to the left of who walks from the end along it. */
  private boolean roofOnTheLeft(LineEnd end) {
    RoofFace face = faces.get(end.junction().faces().get(0));
    return FaceSide.isLeft(end.junction().path(), face) == end.first();
  }
}
