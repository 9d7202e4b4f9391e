package org.seamledger.junction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;

/**
 * Junction lines → the points where they end and meet.
 *
 * <ol>
 * <li>Ends of open lines are the clusters to begin with; each pair of ends within the gap tolerance may join two clusters, the nearest
 *     pair first.
 * <li>Two clusters are joined only if every end stays within the tolerance of the middle of all: a row of short lines, each within
 *     reach of the next, is not drawn together into one point.
 * <li>Lines of the same faces that pass a point within the tolerance, and end elsewhere, are met there.
 * </ol>
 */
public final class NodeFinder {

  /** Distances that differ by less (metres) count as equal, so that noise doesn't choose which ends join first. */
  private static final double NOISE = 1e-6;

  private final List<LineEnd> ends = new ArrayList<>();
  private final double gapM;
  private final int[] clusterOf;
  private final List<List<Integer>> clusters = new ArrayList<>();

  private record Pair(int a, int b, long distance) {
  }

  private record Stretch(Junction junction, Vec3 from, Vec3 to) {
  }

  private NodeFinder(List<Junction> junctions, double gapM) {
    this.gapM = gapM;
    junctions.stream().filter(NodeFinder::isOpen).sorted(Comparator.comparing(Junction::id)).forEach(j -> {
      ends.add(new LineEnd(j, true));
      ends.add(new LineEnd(j, false));
    });
    clusterOf = new int[ends.size()];
    for (int i = 0; i < ends.size(); i++) {
      clusterOf[i] = i;
      clusters.add(new ArrayList<>(List.of(i)));
    }
  }

  /**
   * The nodes, ordered by id: each end of each open line is in exactly one.
   *
   * @param gapM each end is within this distance (metres) of its node
   */
  public static List<JunctionNode> find(List<Junction> junctions, double gapM, Progress progress) {
    NodeFinder finder = new NodeFinder(junctions, gapM);
    finder.join();
    return finder.nodes(junctions, progress);
  }

  /** Whether a line has ends: one that closes in itself has none. */
  public static boolean isOpen(Junction j) {
    return j.path().size() < 3 || j.path().get(0).distance(j.path().get(j.path().size() - 1)) > NOISE;
  }

  private void join() {
    List<Integer> all = java.util.stream.IntStream.range(0, ends.size()).boxed().toList();
    PlanIndex<Integer> index = new PlanIndex<>(all, i -> box(i));
    List<Pair> pairs = new ArrayList<>();
    for (int a : all) {
      for (int b : index.overlapping(box(a).grown(gapM))) {
        double distance = ends.get(a).point().distance(ends.get(b).point());
        if (a < b && distance <= gapM) {
          pairs.add(new Pair(a, b, Math.round(distance / NOISE)));
        }
      }
    }
    pairs.sort(Comparator.comparingLong(Pair::distance).thenComparingInt(Pair::a).thenComparingInt(Pair::b));
    pairs.forEach(this::join);
  }

  private Box3 box(int end) {
    return Box3.of(List.of(ends.get(end).point()));
  }

  private void join(Pair pair) {
    int a = clusterOf[pair.a()];
    int b = clusterOf[pair.b()];
    if (a == b) {
      return;
    }
    List<Integer> both = new ArrayList<>(clusters.get(a));
    both.addAll(clusters.get(b));
    Vec3 middle = middle(both);
    if (both.stream().allMatch(i -> ends.get(i).point().distance(middle) <= gapM)) {
      both.forEach(i -> clusterOf[i] = a);
      clusters.set(a, both);
      clusters.set(b, List.of());
    }
  }

  private Vec3 middle(List<Integer> cluster) {
    Vec3 sum = Vec3.ZERO;
    for (int i : cluster.stream().sorted().toList()) {
      sum = sum.plus(ends.get(i).point());
    }
    return sum.times(1.0 / cluster.size());
  }

  private List<JunctionNode> nodes(List<Junction> junctions, Progress progress) {
    List<Stretch> stretches = new ArrayList<>();
    for (Junction j : junctions) {
      for (int i = 1; i < j.path().size(); i++) {
        stretches.add(new Stretch(j, j.path().get(i - 1), j.path().get(i)));
      }
    }
    PlanIndex<Stretch> index = new PlanIndex<>(stretches, s -> Box3.of(List.of(s.from(), s.to())).grown(gapM));
    List<JunctionNode> nodes = new ArrayList<>();
    for (List<Integer> cluster : progress.over(clusters)) {
      if (!cluster.isEmpty()) {
        List<LineEnd> met = cluster.stream().sorted().map(ends::get).toList();
        nodes.add(new JunctionNode("", middle(cluster), met, through(middle(cluster), met, index)));
      }
    }
    return named(nodes);
  }

  private List<Junction> through(Vec3 at, List<LineEnd> met, PlanIndex<Stretch> index) {
    Set<String> ending = met.stream().map(e -> e.junction().id()).collect(Collectors.toSet());
    Set<String> faces = met.stream().flatMap(e -> e.junction().faces().stream()).collect(Collectors.toCollection(HashSet::new));
    return index.overlapping(Box3.of(List.of(at))).stream()
        .filter(s -> !ending.contains(s.junction().id()) && s.junction().faces().stream().anyMatch(faces::contains) && passes(s, at))
        .map(Stretch::junction).distinct().sorted(Comparator.comparing(Junction::id)).toList();
  }

  /** Whether a line comes within the gap of a point, and both its ends are further from it. */
  private boolean passes(Stretch s, Vec3 at) {
    Vec3 way = s.to().minus(s.from());
    double t = Math.max(0, Math.min(1, at.minus(s.from()).dot(way) / Math.max(NOISE * NOISE, way.dot(way))));
    List<Vec3> path = s.junction().path();
    return s.from().towards(s.to(), t).distance(at) <= gapM
        && (!isOpen(s.junction()) || path.get(0).distance(at) > gapM && path.get(path.size() - 1).distance(at) > gapM);
  }

  private static List<JunctionNode> named(List<JunctionNode> nodes) {
    List<JunctionNode> ordered = new ArrayList<>(nodes);
    ordered.replaceAll(n -> n.named(JunctionId.of(n)));
    ordered.sort(Comparator.comparing(JunctionNode::id));
    Map<String, Integer> seen = new HashMap<>();
    ordered.replaceAll(n -> {
      int times = seen.merge(n.id(), 1, Integer::sum);
      return times == 1 ? n : n.named(n.id() + "-" + times);
    });
    return ordered;
  }
}
