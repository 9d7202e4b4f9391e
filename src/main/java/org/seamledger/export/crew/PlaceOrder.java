package org.seamledger.export.crew;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.sequence.JobSequence;
import org.seamledger.sequence.PlacedHoldPoint;
import org.seamledger.sequence.Step;

/** The order of work at each place: its steps, and what is looked at before them, also before steps elsewhere that cover it. */
public final class PlaceOrder {

  private final JobSequence sequence;
  private final Map<String, Integer> rank = new HashMap<>();
  private final Map<String, List<Step>> steps = new HashMap<>();

  /** Either a step or a hold point; the other is null. */
  public record Item(Step step, PlacedHoldPoint point) {
  }

  public PlaceOrder(JobSequence sequence) {
    this.sequence = sequence;
    for (Step s : sequence.steps()) {
      rank.put(s.id(), rank.size());
      steps.computeIfAbsent(s.place(), p -> new ArrayList<>()).add(s);
    }
  }

  /** Steps and hold points of a place in the order of work; hold points for which nothing waits come last. */
  public List<Item> items(String place) {
    TreeMap<Double, List<Item>> all = new TreeMap<>();
    for (Step s : steps.getOrDefault(place, List.of())) {
      all.computeIfAbsent((double) rank.get(s.id()), k -> new ArrayList<>()).add(new Item(s, null));
    }
    for (PlacedHoldPoint h : sequence.holdPoints(place)) {
      double at = h.steps().stream().mapToDouble(rank::get).min().orElse(rank.size()) - 0.5;
      all.computeIfAbsent(at, k -> new ArrayList<>()).add(new Item(null, h));
    }
    return all.values().stream().flatMap(List::stream).toList();
  }

  /** Ids of the steps at other places that must be done before steps of this one, sorted. */
  public List<String> waitsFor(String place) {
    return steps.getOrDefault(place, List.of()).stream().flatMap(s -> s.after().stream()).filter(id -> !id.startsWith(place + "/"))
        .distinct()
        .sorted().toList();
  }
}
