package org.seamledger.sequence;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.shacl.Choice;
import org.seamledger.shacl.Described;
import org.seamledger.shacl.Rules;

/** The rules of {@code shapes/sequence.ttl}: what work there is, and which comes before which. */
public final class WorkRules {

  private static final Set<String> PRECEDENCE = Set.of("precedence", "source");

  private final SortedMap<String, Work> works = new TreeMap<>();
  private final Choice ofParts;
  private final Choice precedence;

  /** @throws org.seamledger.shacl.BrokenRulesException where there are none, or one isn't described */
  public WorkRules(Rules rules) {
    ofParts = rules.choice("work");
    precedence = rules.choice("precedence");
    rules.described("work").forEach((id, d) -> works.put(id, Work.read(id, d)));
    rules.described("precedence").values().forEach(WorkRules::check);
  }

  private static void check(Described d) {
    d.only(PRECEDENCE).label();
    d.word("source");
  }

  /** Works whose shapes these facts conform to, in their order. */
  List<Work> of(Map<String, ?> facts) {
    return ofParts.decide(facts).stream().map(works::get).sorted().toList();
  }

  /** Whether the step that the facts call earlier must come first. */
  boolean inOrder(Map<String, ?> facts) {
    return !precedence.decide(facts).isEmpty();
  }
}
