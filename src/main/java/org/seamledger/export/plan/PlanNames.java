package org.seamledger.export.plan;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.seamledger.takeoff.Takeoff;

/** How lines are called on a plan: by the beginning of their id, and by a number where the line is too short for words. */
final class PlanNames {

  /** What stands after the id of a junction with a manual override. */
  private static final String OVERRIDDEN = "*";

  private final TreeSet<String> ids = new TreeSet<>();
  private final Set<String> overridden;
  private final Map<String, Integer> tags = new LinkedHashMap<>();

  PlanNames(Takeoff takeoff) {
    takeoff.lines().forEach(j -> ids.add(j.junction().junction().id()));
    overridden = takeoff.decided().stream().map(j -> j.junction().junction().id()).collect(Collectors.toSet());
  }

  /** The beginning of an id that no other junction shares, of four characters or more; a star after it for a manual override. */
  String name(String id) {
    int length = Math.min(4, id.length());
    while (length < id.length() && startsAnother(id, id.substring(0, length))) {
      length++;
    }
    return id.substring(0, length) + (overridden.contains(id) ? OVERRIDDEN : "");
  }

  private boolean startsAnother(String id, String start) {
    String next = ids.ceiling(start);
    String other = id.equals(next) ? ids.higher(id) : next;
    return other != null && other.startsWith(start);
  }

  boolean hasOverrides() {
    return !overridden.isEmpty();
  }

  /** Numbers these junctions from 1, in their order. */
  void number(List<String> short0) {
    short0.forEach(id -> tags.put(id, tags.size() + 1));
  }

  /** The number of a short line; 0 for one with words of its own. */
  int tag(String id) {
    return tags.getOrDefault(id, 0);
  }

  Map<String, Integer> tags() {
    return tags;
  }
}
