package org.seamledger.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.export.wording.FindingAdvice;
import org.seamledger.export.wording.OneLine;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Severity;
import org.seamledger.ids.Specification;
import org.seamledger.ids.check.DocumentResult;
import org.seamledger.ids.check.FailedElement;
import org.seamledger.ids.check.SpecificationResult;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Takeoff;

/**
 * What a gate says of one model, or of several that are one building: by its findings, or by specifications.
 *
 * @param files as they were named to the program, at least one
 * @param problem why it can't be read; empty where it was
 * @param rules what was asked of it, whether or not it failed; empty where only {@code issues} say
 */
public record GateModel(List<String> files, Optional<String> problem, List<Rule> rules, List<Issue> issues) {

  /** How a model stands. */
  public enum Status {
    PASS, FAIL, UNREADABLE
  }

  /** What can fail: the code of a finding, or a specification. */
  public record Rule(String id, String name, String reason, String action) {
  }

  /** An element that an issue is about; {@code file} as the model was named to the program. */
  public record Concerned(String globalId, String ifcClass, String name, String storey, String file) {
  }

  /** One thing that is wrong. */
  public record Issue(Rule rule, Severity severity, String message, String junction, List<Concerned> elements,
      Optional<Acceptance> accepted) {
    public Issue {
      elements = List.copyOf(elements);
    }

    boolean isUnused() {
      return rule.id().equals(Code.DECISION_WITHOUT_JUNCTION.id()) || rule.id().equals(Code.ACCEPTED_WITHOUT_FINDING.id());
    }

    /** Whether it keeps a gate shut that is shut by this severity. */
    boolean counts(Severity limit) {
      return accepted.isEmpty() && severity.atLeast(limit);
    }
  }

  public GateModel {
    files = List.copyOf(files);
    rules = List.copyOf(rules);
    issues = List.copyOf(issues);
  }

  public static GateModel unreadable(String name, String problem) {
    return new GateModel(List.of(name), Optional.of(problem), List.of(), List.of());
  }

  /** @param files what the models were named to the program, in their order */
  public static GateModel of(Takeoff takeoff, List<String> files) {
    List<Issue> issues = takeoff.findings().stream().map(f -> issue(takeoff, f, files)).toList();
    return new GateModel(files, Optional.empty(), List.of(), issues);
  }

  private static Issue issue(Takeoff takeoff, Finding f, List<String> files) {
    Rule rule = new Rule(f.code(), f.code(), OneLine.of(FindingAdvice.reason(takeoff, f.code())),
        OneLine.of(FindingAdvice.action(takeoff, f.code())));
    List<Concerned> elements = new ArrayList<>();
    for (ElementNames.Detail d : ElementNames.details(takeoff, f.elements())) {
      ElementLabel e = d.label();
      elements.add(new Concerned(e.globalId(), e.ifcClass(), e.name(), e.storey(), files.get(Math.min(e.model(), files.size() - 1))));
    }
    return new Issue(rule, f.severity(), OneLine.of(f.message()), f.junction(), elements, f.acceptance());
  }

  public static GateModel of(List<String> files, List<DocumentResult> results) {
    List<Rule> rules = new ArrayList<>();
    List<Issue> issues = new ArrayList<>();
    for (DocumentResult document : results) {
      document.document().problems().forEach(p -> {
        Rule valid = new Rule(OneLine.of(document.document().file()), "is a valid IDS file", "", "");
        issues.add(new Issue(valid, Severity.VIOLATION, OneLine.of(p.text()), "", List.of(), Optional.empty()));
        if (!rules.contains(valid)) {
          rules.add(valid);
        }
      });
      for (SpecificationResult result : document.specifications()) {
        Rule rule = rule(document, result.specification(), rules);
        rules.add(rule);
        result.elements().forEach(e -> issues.add(issue(rule, e, file(e.model(), files))));
        if (!result.passes() && result.elements().isEmpty()) {
          issues
              .add(new Issue(rule, Severity.VIOLATION, OneLine.of(rule.name() + ": " + result.reason()), "", List.of(), Optional.empty()));
        }
      }
    }
    return new GateModel(files, Optional.empty(), rules, issues);
  }

  /** A file may have two specifications of one name: the second is told from the first. */
  private static Rule rule(DocumentResult document, Specification s, List<Rule> before) {
    String own = s.identifier().isBlank() ? s.name() : s.identifier();
    String file = document.document().file().replace('\\', '/');
    String id = OneLine.of(file.substring(file.lastIndexOf('/') + 1) + "/" + own);
    long same = before.stream().filter(r -> r.id().equals(id) || r.id().startsWith(id + " (")).count();
    return new Rule(same == 0 ? id : id + " (" + (same + 1) + ")", OneLine.of(s.name()), OneLine.of(s.description()),
        OneLine.of(s.instructions()));
  }

  /** As the model was named to the program. */
  private static String file(String bare, List<String> files) {
    return files.stream().filter(f -> f.equals(bare) || f.replace('\\', '/').endsWith("/" + bare)).findFirst().orElse(files.get(0));
  }

  private static Issue issue(Rule rule, FailedElement e, String file) {
    String id = e.globalId().isEmpty() ? "#" + e.instance() : e.globalId();
    String message = OneLine.of(e.ifcClass() + " " + id + (e.name().isEmpty() ? " " : " '" + e.name() + "' ") + e.reason());
    return new Issue(rule, Severity.VIOLATION, message, "", List.of(new Concerned(id, e.ifcClass(), e.name(), "", file)),
        Optional.empty());
  }

  /** The files, for people. */
  String name() {
    return String.join(", ", files);
  }

  /** @param limit severity from which on an issue that nobody accepted shuts the gate; empty: it stays open */
  public Status status(Optional<Severity> limit) {
    return problem.isPresent() ? Status.UNREADABLE
        : limit.isPresent() && issues.stream().anyMatch(i -> i.counts(limit.get())) ? Status.FAIL : Status.PASS;
  }

  /**
   * The same models without the issues that are other models' own: what somebody decided about a junction or finding of one model has no
   * effect on the others, and that is no fault of theirs. Where it has none on any of them, each keeps the issue.
   */
  public static List<GateModel> withoutEachOthers(List<GateModel> models) {
    List<Set<String>> unused = models.stream().filter(m -> m.problem().isEmpty()).map(m -> m.issues().stream().filter(Issue::isUnused)
        .map(Issue::message).collect(Collectors.toSet())).toList();
    Predicate<Issue> stays = i -> !i.isUnused() || unused.stream().allMatch(messages -> messages.contains(i.message()));
    return models.stream().map(m -> new GateModel(m.files, m.problem, m.rules, m.issues.stream().filter(stays).toList())).toList();
  }

  long open(Severity severity) {
    return issues.stream().filter(i -> i.severity() == severity && i.accepted().isEmpty()).count();
  }

  long accepted() {
    return issues.stream().filter(i -> i.accepted().isPresent()).count();
  }
}
