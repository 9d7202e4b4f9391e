package org.seamledger.journal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** How the work on one roof stands: its junctions and nodes, and all events, in their order. */
public final class SiteRecord {

  /**
   * Lengths of junctions, metres; each line once.
   *
   * @param checkedM of those whose hold points are all settled, signed off or not
   * @param signedM of those that are signed off as they are now
   */
  public record Coverage(double lengthM, double checkedM, double signedM, int openPoints, int conflicts) {
  }

  private final List<PlaceState> places;
  private final List<SiteEvent> events;

  private SiteRecord(List<PlaceState> places, List<SiteEvent> events) {
    this.places = places;
    this.events = events;
  }

  /** @param events of all revisions of the roof, in their order */
  public static SiteRecord of(List<WorkPlace> places, List<SiteEvent> events) {
    Map<String, List<SiteEvent>> byLine = new HashMap<>();
    events.forEach(e -> byLine.computeIfAbsent(e.line(), l -> new ArrayList<>()).add(e));
    return new SiteRecord(places.stream().map(p -> PlaceState.of(p, byLine.getOrDefault(p.line(), List.of()))).toList(),
        List.copyOf(events));
  }

  public List<PlaceState> places() {
    return places;
  }

  public List<SiteEvent> events() {
    return events;
  }

  /** Number of the last event, 0 where there is none. */
  public long version() {
    return events.isEmpty() ? 0 : events.get(events.size() - 1).seq();
  }

  /** Hash of the last event. */
  public String head() {
    return events.isEmpty() ? EventChain.START : events.get(events.size() - 1).hash();
  }

  /** Events that are about the whole roof, or about a line that this revision no longer has. */
  public List<SiteEvent> elsewhere() {
    Set<String> lines = places.stream().map(p -> p.place().line()).collect(Collectors.toSet());
    return events.stream().filter(e -> !lines.contains(e.line())).toList();
  }

  public Coverage coverage() {
    double length = 0;
    double checked = 0;
    double signed = 0;
    int open = 0;
    int conflicts = 0;
    for (PlaceState p : places) {
      PlaceState.Stage stage = p.stage();
      length += p.place().lengthM();
      signed += stage == PlaceState.Stage.SIGNED ? p.place().lengthM() : 0;
      checked += stage == PlaceState.Stage.SIGNED || stage == PlaceState.Stage.CHECKED ? p.place().lengthM() : 0;
      open += p.open().size();
      conflicts += stage == PlaceState.Stage.CONFLICT ? 1 : 0;
    }
    return new Coverage(length, checked, signed, open, conflicts);
  }
}
