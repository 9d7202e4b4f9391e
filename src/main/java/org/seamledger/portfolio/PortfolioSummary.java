package org.seamledger.portfolio;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.finding.Severity;
import org.seamledger.order.OrderTotal;

/** Sums over the models of a portfolio, which are added in their order: a few hundred bytes a model. */
final class PortfolioSummary {

  /** A model as lists show it. */
  record Line(String name, ModelState state, String reason, ModelFigures figures) {

    long findings(Severity severity) {
      return figures == null ? 0 : figures.findings(severity);
    }
  }

  /**
   * Findings of one code.
   *
   * @param model the first that has it
   * @param message what it says there
   */
  record FindingSum(String code, String severity, long findings, long models, String model, String message) {

    FindingSum plus(FindingSum later) {
      return new FindingSum(code, severity, findings + later.findings, models + later.models, model, message);
    }

    private int rank() {
      return -severityOf(severity).ordinal();
    }
  }

  final OrderTotal order = new OrderTotal();
  private final List<Line> lines = new ArrayList<>();
  private final Map<String, KindLength> kinds = new TreeMap<>();
  private final Map<String, FindingSum> findings = new TreeMap<>();
  private final Map<ModelState, Integer> states = new EnumMap<>(ModelState.class);

  void add(ModelEntry entry) {
    lines.add(new Line(entry.name(), entry.state(), entry.reason(), entry.figures()));
    states.merge(entry.state(), 1, Integer::sum);
    entry.kinds().forEach(k -> kinds.merge(k.kind(), k, KindLength::plus));
    order.add(entry.amounts());
    Map<String, FindingSum> here = new TreeMap<>();
    // The first columns of the findings' table: code, severity, message.
    entry.findings().stream().skip(1).forEach(f -> here.merge(f.get(1) + " " + f.get(0),
        new FindingSum(f.get(0), f.get(1), 1, 0, entry.name(), f.get(2)), FindingSum::plus));
    here.forEach((key, sum) -> findings.merge(key,
        new FindingSum(sum.code, sum.severity, sum.findings, 1, sum.model, sum.message), FindingSum::plus));
  }

  private static Severity severityOf(String word) {
    return java.util.Arrays.stream(Severity.values()).filter(s -> s.word().equals(word)).findFirst().orElseThrow();
  }

  List<Line> lines() {
    return lines;
  }

  int count(ModelState state) {
    return states.getOrDefault(state, 0);
  }

  /** Whether a finding is at this severity or above. */
  boolean has(Severity limit) {
    return findings.values().stream().anyMatch(f -> severityOf(f.severity).atLeast(limit));
  }

  /** In the order in which kinds are listed. */
  List<KindLength> kinds() {
    return kinds.values().stream().sorted(Comparator.comparingInt(KindLength::place).thenComparing(KindLength::kind)).toList();
  }

  /** The worst first, then what most models have. */
  List<FindingSum> findings() {
    return findings.values().stream().sorted(Comparator.comparingInt(FindingSum::rank).thenComparing(FindingSum::models,
        Comparator.reverseOrder()).thenComparing(FindingSum::code)).toList();
  }

  /** The models with a result that have the worst findings, the worst first. */
  List<Line> worst() {
    return lines.stream().filter(l -> l.state == ModelState.DONE)
        .sorted(Comparator.comparingLong((Line l) -> -l.findings(Severity.VIOLATION))
            .thenComparingLong(l -> -l.findings(Severity.WARNING)).thenComparing(Line::name))
        .toList();
  }
}
