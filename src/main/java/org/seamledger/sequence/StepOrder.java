package org.seamledger.sequence;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import org.seamledger.detail.DetailedJunction;

/** Lists steps each after those that it needs (Kahn's algorithm), the first of several by their stage, place and work. */
final class StepOrder {

  /** Tops that differ by less, metres, count as equally high. */
  private static final double LEVEL = 0.5;

  private final RoofPlaces places;
  private final Map<String, StepTable.Draft> drafts = new LinkedHashMap<>();
  private final Map<String, Integer> rankOfFace = new HashMap<>();
  private final Map<String, Integer> rankOfStep = new HashMap<>();
  private final List<String> listed = new ArrayList<>();
  private final List<String> cycle;

  StepOrder(RoofPlaces places, StepTable table) {
    this.places = places;
    table.all().forEach(d -> drafts.put(d.id(), d));
    List<String> faces = places.faces().keySet().stream().sorted(Comparator.comparingLong((String f) -> -Math.round(places.top(f) / LEVEL))
        .thenComparing(String::length).thenComparing(f -> f)).toList();
    faces.forEach(f -> rankOfFace.put(f, rankOfFace.size()));
    drafts.values().forEach(d -> rankOfStep.put(d.id(), faceRank(d.place)));
    sort();
    cycle = listed.size() == drafts.size() ? List.of() : findCycle();
    if (!cycle.isEmpty()) {
      Set<String> done = new HashSet<>(listed);
      drafts.keySet().stream().filter(id -> !done.contains(id)).forEach(listed::add);
    }
  }

  List<String> cycle() {
    return cycle;
  }

  /** A line is closed with the last of its faces, a node with the last of its lines' faces. */
  private int faceRank(String place) {
    return facesAt(place).stream().mapToInt(f -> rankOfFace.getOrDefault(f, 0)).max().orElse(0);
  }

  private List<String> facesAt(String place) {
    if (rankOfFace.containsKey(place)) {
      return List.of(place);
    }
    DetailedJunction line = places.lines().get(place);
    return line == null ? places.nodes().get(place).node().faces() : line.junction().junction().faces();
  }

  private void sort() {
    Map<String, Waiting> all = new HashMap<>();
    drafts.forEach((id, d) -> all.put(id, new Waiting(d, rankOfStep.get(id))));
    TreeSet<Waiting> ready = new TreeSet<>();
    drafts.keySet().stream().map(all::get).forEach(w -> {
      w.draft.after.forEach(e -> all.get(e).next.add(w));
      if (w.open == 0) {
        ready.add(w);
      }
    });
    while (!ready.isEmpty()) {
      Waiting done = ready.pollFirst();
      listed.add(done.draft.id());
      for (Waiting n : done.next) {
        n.open--;
        if (n.open == 0) {
          ready.add(n);
        }
      }
    }
  }

  /** A step that may wait for others, and those that wait for it. */
  private static final class Waiting implements Comparable<Waiting> {
    private final StepTable.Draft draft;
    private final int rank;
    private final List<Waiting> next = new ArrayList<>();
    private int open;

    Waiting(StepTable.Draft draft, int rank) {
      this.draft = draft;
      this.rank = rank;
      this.open = draft.after.size();
    }

    /** What comes first of what may come now: stage by stage, higher faces first; on a face panels before what stands on them. */
    @Override
    public int compareTo(Waiting o) {
      Work mine = draft.work;
      int c = Integer.compare(mine.stage(), o.draft.work.stage());
      if (c == 0 && mine.stage() <= 2) {
        c = mine.compareTo(o.draft.work);
      }
      c = c != 0 ? c : Integer.compare(rank, o.rank);
      c = c != 0 ? c : mine.compareTo(o.draft.work);
      return c != 0 ? c : draft.id().compareTo(o.draft.id());
    }
  }

  /** Follows from one step that is left to one that it waits for, until one comes again. */
  private List<String> findCycle() {
    Set<String> done = new HashSet<>(listed);
    String at = drafts.keySet().stream().filter(id -> !done.contains(id)).findFirst().orElseThrow();
    Deque<String> path = new ArrayDeque<>();
    Set<String> seen = new HashSet<>();
    while (seen.add(at)) {
      path.push(at);
      at = drafts.get(at).after.stream().filter(id -> !done.contains(id)).findFirst().orElseThrow();
    }
    List<String> round = new ArrayList<>();
    for (String step : path) {
      round.add(step);
      if (step.equals(at)) {
        break;
      }
    }
    return round;
  }

  List<Step> steps(SortedMap<String, List<PlacedHoldPoint>> holds) {
    Map<String, List<PlacedHoldPoint>> ofStep = new HashMap<>();
    holds.values().forEach(list -> list.forEach(h -> h.steps().forEach(s -> ofStep.computeIfAbsent(s, k -> new ArrayList<>()).add(h))));
    return listed.stream().map(id -> {
      StepTable.Draft d = drafts.get(id);
      List<PlacedHoldPoint> before = ofStep.getOrDefault(id, List.of());
      return new Step(id, d.place, d.work, d.amount, List.copyOf(d.after), before.stream().map(PlacedHoldPoint::id).toList(),
          before.stream().anyMatch(h -> h.locks().equals(id)), d.metal, d.seals, d.fasteners, d.panels);
    }).toList();
  }
}
