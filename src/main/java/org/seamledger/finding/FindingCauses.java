package org.seamledger.finding;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/** One finding a cause: those that say the same of several places become one, with all its places. */
public final class FindingCauses {

  private FindingCauses() {
  }

  /**
   * The findings with those of some codes together. The first in a result's order speaks for the others, with its figures; junctions and
   * elements are those of all.
   *
   * @param once which codes are said once
   */
  public static List<Finding> of(List<Finding> findings, Predicate<String> once) {
    List<Finding> grouped = new ArrayList<>();
    Map<String, List<Finding>> groups = new LinkedHashMap<>();
    for (Finding f : findings.stream().sorted().distinct().toList()) {
      if (once.test(f.code()) && f.remedy().isEmpty() && f.acceptance().isEmpty()) {
        groups.computeIfAbsent(f.code() + " " + f.severity(), k -> new ArrayList<>()).add(f);
      } else {
        grouped.add(f);
      }
    }
    groups.values().forEach(group -> grouped.add(together(group)));
    return grouped;
  }

  private static Finding together(List<Finding> group) {
    Finding first = group.get(0);
    if (group.size() == 1) {
      return first;
    }
    Set<String> junctions = new LinkedHashSet<>();
    Set<String> elements = new LinkedHashSet<>();
    group.forEach(f -> {
      junctions.addAll(f.junctions());
      elements.addAll(f.elements());
    });
    int others = group.size() - 1;
    return new Finding(first.code(), first.severity(), first.message() + "; the same at " + others + (others == 1
        ? " other place" : " other places"), first.junction(), List.copyOf(elements), List.copyOf(junctions), first.remedy(),
        first.acceptance(), group.stream().flatMap(f -> f.remarks().stream()).toList());
  }
}
