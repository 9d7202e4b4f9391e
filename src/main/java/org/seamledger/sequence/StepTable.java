package org.seamledger.sequence;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;
import org.seamledger.quantity.layout.Panel;

/** Steps while they are found and put in order: by place, then by work. */
final class StepTable {

  private final Map<String, List<Draft>> byPlace = new HashMap<>();
  /** Works count from 0, as they come. */
  private final Map<String, Integer> numbers = new HashMap<>();

  /** A step to be. */
  static final class Draft {
    final String place;
    final Work work;
    final int number;
    private final String id;
    /** Steps that must be done before it; each once and sorted by id after {@link StepTable#settle}. */
    private final List<Draft> after = new ArrayList<>();
    /** Most steps have none of most. */
    private List<MetalLine> metal = List.of();
    private List<SealLine> seals = List.of();
    private List<FastenerRow> fasteners = List.of();
    private List<Panel> panels = List.of();
    double amount;
    /** While steps are put in order. */
    int position;
    /** While cycles are looked for: whether what it waits for is being followed, or was. */
    private boolean followed;
    private boolean done;

    private Draft(String place, Work work, int number) {
      this.place = place;
      this.work = work;
      this.number = number;
      this.id = place + "/" + work.id();
    }

    String id() {
      return id;
    }

    List<Draft> after() {
      return after;
    }

    List<MetalLine> metal() {
      return metal;
    }

    List<SealLine> seals() {
      return seals;
    }

    List<FastenerRow> fasteners() {
      return fasteners;
    }

    List<Panel> panels() {
      return panels;
    }

    void addMetal(List<MetalLine> more) {
      metal = with(metal, more);
    }

    void addSeals(List<SealLine> more) {
      seals = with(seals, more);
    }

    void addFasteners(List<FastenerRow> more) {
      fasteners = with(fasteners, more);
    }

    void add(Panel panel) {
      if (panels.isEmpty()) {
        panels = new ArrayList<>();
      }
      panels.add(panel);
    }

    private static <T> List<T> with(List<T> some, List<T> more) {
      if (some.isEmpty()) {
        return more;
      }
      List<T> all = new ArrayList<>(some);
      all.addAll(more);
      return all;
    }

    void comesAfter(Draft earlier) {
      after.add(earlier);
    }

    private void settle() {
      if (after.size() < 2) {
        return;
      }
      after.sort(Comparator.comparing(Draft::id));
      int kept = 0;
      for (int i = 0; i < after.size(); i++) {
        if (i == 0 || after.get(i) != after.get(kept - 1)) {
          after.set(kept++, after.get(i));
        }
      }
      after.subList(kept, after.size()).clear();
    }
  }

  /** The step of a work at a place; it is there from now on. */
  Draft at(String place, Work work) {
    List<Draft> there = byPlace.computeIfAbsent(place, p -> new ArrayList<>());
    int i = 0;
    while (i < there.size() && there.get(i).work.compareTo(work) < 0) {
      i++;
    }
    if (i < there.size() && there.get(i).work.compareTo(work) == 0) {
      return there.get(i);
    }
    Draft fresh = new Draft(place, work, numbers.computeIfAbsent(work.id(), id -> numbers.size()));
    there.add(i, fresh);
    return fresh;
  }

  /** The first of some works that there is at a place, or else the first of them; null where there are none. */
  Draft atFirst(String place, List<Work> works) {
    for (Work work : works) {
      for (Draft d : at(place)) {
        if (d.work.compareTo(work) == 0) {
          return d;
        }
      }
    }
    return works.isEmpty() ? null : at(place, works.get(0));
  }

  /** By their works. */
  List<Draft> at(String place) {
    return byPlace.getOrDefault(place, List.of());
  }

  /** The steps of a place whose work has this name. */
  List<Draft> named(String place, String work) {
    List<Draft> named = new ArrayList<>();
    for (Draft d : at(place)) {
      if (d.work.id().equals(work)) {
        named.add(d);
      }
    }
    return named;
  }

  /** How many works there are. */
  int works() {
    return numbers.size();
  }

  /** All steps that wait for others are known from now on. */
  void settle() {
    byPlace.values().forEach(there -> there.forEach(Draft::settle));
  }

  /** Whether steps wait for each other in a circle. */
  boolean hasCycle() {
    for (List<Draft> there : byPlace.values()) {
      for (Draft d : there) {
        if (!d.done && leadsBack(d)) {
          return true;
        }
      }
    }
    return false;
  }

  /** Follows from a step to all that it waits for; steps that were followed to their ends aren't followed again. */
  private static boolean leadsBack(Draft first) {
    Deque<Iterator<Draft>> open = new ArrayDeque<>();
    Deque<Draft> way = new ArrayDeque<>();
    follow(first, way, open);
    while (!way.isEmpty()) {
      if (!open.peek().hasNext()) {
        open.pop();
        way.pop().done = true;
        continue;
      }
      Draft next = open.peek().next();
      if (next.followed && !next.done) {
        return true;
      }
      if (!next.done) {
        follow(next, way, open);
      }
    }
    return false;
  }

  private static void follow(Draft d, Deque<Draft> way, Deque<Iterator<Draft>> open) {
    d.followed = true;
    way.push(d);
    open.push(d.after.iterator());
  }

  List<Draft> all() {
    List<Draft> all = new ArrayList<>();
    byPlace.keySet().stream().sorted().forEach(place -> all.addAll(at(place)));
    return all;
  }
}
