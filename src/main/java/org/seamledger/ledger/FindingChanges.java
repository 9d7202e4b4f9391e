package org.seamledger.ledger;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
  static FindingChanges of(List<ResultOutline.Found> before, List<ResultOutline.Found> after, Map<String, String> idBefore) {
    Map<String, Deque<ResultOutline.Found>> left = new HashMap<>();
    before.forEach(f -> left.computeIfAbsent(f.key(), k -> new ArrayDeque<>()).add(f));
    List<Comparison.Found> added = new ArrayList<>();
    List<Comparison.Kept> kept = new ArrayList<>();
    for (ResultOutline.Found f : after) {
      Deque<ResultOutline.Found> same = left.get(f.key(idBefore.getOrDefault(text(f.junction()), text(f.junction()))));
      if (same == null || same.isEmpty()) {
        added.add(found(f));
      } else {
        kept.add(new Comparison.Kept(found(same.poll()), found(f)));
      }
    }
    // What is left over of a key are its last ones, and the same object stands in both lists.
    List<Comparison.Found> gone = before.stream().filter(f -> left.get(f.key()).stream().anyMatch(g -> g == f))
        .map(FindingChanges::found).toList();
    return new FindingChanges(added, kept, gone);
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

  private static Comparison.Found found(ResultOutline.Found f) {
    return new Comparison.Found(text(f.code()), text(f.severity()), text(f.message()), text(f.junction()),
        f.elements() == null ? List.of() : f.elements(), f.accepted() != null && f.accepted().isObject());
  }

  private static String text(String s) {
    return s == null ? "" : s;
  }
}
