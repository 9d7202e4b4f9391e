package org.seamledger.ifc.entity;

import java.util.List;
import java.util.TreeSet;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;

/** Collects findings, each once, in an order of their own; from several threads. */
public final class Findings {

  private final TreeSet<Finding> all = new TreeSet<>();

  public synchronized void add(Finding finding) {
    all.add(finding);
  }

  public void add(Code code, String message, String... elements) {
    add(Finding.of(code, message, elements));
  }

  public void add(EntityProblem problem, String what, String... elements) {
    add(problem.code(), what + ": " + problem.getMessage(), elements);
  }

  public synchronized List<Finding> all() {
    return List.copyOf(all);
  }
}
