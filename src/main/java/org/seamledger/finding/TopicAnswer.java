package org.seamledger.finding;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * What people said of a finding where it was handed on. Texts are empty where nothing is known.
 *
 * @param guid of the topic, lower case: one of {@link TopicId}, or another's
 * @param status the word that they use for where it stands
 * @param verdict what that word means
 * @param by who changed it last
 * @param when it was changed last, or made: an instant in ISO 8601
 * @param assignee who looks after it
 * @param remarks in their order
 */
public record TopicAnswer(String guid, String title, String status, Verdict verdict, String by, String when, String assignee,
    List<Remark> remarks) {

  /** In the place of a name that nobody gave. */
  public static final String UNNAMED = "name not recorded";

  public TopicAnswer {
    remarks = List.copyOf(remarks);
  }

  /** What became of a topic. */
  public enum Verdict {
    OPEN, CLOSED, REOPENED
  }

  /** Findings with the answers to them; and a note for each answer that is to none. */
  public static List<Finding> mark(List<Finding> findings, List<UUID> ids, List<TopicAnswer> answers) {
    Map<String, TopicAnswer> byId = new HashMap<>();
    answers.forEach(a -> byId.merge(a.guid(), a, TopicAnswer::and));
    List<Finding> marked = new ArrayList<>();
    for (int i = 0; i < findings.size(); i++) {
      TopicAnswer answer = byId.remove(ids.get(i).toString());
      marked.add(answer == null ? findings.get(i) : answer.on(findings.get(i)));
    }
    answers.stream().filter(a -> byId.remove(a.guid()) != null).map(TopicAnswer::unused).forEach(marked::add);
    return marked;
  }

  /** Two answers to one topic, from two files: the later one's word with what both said. */
  private TopicAnswer and(TopicAnswer other) {
    boolean isLater = !isAfter(when, other.when);
    TopicAnswer last = isLater ? other : this;
    TopicAnswer first = isLater ? this : other;
    List<Remark> all = new ArrayList<>(first.remarks);
    last.remarks.stream().filter(r -> first.remarks.stream().noneMatch(s -> isSame(r, s))).forEach(all::add);
    return new TopicAnswer(last.guid, last.title, last.status, last.verdict, last.by, last.when, last.assignee, all);
  }

  private Finding on(Finding f) {
    boolean opens = f.acceptance().isPresent() && reopens(f.acceptance().get().when());
    Finding g = f.saying(fresh(f));
    if (opens) {
      Acceptance a = f.acceptance().get();
      return f.reopened().saying(List.of(new Remark(a.by(), a.when(), a.reason()))).saying(fresh(f));
    }
    return verdict == Verdict.CLOSED && f.acceptance().isEmpty() ? g.accepted(acceptance()) : g;
  }

  /** Remarks that a finding hasn't yet. */
  private List<Remark> fresh(Finding f) {
    boolean takesLast = verdict == Verdict.CLOSED && f.acceptance().isEmpty() && isLastTheReason();
    List<Remark> said = new ArrayList<>(f.remarks());
    f.acceptance().ifPresent(a -> said.add(new Remark(a.by(), a.when(), a.reason())));
    return (takesLast ? remarks.subList(0, remarks.size() - 1) : remarks).stream()
        .filter(r -> said.stream().noneMatch(s -> isSame(r, s))).toList();
  }

  /** Whether a finding that was accepted then is open again by this: said outright, or open later than that. */
  public boolean reopens(String acceptedWhen) {
    return verdict == Verdict.REOPENED || verdict == Verdict.OPEN && !acceptedWhen.isEmpty() && isAfter(when, acceptedWhen);
  }

  /** Whether the last remark is by who closed it, and so says why. */
  public boolean isLastTheReason() {
    return !remarks.isEmpty() && (by.isBlank() || by.equals(remarks.get(remarks.size() - 1).by()));
  }

  /** Who lets the finding stand, when and why, where the topic is closed. */
  public Acceptance acceptance() {
    Remark last = remarks.isEmpty() ? null : remarks.get(remarks.size() - 1);
    String who = !by.isBlank() ? by : last != null ? last.by() : "";
    String since = isLastTheReason() && !last.when().isEmpty() ? last.when() : when;
    return new Acceptance(who.isBlank() ? UNNAMED : who, since,
        last == null ? "closed as \"" + status + "\" without a remark" : last.text());
  }

  /** Whether two remarks are one that came by two ways: dates are compared to the second. */
  public static boolean isSame(Remark a, Remark b) {
    return a.text().strip().equals(b.text().strip()) && (a.by().strip().equals(b.by().strip()) || b.by().isBlank())
        && (a.when().isEmpty() || b.when().isEmpty() || second(a.when()) == second(b.when()));
  }

  private static boolean isAfter(String when, String other) {
    return !when.isEmpty() && (other.isEmpty() || second(when) > second(other));
  }

  private static long second(String when) {
    Instant at = when.length() <= "2024-05-31".length() ? LocalDate.parse(when).atStartOfDay().toInstant(ZoneOffset.UTC)
        : OffsetDateTime.parse(when).toInstant();
    return at.getEpochSecond();
  }

  private Finding unused() {
    String said = remarks.stream().map(r -> "; " + (r.by().isBlank() ? UNNAMED : r.by()) + ": " + r.text()).collect(Collectors.joining());
    return Finding.of(Code.TOPIC_WITHOUT_FINDING, "topic " + guid + " \"" + title + "\" (" + (status.isBlank() ? "no status" : status)
        + ") is about no finding of this result" + said);
  }
}
