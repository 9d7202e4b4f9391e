package org.seamledger.ifc;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.geometry.Box3;

/** Boxes found by where they are in plan. */
final class PlanIndex {

  /** Size of a cell in metres: about a house. */
  private static final double CELL = 16;
  /** A box over more cells than this is kept apart and looked at every time. */
  private static final int MOST = 10_000;

  private final Map<Long, List<Box3>> cells = new HashMap<>();
  private final List<Box3> everywhere = new ArrayList<>();

  void add(Box3 box) {
    if (box.isEmpty()) {
      return;
    }
    if (!each(box, key -> cells.computeIfAbsent(key, k -> new ArrayList<>(2)).add(box))) {
      everywhere.add(box);
    }
  }

  /** True where a box that overlaps this one in plan satisfies the test. */
  boolean any(Box3 box, java.util.function.Predicate<Box3> test) {
    boolean[] found = {everywhere.stream().anyMatch(b -> b.overlapsInPlan(box) && test.test(b))};
    boolean looked = each(box, key -> {
      if (!found[0]) {
        found[0] = cells.getOrDefault(key, List.of()).stream().anyMatch(b -> b.overlapsInPlan(box) && test.test(b));
      }
    });
    return found[0] || !looked && cells.values().stream().flatMap(List::stream).anyMatch(b -> b.overlapsInPlan(box) && test.test(b));
  }

  private static boolean each(Box3 box, java.util.function.LongConsumer consumer) {
    double x0 = Math.floor(box.minX() / CELL);
    double y0 = Math.floor(box.minY() / CELL);
    double x1 = Math.floor(box.maxX() / CELL);
    double y1 = Math.floor(box.maxY() / CELL);
    if (!((x1 - x0 + 1) * (y1 - y0 + 1) <= MOST)) {
      return false;
    }
    for (double x = x0; x <= x1; x++) {
      for (double y = y0; y <= y1; y++) {
        consumer.accept((long) x * 1_000_003L + (long) y);
      }
    }
    return true;
  }
}
