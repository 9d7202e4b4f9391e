package org.seamledger.order.stock;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Finds a plan of few bars for sizes in descending order. */
final class BarSearch {

  /** Steps of the exact search, and of the search for one bar's least slack: some milliseconds. */
  private static final int EXACT_STEPS = 200_000;
  private static final int BAR_STEPS = 4_000;
  private static final int MOST_FOR_SLACK = 3_000;
  private static final int MOST_FOR_EXACT = 60;

  private final long[] sizes;
  private final long capacity;
  private int steps;
  private int target;
  private int[] barOf;
  private long[] free;

  private BarSearch(long[] sizes, long capacity) {
    this.sizes = sizes;
    this.capacity = capacity;
  }

  static List<List<Integer>> best(long[] sizes, long capacity, int bound) {
    BarSearch search = new BarSearch(sizes, capacity);
    List<List<Integer>> best = search.bestFit();
    if (best.size() > bound && sizes.length <= MOST_FOR_SLACK) {
      List<List<Integer>> slack = search.leastSlack();
      best = slack.size() < best.size() ? slack : best;
    }
    while (best.size() > bound && sizes.length <= MOST_FOR_EXACT) {
      List<List<Integer>> exact = search.within(best.size() - 1);
      if (exact.isEmpty()) {
        break;
      }
      best = exact;
    }
    return best;
  }

  private List<List<Integer>> bestFit() {
    List<List<Integer>> bars = new ArrayList<>();
    TreeMap<Long, Deque<Integer>> byRoom = new TreeMap<>();
    for (int i = 0; i < sizes.length; i++) {
      Map.Entry<Long, Deque<Integer>> fit = byRoom.ceilingEntry(sizes[i]);
      long room = fit == null ? capacity : fit.getKey();
      int bar = fit == null ? bars.size() : fit.getValue().remove();
      if (fit == null) {
        bars.add(new ArrayList<>());
      } else if (fit.getValue().isEmpty()) {
        byRoom.remove(fit.getKey());
      }
      bars.get(bar).add(i);
      byRoom.computeIfAbsent(room - sizes[i], k -> new ArrayDeque<>()).add(bar);
    }
    return bars;
  }

  // ---- least slack

  private List<List<Integer>> leastSlack() {
    List<Integer> left = new ArrayList<>();
    for (int i = 0; i < sizes.length; i++) {
      left.add(i);
    }
    List<List<Integer>> bars = new ArrayList<>();
    while (!left.isEmpty()) {
      List<Integer> chosen = new ArrayList<>(List.of(left.get(0)));
      SlackSearch bar = new SlackSearch(left, capacity - sizes[left.get(0)]);
      bar.go(1, bar.least, new ArrayList<>());
      chosen.addAll(bar.best);
      bars.add(chosen);
      left.removeAll(new java.util.HashSet<>(chosen));
    }
    return bars;
  }

  private final class SlackSearch {
    private final List<Integer> left;
    private long least;
    private List<Integer> best = List.of();
    private int tried;

    SlackSearch(List<Integer> left, long room) {
      this.left = left;
      this.least = room;
    }

    void go(int from, long room, List<Integer> taken) {
      if (room < least || taken.isEmpty()) {
        least = room;
        best = List.copyOf(taken);
      }
      for (int i = from; i < left.size() && least > 0 && tried < BAR_STEPS; i++) {
        long size = sizes[left.get(i)];
        boolean same = i > from && size == sizes[left.get(i - 1)];
        if (size <= room && !same) {
          tried++;
          taken.add(left.get(i));
          go(i + 1, room - size, taken);
          taken.remove(taken.size() - 1);
        }
      }
    }
  }

  // ---- exact

  /** A plan of at most so many bars; empty where there is none, or none was found in so many steps. */
  private List<List<Integer>> within(int bars) {
    steps = 0;
    target = bars;
    barOf = new int[sizes.length];
    free = new long[bars];
    java.util.Arrays.fill(free, capacity);
    long slack = bars * capacity - java.util.Arrays.stream(sizes).sum();
    if (slack < 0 || !place(0, 0)) {
      return List.of();
    }
    List<List<Integer>> plan = new ArrayList<>();
    for (int b = 0; b < bars; b++) {
      List<Integer> bar = new ArrayList<>();
      for (int i = 0; i < sizes.length; i++) {
        if (barOf[i] == b) {
          bar.add(i);
        }
      }
      if (!bar.isEmpty()) {
        plan.add(bar);
      }
    }
    return plan;
  }

  private boolean place(int i, int open) {
    if (i == sizes.length) {
      return true;
    }
    for (int b = 0; b < Math.min(target, open + 1); b++) {
      if (free[b] >= sizes[i] && !roomSeen(b) && steps++ < EXACT_STEPS) {
        free[b] -= sizes[i];
        barOf[i] = b;
        if (place(i + 1, Math.max(open, b + 1))) {
          return true;
        }
        free[b] += sizes[i];
      }
    }
    return false;
  }

  /** Bars with the same room are the same. */
  private boolean roomSeen(int bar) {
    for (int b = 0; b < bar; b++) {
      if (free[b] == free[bar]) {
        return true;
      }
    }
    return false;
  }
}
