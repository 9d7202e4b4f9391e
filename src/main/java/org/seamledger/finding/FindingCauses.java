package org.seamledger.finding;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

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

  /**
   * The findings with those of one code told by another's, where both are found: its places and elements are added to the other's.
   *
   * @param code what follows from the other
   * @param cause the code that says why
   */
  public static List<Finding> under(List<Finding> findings, String code, String cause) {
    Optional<Finding> first = findings.stream().filter(f -> f.code().equals(cause)).findFirst();
    List<Finding> told = findings.stream().filter(f -> f.code().equals(code)).toList();
    if (first.isEmpty() || told.isEmpty()) {
      return findings;
    }
    Finding teller = first.get();
    List<Finding> all = Stream.concat(Stream.of(teller), told.stream()).toList();
    List<String> junctions = all.stream().flatMap(f -> f.junctions().stream()).distinct().toList();
    Finding whole = new Finding(cause, teller.severity(), teller.message(), junctions.isEmpty() ? "" : junctions.get(0),
        all.stream().flatMap(f -> f.elements().stream()).distinct().toList(), junctions, teller.remedy(), teller.acceptance(),
        all.stream().flatMap(f -> f.remarks().stream()).toList());
    return findings.stream().filter(f -> !told.contains(f)).map(f -> f.equals(teller) ? whole : f).toList();
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
