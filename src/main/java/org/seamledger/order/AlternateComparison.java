package org.seamledger.order;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.finding.Finding;

/**
 * Several alternates side by side; the first is what the others are compared with.
 *
 * @param lines every line of any order, by group
 * @param findings every finding of any alternate
 */
public record AlternateComparison(List<Alternate> alternates, List<OrderLine> lines, Map<String, Finding> findings) {

  /** @throws IllegalArgumentException where there are none */
  public static AlternateComparison of(List<Alternate> alternates) {
    if (alternates.isEmpty()) {
      throw new IllegalArgumentException("nothing to compare");
    }
    Map<String, OrderLine> lines = new LinkedHashMap<>();
    Map<String, Finding> findings = new TreeMap<>();
    for (Alternate a : alternates) {
      a.order().lines().forEach(l -> lines.putIfAbsent(l.id(), l));
      a.findings().forEach(findings::putIfAbsent);
    }
    List<OrderLine> sorted = new ArrayList<>(lines.values());
    sorted.sort(java.util.Comparator.comparing(OrderLine::group));
    return new AlternateComparison(List.copyOf(alternates), List.copyOf(sorted), findings);
  }

  /** What a finding does from the first alternate to another: {@code stays}, {@code comes}, {@code goes}; {@code none} in neither. */
  public String change(String finding, Alternate to) {
    boolean before = alternates.get(0).findings().containsKey(finding);
    boolean after = to.findings().containsKey(finding);
    return before ? after ? "stays" : "goes" : after ? "comes" : "none";
  }
}
