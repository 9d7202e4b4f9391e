package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.hprtree.HPRtree;

/** Finds things by the horizontal extent of their boxes; answers come in the order in which the things were given. */
public final class PlanIndex<T> {

  private record Entry<T>(int order, T thing, Box3 box) {
  }

  private static final Comparator<Entry<?>> BY_ORDER = Comparator.comparingInt(Entry::order);

  /** So many are gone through one by one. */
  private static final int FEW = 12;

  private final List<Entry<T>> entries = new ArrayList<>();
  /** Null where there are few. */
  private final HPRtree tree;

  /** @param box of a thing, metres; things with empty boxes are never found */
  public PlanIndex(Collection<T> things, Function<T, Box3> box) {
    for (T thing : things) {
      Box3 b = box.apply(thing);
      if (!b.isEmpty()) {
        entries.add(new Entry<>(entries.size(), thing, b));
      }
    }
    tree = entries.size() > FEW ? new HPRtree() : null;
    if (tree != null) {
      entries.forEach(e -> tree.insert(envelope(e.box()), e));
      tree.build();
    }
  }

  private static Envelope envelope(Box3 box) {
    return new Envelope(box.minX(), box.maxX(), box.minY(), box.maxY());
  }

  /** Things whose boxes overlap {@code box} in space. */
  public List<T> overlapping(Box3 box) {
    return find(box, e -> e.box().overlaps(box));
  }

  /** Things whose boxes overlap {@code box} in plan. */
  public List<T> overlappingInPlan(Box3 box) {
    return find(box, e -> true);
  }

  private List<T> find(Box3 box, Predicate<Entry<T>> also) {
    if (box.isEmpty()) {
      return List.of();
    }
    if (tree == null) {
      return entries.stream().filter(e -> overlapInPlan(e.box(), box) && also.test(e)).map(Entry::thing).toList();
    }
    List<Entry<T>> found = new ArrayList<>();
    tree.query(envelope(box), o -> {
      @SuppressWarnings("unchecked")
      Entry<T> e = (Entry<T>) o;
      if (also.test(e)) {
        found.add(e);
      }
    });
    found.sort(BY_ORDER);
    return found.stream().map(Entry::thing).toList();
  }

  private static boolean overlapInPlan(Box3 a, Box3 b) {
    return a.minX() <= b.maxX() && b.minX() <= a.maxX() && a.minY() <= b.maxY() && b.minY() <= a.maxY();
  }
}
