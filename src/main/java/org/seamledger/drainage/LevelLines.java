package org.seamledger.drainage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import org.seamledger.drainage.Node.Exit;
import org.seamledger.drainage.Node.Landing;
import org.seamledger.drainage.Node.Target;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.BoundaryEdge;

/**
 * Lines that fall neither way: water in them goes to the nearest place where it can leave, along as many of them as that takes. Lines that
 * lead nowhere keep it.
 */
final class LevelLines {

  private final RoofWater water;
  private final Release release;
  private final List<Integer> edges = new ArrayList<>();
  /** Way (metres) from an end of an edge to the nearest exit, and the next step there; ends are 2·edge and 2·edge + 1. */
  private final Map<Integer, Double> way = new HashMap<>();
  private final Map<Integer, Landing> step = new HashMap<>();

  private record Reached(int end, double way) {
  }

  LevelLines(RoofWater water, Release release) {
    this.water = water;
    this.release = release;
    for (int e = 0; e < water.lines.size(); e++) {
      if (water.lines.get(e) != null && water.isLevel(e)) {
        edges.add(e);
      }
    }
    spread();
  }

  private Vec3 at(int end) {
    return end % 2 == 0 ? water.edge(end / 2).from() : water.edge(end / 2).to();
  }

  private void spread() {
    PriorityQueue<Reached> queue = new PriorityQueue<>(Comparator.comparingDouble(Reached::way).thenComparingInt(Reached::end));
    for (int e : edges) {
      for (int end : new int[] {2 * e, 2 * e + 1}) {
        Vec3 d = at(end).minus(at(end ^ 1));
        Vec3 direction = d.planLength() < 1e-9 ? Vec3.ZERO : new Vec3(d.x(), d.y(), 0).times(1 / d.planLength());
        Landing off = release.downFrom(new Release.End(e, at(end), direction));
        if (off != null) {
          step.put(end, off);
          queue.add(new Reached(end, 0));
        }
      }
    }
    while (!queue.isEmpty()) {
      Reached r = queue.poll();
      if (way.putIfAbsent(r.end, r.way) == null) {
        // Along the edge to its other end, and from any level line that ends here into this one.
        queue.add(new Reached(r.end ^ 1, r.way + water.edge(r.end / 2).lengthM()));
        for (int end : meeting(r.end)) {
          if (!way.containsKey(end) && step.putIfAbsent(end, entering(r.end)) == null) {
            queue.add(new Reached(end, r.way));
          }
        }
      }
    }
  }

  private Landing entering(int end) {
    return new Landing(Target.to(water.lines.get(end / 2)), end % 2 == 0 ? 0 : water.edge(end / 2).lengthM());
  }

  private List<Integer> meeting(int end) {
    List<Integer> ends = new ArrayList<>();
    double reach = water.roof.tolerance().gapM();
    for (int e : water.edgesAt(at(end), reach)) {
      if (e != end / 2 && water.lines.get(e) != null && water.isLevel(e)) {
        ends.add(water.edge(e).from().distance(at(end)) <= reach ? 2 * e : 2 * e + 1);
      }
    }
    return ends;
  }

  /** Gives each level line its exits. */
  void connect() {
    for (int e : edges) {
      BoundaryEdge edge = water.edge(e);
      double first = way.getOrDefault(2 * e, Double.POSITIVE_INFINITY);
      double last = way.getOrDefault(2 * e + 1, Double.POSITIVE_INFINITY);
      if (Double.isInfinite(first) && Double.isInfinite(last)) {
        continue;
      }
      double l = edge.lengthM();
      double parting = Double.isInfinite(first) || !step.containsKey(2 * e) ? 0
          : Double.isInfinite(last) || !step.containsKey(2 * e + 1) ? l : Math.max(0, Math.min(l, (l + last - first) / 2));
      add(e, parting, 0, step.get(2 * e));
      add(e, l, parting, step.get(2 * e + 1));
    }
  }

  private void add(int e, double to, double from, Landing landing) {
    if (landing != null && to > from) {
      water.lines.get(e).exits.add(new Exit(to, landing.target(), landing.at(), landing.at()));
    }
  }

  /** The level line that ends at a point, if any: what water from elsewhere runs into. */
  Landing at(Vec3 p, int coming) {
    for (double reach : new double[] {water.roof.tolerance().coincidenceM(), water.roof.tolerance().gapM()}) {
      for (int e : water.edgesAt(p, reach)) {
        if (e != coming && water.lines.get(e) != null && water.isLevel(e)) {
          return entering(water.edge(e).from().distance(p) <= reach ? 2 * e : 2 * e + 1);
        }
      }
    }
    return null;
  }
}
