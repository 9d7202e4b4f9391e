package org.seamledger.export.wording;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.finding.Finding;

/** Findings as people read them: the worst first, those of one code together. The page groups them in the same way. */
public final class FindingGroups {

  private FindingGroups() {
  }

  /** Findings of one severity and code together, groups and findings in the order in which they came. */
  public static List<List<Finding>> of(List<Finding> findings) {
    Map<String, List<Finding>> groups = new LinkedHashMap<>();
    findings.forEach(f -> groups.computeIfAbsent(f.severity() + f.code(), key -> new ArrayList<>()).add(f));
    return List.copyOf(groups.values());
  }
}
