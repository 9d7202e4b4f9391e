package org.seamledger.detail;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.progress.Progress;
import org.seamledger.shacl.Choice;
import org.seamledger.shacl.Rules;
import org.seamledger.shacl.Verdict;

/** Gives junctions the sealing detail that the rules choose for them. */
public final class Details {

  private final SortedMap<String, Detail> book;
  private final Choice shapes;

  /** @throws org.seamledger.shacl.BrokenRulesException where shapes choose a detail that isn't described, or one wrongly described */
  public Details(Rules rules) {
    shapes = rules.choice("detail");
    book = DetailBook.read(rules);
  }

  /** Junctions in the order given, and what there is to say about them. */
  public record Result(List<DetailedJunction> junctions, List<Finding> findings) {
    public Result {
      junctions = List.copyOf(junctions);
      findings = List.copyOf(findings);
    }

    /** The same, after findings made earlier. */
    public Result with(List<Finding> earlier) {
      return new Result(junctions, Stream.concat(earlier.stream(), findings.stream()).toList());
    }
  }

  /** All details there are, by id. */
  public SortedMap<String, Detail> book() {
    return java.util.Collections.unmodifiableSortedMap(book);
  }

  /** What each detail that there is is called, by id. */
  public SortedMap<String, String> titles() {
    SortedMap<String, String> titles = new TreeMap<>();
    book.forEach((id, detail) -> titles.put(id, detail.title()));
    return titles;
  }

  /**
   * Details of all junctions.
   *
   * @param facts what the rules need to know of a junction besides its line, as {@link org.seamledger.junction.FactList#CHOICE} lists it
   */
  public Result choose(List<KindedJunction> junctions, Function<KindedJunction, Map<String, ?>> facts) {
    return choose(junctions, facts, Progress.NONE);
  }

  /** @param progress receives the progress of the choosing, junction by junction */
  public Result choose(List<KindedJunction> junctions, Function<KindedJunction, Map<String, ?>> facts, Progress progress) {
    List<DetailedJunction> detailed = new ArrayList<>();
    List<Finding> findings = new ArrayList<>();
    for (KindedJunction j : progress.over(junctions)) {
      Map<String, Object> all = facts(j, facts.apply(j));
      List<String> chosen = shapes.decide(all);
      detailed.add(new DetailedJunction(j, chosen.size() == 1 ? book.get(chosen.get(0)).askedBy(all) : Detail.NONE));
      if (chosen.size() != 1 && !j.kind().equals(Kinds.UNCLASSIFIED)) {
        findings.add(undecided(j, shapes.explain(all)));
      }
    }
    return new Result(detailed, findings);
  }

  /** What the shape of a detail requires and a junction doesn't give, in words; empty where it conforms. */
  public List<String> misses(String detail, KindedJunction junction, Map<String, ?> facts) {
    return shapes.misses(detail, facts(junction, facts));
  }

  /** Whether the junction's kind is not the one that a detail is meant for. */
  public boolean isForAnotherKind(String detail, KindedJunction junction, Map<String, ?> facts) {
    return shapes.missedFacts(detail, facts(junction, facts)).contains("kind");
  }

  private static Map<String, Object> facts(KindedJunction j, Map<String, ?> more) {
    Map<String, Object> all = new TreeMap<>(j.junction().facts().asMap());
    all.putAll(more);
    all.put("kind", j.kind());
    return all;
  }

  private static Finding undecided(KindedJunction j, Verdict v) {
    String why = v.conforming().isEmpty()
        ? "no detail fits a " + j.kind() + "; the nearest is " + v.nearest() + ", which " + String.join(", and ", v.missed())
        : "several details fit a " + j.kind() + ": " + String.join(", ", v.conforming());
    return Finding.of(Code.NO_DETAIL, why, j.junction().elements()).at(j.junction().id());
  }
}
