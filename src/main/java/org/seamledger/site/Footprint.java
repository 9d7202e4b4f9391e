package org.seamledger.site;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.TreeMap;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/**
 * What is kept of a model to compare it with others, in the coordinates that all share.
 *
 * @param name file name for people
 * @param marks at most {@link #MOST} of its elements, ordered by GlobalId
 * @param roofs boxes of the roof elements
 * @param storeys elevation by storey name
 * @param anchors placements that another model may have too, by what they are: site, building, grid
 * @param north direction of true north in plan, where the model states it
 * @param map from the model's own world to a map, where it states one
 * @param placed from the model's own world to the shared coordinates
 */
public record Footprint(String name, List<Mark> marks, List<Slope> roofs, Map<String, Double> storeys, Map<String, Transform> anchors,
    Optional<Vec3> north, Optional<MapConversion> map, Transform placed) {

  /** More elements than this say nothing new. */
  public static final int MOST = 20_000;

  public Footprint {
    marks = marks.stream().sorted(Comparator.comparing(Mark::id).thenComparing(Mark::kind)).toList();
    roofs = List.copyOf(roofs);
    storeys = java.util.Collections.unmodifiableMap(new TreeMap<>(storeys));
    anchors = java.util.Collections.unmodifiableMap(new TreeMap<>(anchors));
  }

  /**
   * A plane of a roof element's top.
   *
   * @param normal upward, unit length
   * @param at a point of it
   * @param box of the element
   */
  public record Slope(Vec3 normal, Vec3 at, Box3 box) {
  }

  /** The box that holds the bulk of the model: a few strays far away, such as one element left at the origin, are cut off. */
  Box3 bulk() {
    if (marks.isEmpty()) {
      return Box3.EMPTY;
    }
    Box3 core = new Box3(quantile(0.25, 0), quantile(0.25, 1), quantile(0.25, 2), quantile(0.75, 0), quantile(0.75, 1), quantile(0.75, 2));
    double reach = Math.max(30, 4 * core.diagonal());
    Box3 all = Box3.EMPTY;
    for (Mark m : marks) {
      if (core.grown(reach).overlaps(m.box())) {
        all = all.union(m.box());
      }
    }
    return all;
  }

  private double quantile(double share, int axis) {
    double[] values = marks.stream().mapToDouble(m -> axis == 0 ? m.box().centre().x() : axis == 1 ? m.box().centre().y()
        : m.box().centre().z()).sorted().toArray();
    return values[(int) Math.min(values.length - 1, Math.round(share * (values.length - 1)))];
  }

  /** Collects marks; which of too many it keeps depends on their GlobalIds alone, so that two models keep the same ones. */
  public static final class Collector {

    private record Ranked(int rank, Mark mark) {
    }

    private final PriorityQueue<Ranked> kept = new PriorityQueue<>(
        Comparator.comparingInt(Ranked::rank).thenComparing((Ranked r) -> r.mark().id()).reversed());

    public void add(Mark mark) {
      kept.add(new Ranked(mark.id().hashCode() * 0x9E3779B1, mark));
      if (kept.size() > MOST) {
        kept.poll();
      }
    }

    public List<Mark> marks() {
      List<Mark> marks = new ArrayList<>();
      kept.forEach(r -> marks.add(r.mark()));
      return marks;
    }
  }
}
