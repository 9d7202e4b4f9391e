package org.seamledger.detail;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;

/**
 * Puts what people chose in the place of what the rules say. Geometry and ids stay; a chosen kind gets the detail that the rules choose
 * for it, unless the detail is chosen, too. Whatever has no effect, or fits badly, becomes a finding.
 */
public final class Decisions {

  private final Kinds kinds;
  private final Details details;
  private final Function<KindedJunction, Map<String, ?>> facts;
  private final List<DetailedJunction> junctions = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();

  private Decisions(Kinds kinds, Details details, Function<KindedJunction, Map<String, ?>> facts) {
    this.kinds = kinds;
    this.details = details;
    this.facts = facts;
  }

  /**
   * Kinds and details with the decisions in force, and the findings that then hold.
   *
   * @param facts as for {@link Details#choose}
   * @param byRules what the rules alone chose, and their findings of kinds and details together
   * @throws IllegalArgumentException where two decisions are about one junction, or one chooses a kind that there is not
   */
  public static Details.Result apply(List<Decision> decisions, Details.Result byRules, Kinds kinds, Details details,
      Function<KindedJunction, Map<String, ?>> facts) {
    if (decisions.isEmpty()) {
      return byRules;
    }
    Decisions all = new Decisions(kinds, details, facts);
    all.apply(byId(decisions), byRules);
    return new Details.Result(all.junctions, all.findings);
  }

  private static Map<String, Decision> byId(List<Decision> decisions) {
    Map<String, Decision> byId = new LinkedHashMap<>();
    for (Decision d : decisions) {
      if (byId.put(d.junction(), d) != null) {
        throw new IllegalArgumentException("two decisions are about junction " + d.junction());
      }
    }
    return byId;
  }

  private void apply(Map<String, Decision> decisions, Details.Result byRules) {
    Set<String> done = new TreeSet<>();
    for (DetailedJunction j : byRules.junctions()) {
      Decision decision = decisions.remove(j.junction().junction().id());
      DetailedJunction now = decision == null ? j : decide(j, decision);
      junctions.add(now);
      now.decided().ifPresent(d -> done.add(j.junction().junction().id()));
    }
    // What the rules had to say of a junction goes with what they chose for it.
    byRules.findings().stream().filter(f -> !done.contains(f.junction())).forEach(findings::add);
    decisions.values().forEach(d -> findings.add(Finding.of(Code.DECISION_WITHOUT_JUNCTION,
        "a decision is about junction " + d.junction() + ", which this roof doesn't have")));
  }

  private DetailedJunction decide(DetailedJunction byRules, Decision decision) {
    boolean known = decision.detail().isEmpty() || isDetail(decision.detail());
    if (!known) {
      findings.add(
          at(byRules.junction(), Code.UNKNOWN_DETAIL, "the rules have no detail \"" + decision.detail() + "\", which was chosen for this "
              + byRules.junction().kind() + "; the rules' choice stands"));
    }
    String chosenDetail = known ? decision.detail() : "";
    if (decision.kind().isEmpty() && chosenDetail.isEmpty()) {
      return byRules;
    }
    KindedJunction kinded = decision.kind().isEmpty() ? byRules.junction()
        : new KindedJunction(byRules.junction().junction(), kinds.book().kind(decision.kind()), byRules.junction().explanation());
    Decided decided = new Decided(decision.kind(), chosenDetail, decision.reason(), byRules.junction().kind(), byRules.detail().id());
    DetailedJunction now = new DetailedJunction(kinded, detail(kinded, chosenDetail, byRules), Optional.of(decided));
    findings.add(at(kinded, Code.CHOSEN_BY_HAND, message(now, decided)));
    return now;
  }

  private boolean isDetail(String id) {
    return id.equals(Detail.NONE.id()) || details.book().containsKey(id);
  }

  private Detail detail(KindedJunction kinded, String chosen, DetailedJunction byRules) {
    if (chosen.isEmpty()) {
      Details.Result found = details.choose(List.of(kinded), facts);
      findings.addAll(found.findings());
      if (kinded.kind().equals(Kinds.UNCLASSIFIED)) {
        findings.add(at(kinded, Code.UNCLASSIFIED, "set to unclassified by manual override: its kind is still to be decided"));
      }
      return found.junctions().get(0).detail();
    }
    if (chosen.equals(Detail.NONE.id())) {
      return Detail.NONE;
    }
    if (details.isForAnotherKind(chosen, kinded, facts.apply(kinded))) {
      findings.add(at(kinded, Code.UNFIT_DETAIL, "detail " + chosen + ", a manual override, is no detail of a " + kinded.kind()
          + ": it " + String.join(", and ", details.misses(chosen, kinded, facts.apply(kinded)))));
    }
    return details.book().get(chosen).askedBy(facts.apply(kinded));
  }

  private String message(DetailedJunction now, Decided decided) {
    String follows = decided.detail().isEmpty() ? "; the rules then choose detail " + now.detail().id() : "";
    List<String> misses = decided.kind().isEmpty() || decided.kind().equals(decided.kindByRules()) ? List.of()
        : kinds.misses(decided.kind(), now.junction().junction().facts());
    String asked = misses.isEmpty() ? "" : ". The rules' " + decided.kind() + " " + String.join(", and ", misses);
    return "manual override: " + decided.words() + follows + asked + ". Reason: " + decided.reason().strip();
  }

  private static Finding at(KindedJunction j, Code code, String message) {
    return Finding.of(code, message, j.junction().elements()).at(j.junction().id());
  }
}
