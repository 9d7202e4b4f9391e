package org.seamledger.ledger;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.seamledger.finding.Severity;

/**
 * Findings of two results set side by side. A finding stays the same where code, junction and elements do, though the figures in its
 * message differ; of several that agree in these the first is the first.
 */
record FindingChanges(List<Comparison.Found> added, List<Comparison.Kept> kept, List<Comparison.Found> gone) {

  FindingChanges {
    added = List.copyOf(added);
    kept = List.copyOf(kept);
    gone = List.copyOf(gone);
  }

  /** @param idBefore what junctions of the newer result are called in the older one */
  static FindingChanges of(ResultOutline older, ResultOutline newer, Map<String, String> idBefore) {
    List<LedgerReader.Found> before = older.findings();
    List<LedgerReader.Found> after = newer.findings();
    Map<String, Deque<LedgerReader.Found>> left = new LinkedHashMap<>();
    before.forEach(f -> left.computeIfAbsent(f.key(), k -> new ArrayDeque<>()).add(f));
    List<Comparison.Found> added = new ArrayList<>();
    List<LedgerReader.Found> unmatched = new ArrayList<>();
    Map<LedgerReader.Found, LedgerReader.Found> pairs = new IdentityHashMap<>();
    for (LedgerReader.Found f : after) {
      Deque<LedgerReader.Found> same = left.get(f.key(idBefore.getOrDefault(text(f.junction()), text(f.junction()))));
      if (same == null || same.isEmpty()) {
        unmatched.add(f);
      } else {
        pairs.put(f, same.poll());
      }
    }
    Set<String> roofs = older.roofElements();
    roofs.addAll(newer.roofElements());
    moved(left, unmatched, idBefore, roofs, pairs);
    fewerPlaces(left, unmatched, idBefore, pairs);
    List<Comparison.Kept> kept = after.stream().filter(pairs::containsKey).map(f -> new Comparison.Kept(found(pairs.get(f)), found(f)))
        .toList();
    unmatched.stream().filter(f -> !pairs.containsKey(f)).map(FindingChanges::found).forEach(added::add);
    // What is left over of a key are its last ones, and the same object stands in both lists.
    Set<LedgerReader.Found> over = Collections.newSetFromMap(new IdentityHashMap<>());
    left.values().forEach(over::addAll);
    List<Comparison.Found> gone = before.stream().filter(over::contains).map(FindingChanges::found).toList();
    return new FindingChanges(added, kept, gone);
  }

  /**
   * A finding about a thing on the roof, such as a chimney, stands at one of the lines around it. Where the thing changes it may stand at
   * another one: it is the same as long as both lines are in both results.
   */
  private static void moved(Map<String, Deque<LedgerReader.Found>> left, List<LedgerReader.Found> unmatched, Map<String, String> idBefore,
      Set<String> roofs, Map<LedgerReader.Found, LedgerReader.Found> pairs) {
    Set<String> stillThere = new HashSet<>(idBefore.values());
    Map<String, Deque<LedgerReader.Found>> byThing = new HashMap<>();
    left.values().stream().flatMap(Deque::stream).filter(f -> stillThere.contains(text(f.junction())) && isAboutAThing(f, roofs))
        .forEach(f -> byThing.computeIfAbsent(f.key(""), k -> new ArrayDeque<>()).add(f));
    for (LedgerReader.Found f : unmatched) {
      Deque<LedgerReader.Found> same = byThing.get(f.key(""));
      if (same != null && !same.isEmpty() && idBefore.containsKey(text(f.junction()))) {
        LedgerReader.Found old = same.poll();
        pairs.put(f, old);
        left.get(old.key()).removeIf(g -> g == old);
      }
    }
  }

  /** A finding for several places is the same when it has lost some of them, and another one when it has new ones. */
  private static void fewerPlaces(Map<String, Deque<LedgerReader.Found>> left, List<LedgerReader.Found> unmatched,
      Map<String, String> idBefore, Map<LedgerReader.Found, LedgerReader.Found> pairs) {
    for (LedgerReader.Found f : unmatched) {
      List<String> places = f.places().stream().map(id -> idBefore.getOrDefault(id, id)).toList();
      left.values().stream().flatMap(Deque::stream).filter(g -> !pairs.containsKey(f) && text(g.code()).equals(text(f.code()))
          && g.places().size() > places.size() && !places.isEmpty() && g.places().containsAll(places)).findFirst().ifPresent(g -> {
            pairs.put(f, g);
            left.get(g.key()).removeIf(o -> o == g);
          });
    }
  }

  private static boolean isAboutAThing(LedgerReader.Found f, Set<String> roofs) {
    return f.elements() != null && !roofs.containsAll(f.elements());
  }

  List<Comparison.Found> worse(Severity limit) {
    List<Comparison.Found> worse = new ArrayList<>();
    added.stream().filter(f -> !f.accepted() && isAt(f, limit)).forEach(worse::add);
    kept.stream().filter(k -> !k.after().accepted() && isAt(k.after(), limit) && !isAt(k.before(), limit)).map(Comparison.Kept::after)
        .forEach(worse::add);
    return worse;
  }

  /** A word that is none of the severities is another program's; it counts as the worst, lest a gate stay open by it. */
  private static boolean isAt(Comparison.Found f, Severity limit) {
    for (Severity s : Severity.values()) {
      if (s.word().equals(f.severity().toLowerCase(Locale.ROOT))) {
        return s.atLeast(limit);
      }
    }
    return true;
  }

  private static Comparison.Found found(LedgerReader.Found f) {
    return new Comparison.Found(text(f.code()), text(f.severity()), text(f.message()), text(f.junction()),
        f.elements() == null ? List.of() : f.elements(), f.accepted() != null && f.accepted().isObject());
  }

  private static String text(String s) {
    return s == null ? "" : s;
  }
}
