package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;

/** Finds things by the horizontal extent of their boxes; answers come in the order in which the things were given. */
public final class PlanIndex<T> {

  private record Entry<T>(int order, T thing, Box3 box) {
  }

  private final STRtree tree = new STRtree();

  /** @param box of a thing, metres; things with empty boxes are never found */
  public PlanIndex(Collection<T> things, Function<T, Box3> box) {
    int order = 0;
    for (T thing : things) {
      Box3 b = box.apply(thing);
      if (!b.isEmpty()) {
        tree.insert(new Envelope(b.minX(), b.maxX(), b.minY(), b.maxY()), new Entry<>(order++, thing, b));
      }
    }
    tree.build();
  }

  /** Things whose boxes overlap {@code box} in space. */
  public List<T> overlapping(Box3 box) {
    return find(box, e -> e.box().overlaps(box));
  }

  /** Things whose boxes overlap {@code box} in plan. */
  public List<T> overlappingInPlan(Box3 box) {
    return find(box, e -> true);
  }

  private List<T> find(Box3 box, java.util.function.Predicate<Entry<T>> also) {
    if (box.isEmpty()) {
      return List.of();
    }
    List<Entry<T>> found = new ArrayList<>();
    for (Object o : tree.query(new Envelope(box.minX(), box.maxX(), box.minY(), box.maxY()))) {
      @SuppressWarnings("unchecked")
      Entry<T> e = (Entry<T>) o;
      if (also.test(e)) {
        found.add(e);
      }
    }
    found.sort(Comparator.comparingInt(Entry::order));
    return found.stream().map(Entry::thing).toList();
  }
}
