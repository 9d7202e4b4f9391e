package org.seamledger.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.seamledger.geometry.DisjointSets;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.junction.LineEnd;
import org.seamledger.node.KindedNode;

/**
 * Eaves as gutters hang along them: straight on where two eaves meet in one line, round the corner where they meet at an angle, and with
 * an end where one ends alone.
 */
final class GutterRuns {

  /** Eaves that turn less than this where they meet go straight on, degrees: within the slack of models. */
  private static final double STRAIGHT_DEGREES = 5;

  /** @param eaves one after the other along a straight line, metres together */
  record Run(List<Junction> eaves, double lengthM) {
  }

  /**
   * @param runs joined by corners
   * @param corners by an eave that ends at each
   * @param ends by the eave that ends there
   * @param lines that end at any of its nodes, eaves or not
   */
  record Chain(List<Run> runs, List<String> corners, List<String> ends, TreeSet<String> lines) {
    double lengthM() {
      return runs.stream().mapToDouble(Run::lengthM).sum();
    }
  }

  private final List<Junction> eaves;
  private final Map<String, Integer> numbers = new HashMap<>();
  private final DisjointSets straight;
  private final DisjointSets joined;
  private final List<List<Integer>> corners = new ArrayList<>();
  private final List<Integer> ends = new ArrayList<>();
  private final Map<Integer, TreeSet<String>> lines = new HashMap<>();

  private GutterRuns(List<Junction> eaves) {
    this.eaves = eaves;
    this.straight = new DisjointSets(eaves.size());
    this.joined = new DisjointSets(eaves.size());
    for (int i = 0; i < eaves.size(); i++) {
      numbers.put(eaves.get(i).id(), i);
      lines.put(i, new TreeSet<>(List.of(eaves.get(i).id())));
    }
  }

  static List<Chain> of(List<Junction> eaves, List<KindedNode> nodes) {
    GutterRuns runs = new GutterRuns(eaves);
    nodes.forEach(runs::meet);
    return runs.chains();
  }

  private void meet(KindedNode node) {
    List<LineEnd> here = node.node().ends().stream().filter(e -> numbers.containsKey(e.junction().id())).toList();
    here.forEach(e -> lines.get(number(e)).addAll(node.node().ends().stream().map(o -> o.junction().id())
        .filter(id -> !numbers.containsKey(id)).toList()));
    if (here.size() == 2 && number(here.get(0)) != number(here.get(1))) {
      joined.join(number(here.get(0)), number(here.get(1)));
      if (turn(here.get(0), here.get(1)) < STRAIGHT_DEGREES) {
        straight.join(number(here.get(0)), number(here.get(1)));
      } else {
        corners.add(List.of(number(here.get(0)), number(here.get(1))));
      }
    } else {
      here.forEach(e -> ends.add(number(e)));
    }
  }

  private int number(LineEnd end) {
    return numbers.get(end.junction().id());
  }

  /** How far a gutter turns from one eave to the other, degrees in plan. */
  private static double turn(LineEnd a, LineEnd b) {
    Vec3 in = a.direction();
    Vec3 out = b.direction();
    double cross = in.x() * out.y() - in.y() * out.x();
    double dot = in.x() * out.x() + in.y() * out.y();
    return 180 - Math.toDegrees(Math.abs(Math.atan2(cross, dot)));
  }

  private List<Chain> chains() {
    Map<Integer, Map<Integer, List<Junction>>> parts = new LinkedHashMap<>();
    for (int i = 0; i < eaves.size(); i++) {
      parts.computeIfAbsent(joined.root(i), k -> new LinkedHashMap<>()).computeIfAbsent(straight.root(i), k -> new ArrayList<>())
          .add(eaves.get(i));
    }
    List<Chain> chains = new ArrayList<>();
    parts.forEach((root, runs) -> {
      TreeSet<String> all = new TreeSet<>();
      runs.values().forEach(run -> run.forEach(j -> all.addAll(lines.get(numbers.get(j.id())))));
      chains.add(new Chain(runs.values().stream().map(run -> new Run(run, run.stream().mapToDouble(Junction::lengthM).sum())).toList(),
          corners.stream().filter(c -> joined.root(c.get(0)) == root).map(c -> eaves.get(c.get(0)).id()).toList(),
          ends.stream().filter(e -> joined.root(e) == root).map(e -> eaves.get(e).id()).toList(), all));
    });
    return chains;
  }
}
