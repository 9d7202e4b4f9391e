package org.seamledger.sequence;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Queue;
import java.util.Set;
import java.util.SortedMap;
import org.seamledger.detail.DetailedJunction;

/** Lists steps each after those that it needs (Kahn's algorithm), the first of several by their stage, place and work. */
final class StepOrder {

  /** Tops that differ by less, metres, count as equally high. */
  private static final double LEVEL = 0.5;

  private final RoofPlaces places;
  /** By place, then by work. */
  private final List<StepTable.Draft> drafts;
  private final Map<String, Integer> rankOfFace = new HashMap<>();
  private final List<StepTable.Draft> listed = new ArrayList<>();
  private final List<String> cycle;

  private StepOrder(RoofPlaces places, StepTable table) {
    this.places = places;
    drafts = table.all();
    rankFaces();
    sort();
    cycle = listed.size() == drafts.size() ? List.of() : findCycle();
    if (!cycle.isEmpty()) {
      Set<StepTable.Draft> done = new HashSet<>(listed);
      drafts.stream().filter(d -> !done.contains(d)).forEach(listed::add);
    }
  }

  /** Ids of steps each of which must come before the next, and the last before the first; empty if all is well. */
  static List<String> cycle(RoofPlaces places, StepTable table) {
    // Whether there is one is told without an order.
    return table.hasCycle() ? new StepOrder(places, table).cycle : List.of();
  }

  /** All steps in their order. */
  static List<Step> steps(RoofPlaces places, StepTable table, SortedMap<String, List<PlacedHoldPoint>> holds) {
    return new StepOrder(places, table).steps(holds);
  }

  private void rankFaces() {
    Map<String, Long> tops = new HashMap<>();
    places.faces().keySet().forEach(f -> tops.put(f, -Math.round(places.top(f) / LEVEL)));
    List<String> faces = places.faces().keySet().stream().sorted(Comparator.comparing((String f) -> tops.get(f))
        .thenComparing(String::length).thenComparing(f -> f)).toList();
    faces.forEach(f -> rankOfFace.put(f, rankOfFace.size()));
  }

  /** A line is closed with the last of its faces, a node with the last of its lines' faces. */
  private int rank(String place) {
    Integer own = rankOfFace.get(place);
    if (own != null) {
      return own;
    }
    DetailedJunction line = places.lines().get(place);
    int rank = 0;
    for (String face : line == null ? places.nodes().get(place).node().faces() : line.junction().junction().faces()) {
      rank = Math.max(rank, rankOfFace.getOrDefault(face, 0));
    }
    return rank;
  }

  private void sort() {
    Waiting[] all = new Waiting[drafts.size()];
    String place = "";
    int rank = 0;
    for (int i = 0; i < all.length; i++) {
      StepTable.Draft d = drafts.get(i);
      rank = d.place.equals(place) ? rank : rank(d.place);
      place = d.place;
      d.position = i;
      all[i] = new Waiting(d, rank);
    }
    Queue<Waiting> ready = new PriorityQueue<>();
    for (Waiting w : all) {
      w.draft.after().forEach(e -> all[e.position].next.add(w));
      if (w.open == 0) {
        ready.add(w);
      }
    }
    while (!ready.isEmpty()) {
      Waiting done = ready.poll();
      listed.add(done.draft);
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
      this.open = draft.after().size();
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
    Set<StepTable.Draft> done = new HashSet<>(listed);
    StepTable.Draft at = left(drafts, done);
    Deque<StepTable.Draft> path = new ArrayDeque<>();
    Set<StepTable.Draft> seen = new HashSet<>();
    while (seen.add(at)) {
      path.push(at);
      at = left(at.after(), done);
    }
    List<String> round = new ArrayList<>();
    for (StepTable.Draft step : path) {
      round.add(step.id());
      if (step == at) {
        break;
      }
    }
    return round;
  }

  private static StepTable.Draft left(List<StepTable.Draft> steps, Set<StepTable.Draft> done) {
    return steps.stream().filter(d -> !done.contains(d)).findFirst().orElseThrow();
  }

  private List<Step> steps(SortedMap<String, List<PlacedHoldPoint>> holds) {
    Map<String, List<PlacedHoldPoint>> ofStep = new HashMap<>();
    holds.values().forEach(list -> list.forEach(h -> h.steps().forEach(s -> ofStep.computeIfAbsent(s, k -> new ArrayList<>()).add(h))));
    List<Step> steps = new ArrayList<>(listed.size());
    for (StepTable.Draft d : listed) {
      List<PlacedHoldPoint> before = ofStep.getOrDefault(d.id(), List.of());
      List<String> holdPoints = new ArrayList<>(before.size());
      boolean locked = false;
      for (PlacedHoldPoint h : before) {
        holdPoints.add(h.id());
        locked |= h.locks().equals(d.id());
      }
      List<String> after = new ArrayList<>(d.after().size());
      d.after().forEach(e -> after.add(e.id()));
      steps.add(new Step(d.id(), d.place, d.work, d.amount, after, holdPoints, locked, d.metal(), d.seals(), d.fasteners(), d.panels()));
    }
    return steps;
  }
}
