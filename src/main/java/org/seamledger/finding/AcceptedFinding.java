package org.seamledger.finding;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * An acceptance and the finding that it is for, by what is the same when a model is exported again: the figures in a message are not.
 *
 * @param junction id, or the empty string
 * @param elements GlobalIds in the finding's order
 * @param occurrence which of the findings that agree in all of this, from 1, in a result's order
 */
public record AcceptedFinding(String code, String junction, List<String> elements, int occurrence, Acceptance acceptance) {

  public AcceptedFinding {
    elements = List.copyOf(elements);
    if (code.isBlank() || occurrence < 1) {
      throw new IllegalArgumentException("an accepted finding has a code, and its occurrence is at least 1");
    }
  }

  /** What tells a finding from others in every export. */
  private record Key(String code, String junction, List<String> elements, int occurrence) {
  }

  private Key key() {
    return new Key(code, junction, elements, occurrence);
  }

  /**
   * The findings in the same order, accepted where somebody did so; and a note for each acceptance that is for none of them.
   *
   * @param findings in a result's order, each once
   */
  public static List<Finding> mark(List<Finding> findings, List<AcceptedFinding> accepted) {
    Map<Key, Acceptance> byKey = new HashMap<>();
    accepted.forEach(a -> byKey.putIfAbsent(a.key(), a.acceptance()));
    Map<Key, Integer> seen = new HashMap<>();
    Set<Key> used = new HashSet<>();
    List<Finding> marked = new ArrayList<>();
    for (Finding f : findings) {
      int occurrence = seen.merge(new Key(f.code(), f.junction(), f.elements(), 1), 1, Integer::sum);
      Key key = new Key(f.code(), f.junction(), f.elements(), occurrence);
      Acceptance acceptance = byKey.get(key);
      marked.add(acceptance == null ? f : f.accepted(acceptance));
      used.add(key);
    }
    accepted.stream().filter(a -> !used.contains(a.key())).map(AcceptedFinding::unused).forEach(marked::add);
    return marked;
  }

  private Finding unused() {
    String where = junction.isEmpty() ? "" : " at junction " + junction;
    return Finding.of(Code.ACCEPTED_WITHOUT_FINDING, acceptance.by() + " accepted " + code + where
        + (occurrence > 1 ? " for the " + occurrence + ". time" : "") + ", which this result doesn't have", elements);
  }
}
