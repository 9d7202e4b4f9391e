package org.seamledger.export.report;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.seamledger.export.wording.CountText;
import org.seamledger.export.wording.FindingAdvice;
import org.seamledger.export.wording.FindingGroups;
import org.seamledger.export.wording.FindingRisk;
import org.seamledger.export.wording.OneLine;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Severity;
import org.seamledger.takeoff.Takeoff;

/** Findings for people: the worst first, those of one code together, each group with what to do about it. */
public final class FindingsSection {

  /** Of one code; the rest is counted, and stands in the other formats in full. */
  private static final int SHOWN = 8;
  private static final String INDENT = "  ";

  private FindingsSection() {
  }

  /** Such as {@code 1 violation, 2 warnings}; {@code none} where there are none. */
  public static String counts(List<Finding> findings) {
    String counts = Stream.of(Severity.values()).sorted(Comparator.reverseOrder())
        .map(severity -> count(findings, severity)).flatMap(Optional::stream).collect(Collectors.joining(", "));
    long accepted = findings.stream().filter(f -> f.acceptance().isPresent()).count();
    return counts.isEmpty() ? "none" : counts + (accepted == 0 ? "" : "; of them " + accepted + " accepted");
  }

  private static Optional<String> count(List<Finding> findings, Severity severity) {
    int n = (int) findings.stream().filter(f -> f.severity() == severity).count();
    return n == 0 ? Optional.empty() : Optional.of(CountText.of(n, noun(severity)));
  }

  public static String noun(Severity severity) {
    return severity == Severity.INFO ? "note" : severity.word();
  }

  public static void write(Takeoff takeoff, List<Finding> findings, TextPage page) {
    page.title("Findings");
    if (findings.isEmpty()) {
      page.line(INDENT + "None.");
    }
    List<Finding> ordered = new FindingRisk(takeoff).ordered().stream().filter(findings::contains).toList();
    FindingGroups.of(ordered).forEach(group -> group(takeoff, group, page));
  }

  private static void group(Takeoff takeoff, List<Finding> group, TextPage page) {
    Finding first = group.get(0);
    page.line(INDENT + noun(first.severity()) + "  " + first.code() + (group.size() > 1 ? "  (" + group.size() + " times)" : ""));
    group.stream().limit(SHOWN).forEach(f -> one(f, page));
    if (group.size() > SHOWN) {
      page.line(INDENT + "- and " + (group.size() - SHOWN) + " more of the kind: --format json lists them all.");
    }
    say(page, "Why: ", FindingAdvice.reason(takeoff, first.code()));
    String action = FindingAdvice.action(takeoff, first.code());
    say(page, "What to do: ", action.isEmpty() ? "" : action + " [" + FindingAdvice.who(takeoff, first.code()) + "]");
  }

  private static void one(Finding finding, TextPage page) {
    page.paragraph(INDENT + "- ", INDENT + INDENT, sentence(finding));
    finding.acceptance().ifPresent(a -> page.paragraph(INDENT + INDENT + "accepted by ", INDENT + INDENT,
        OneLine.of(a.by()) + (a.when().isEmpty() ? "" : " on " + a.when()) + ": " + OneLine.of(a.reason())));
    finding.remarks().forEach(r -> page.paragraph(INDENT + INDENT + "remark by ", INDENT + INDENT,
        OneLine.of(r.by().isBlank() ? "somebody" : r.by()) + (r.when().isEmpty() ? "" : " on " + r.when()) + ": " + OneLine.of(r.text())));
  }

  private static void say(TextPage page, String what, String words) {
    if (!words.isEmpty()) {
      page.paragraph(INDENT + INDENT + what, INDENT + INDENT, OneLine.of(words));
    }
  }

  private static String sentence(Finding finding) {
    String where = finding.junctions().isEmpty() ? "" : " [" + String.join(", ", finding.junctions()) + "]";
    return OneLine.of(finding.message()) + where;
  }
}
