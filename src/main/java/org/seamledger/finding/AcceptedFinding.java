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
   * The findings in the same order, accepted where somebody did so; and a note for each acceptance that is for none of them. One finding
   * for several places is accepted, too, where it was when it had more of them, or where it was at each place by itself.
   *
   * @param findings in a result's order, each once
   */
  public static List<Finding> mark(List<Finding> findings, List<AcceptedFinding> accepted) {
    Map<Key, AcceptedFinding> byKey = new HashMap<>();
    accepted.forEach(a -> byKey.putIfAbsent(a.key(), a));
    Map<Key, Integer> seen = new HashMap<>();
    Set<Key> used = new HashSet<>();
    List<Finding> marked = new ArrayList<>();
    for (Finding f : findings) {
      int occurrence = seen.merge(new Key(f.code(), f.junction(), f.elements(), 1), 1, Integer::sum);
      AcceptedFinding exact = byKey.get(new Key(f.code(), f.junction(), f.elements(), occurrence));
      List<AcceptedFinding> by = exact != null ? List.of(exact) : f.junctions().isEmpty() ? List.of() : ofPlaces(f, accepted);
      by.forEach(a -> used.add(a.key()));
      boolean all = exact != null || by.stream().anyMatch(a -> a.elements.containsAll(f.elements()))
          || f.junctions().stream().allMatch(j -> by.stream().anyMatch(a -> a.junction.equals(j)));
      marked.add(by.isEmpty() || !all ? f : f.accepted(by.get(0).acceptance()));
    }
    accepted.stream().filter(a -> !used.contains(a.key())).map(AcceptedFinding::unused).forEach(marked::add);
    return marked;
  }

  /** Acceptances of the same finding at some of its places, where it has several or had them. */
  private static List<AcceptedFinding> ofPlaces(Finding f, List<AcceptedFinding> accepted) {
    return accepted.stream().filter(a -> a.code.equals(f.code()) && (f.junctions().size() > 1 && f.junctions().contains(a.junction)
        || a.elements.size() > f.elements().size() && a.elements.containsAll(f.elements()))).toList();
  }

  private Finding unused() {
    String where = junction.isEmpty() ? "" : " at junction " + junction;
    return Finding.of(Code.ACCEPTED_WITHOUT_FINDING, acceptance.by() + " accepted " + code + where
        + (occurrence > 1 ? " for the " + occurrence + ". time" : "") + ", which this result doesn't have", elements);
  }
}
