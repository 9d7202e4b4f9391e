package org.seamledger.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.finding.Severity;

/**
 * The difference between two results of one building; {@link LineMatch} says which junctions are one.
 */
public final class Comparison {

  /** Lengths and places that differ by less are the same: a millimetre, what a measuring tape shows. */
  static final double SAME_M = 0.001;

  /** How a pair was found. */
  public enum By {
    ID, PLACE, ELEMENTS
  }

  /** A junction in one of the results; its path as in the result. */
  public record Line(String id, String kind, String detail, double lengthM, List<List<Double>> path) {
  }

  /**
   * A junction in both results; {@code changes} names what differs: kind, detail, length, place, neighbour, seals, fasteners; empty
   * where nothing does. {@code figures} are the numbers of the line that differ.
   */
  public record Pair(Line before, Line after, By by, List<String> changes, List<Amount> figures) {
    public Pair {
      changes = List.copyOf(changes);
      figures = List.copyOf(figures);
    }
  }

  /** A number of the order in both results; NaN where one of them lacks it. */
  public record Amount(String name, double before, double after) {
  }

  /** A finding in one of the results; {@code junction} is the empty string where it is about none. */
  public record Found(String code, String severity, String message, String junction, List<String> elements, boolean accepted) {
    public Found {
      elements = List.copyOf(elements);
    }
  }

  /** A finding in both results. */
  public record Kept(Found before, Found after) {
  }

  /**
   * An override in the older result that no longer fits.
   *
   * @param changes {@code gone}, or what changed of the line or of what the rules make of it: kind, detail, length, place
   */
  public record Unfit(String junction, String kind, String detail, String reason, List<String> changes) {
    public Unfit {
      changes = List.copyOf(changes);
    }
  }

  /** An item, by its id, of a list in the result that differs: {@code change} is added, gone or changed. */
  public record Entry(String list, String id, String change, List<String> fields) {
    public Entry {
      fields = List.copyOf(fields);
    }
  }

  private final List<Pair> pairs = new ArrayList<>();
  private final List<Line> added = new ArrayList<>();
  private final List<Line> removed = new ArrayList<>();
  private final List<Unfit> unfit = new ArrayList<>();
  private List<Amount> quantities = List.of();
  private List<Entry> entries = List.of();
  private List<String> settings = List.of();
  private FindingChanges findings;
  private final Map<String, double[]> lengthByKind = new TreeMap<>();

  private Comparison() {
  }

  public static Comparison of(ComparedResult before, ComparedResult after) {
    return of(before.outline(), after.outline());
  }

  static Comparison of(ResultOutline before, ResultOutline after) {
    Comparison c = new Comparison();
    c.match(before.junctions(), after.junctions());
    Map<String, String> idBefore = new HashMap<>();
    c.pairs.forEach(p -> idBefore.put(p.after().id(), p.before().id()));
    c.findings = FindingChanges.of(before, after, idBefore);
    c.quantities = Figures.differing(Figures.ofOrder(before), Figures.ofOrder(after), false);
    c.entries = Entries.compare(before.lists(), after.lists());
    c.settings = before.settingsThatDiffer(after);
    before.junctions().forEach(l -> c.lengthByKind.computeIfAbsent(l.kind(), k -> new double[2])[0] += l.lengthM());
    after.junctions().forEach(l -> c.lengthByKind.computeIfAbsent(l.kind(), k -> new double[2])[1] += l.lengthM());
    return c;
  }

  /** Junctions found in both, in the order of the newer result. */
  public List<Pair> pairs() {
    return List.copyOf(pairs);
  }

  /** Junctions of the newer result only. */
  public List<Line> added() {
    return List.copyOf(added);
  }

  /** Junctions of the older result only. */
  public List<Line> removed() {
    return List.copyOf(removed);
  }

  /** Every number of the order that either result has, by its path, such as {@code tape.orderM}. */
  public List<Amount> quantities() {
    return List.copyOf(quantities);
  }

  /** Findings that only the newer result has, in its order. */
  public List<Found> newFindings() {
    return findings.added();
  }

  /** Findings that both results have, in the order of the newer one. */
  public List<Kept> keptFindings() {
    return findings.kept();
  }

  /** Findings of this severity or a worse one that nobody accepted, and that the older result had not, or not as bad. */
  public List<Found> worse(Severity limit) {
    return findings.worse(limit);
  }

  /** Overrides in the older result that no longer fit, in its order of junctions. */
  public List<Unfit> unfitOverrides() {
    return List.copyOf(unfit);
  }

  /** What differs in lists of items with ids, such as nodes. */
  public List<Entry> entries() {
    return entries;
  }

  /** What the results were made with that differs, in words: program, rules, roof system; so that a difference may come from there. */
  public List<String> settings() {
    return settings;
  }

  /** Findings that only the older result has, in its order. */
  public List<Found> goneFindings() {
    return findings.gone();
  }

  /** Total length before and after, metres, by kind in alphabetical order. */
  public Map<String, double[]> lengthByKind() {
    return new LinkedHashMap<>(lengthByKind);
  }

  private void match(List<LedgerReader.Line> before, List<LedgerReader.Line> after) {
    LineMatch match = new LineMatch(before, after);
    for (LedgerReader.Line l : after) {
      match.before(l).ifPresentOrElse(old -> pairs.add(new Pair(line(old), line(l), match.how(l), changes(old, l),
          Figures.differing(Figures.ofLine(old), Figures.ofLine(l), true))),
          () -> added.add(line(l)));
    }
    match.gone().forEach(l -> removed.add(line(l)));
    Map<String, LedgerReader.Line> now = new HashMap<>();
    after.forEach(l -> match.before(l).ifPresent(old -> now.put(old.id(), l)));
    before.stream().filter(LedgerReader.Line::isOverridden).forEach(l -> override(l, now.get(l.id())));
  }

  private void override(LedgerReader.Line old, LedgerReader.Line now) {
    List<String> changes = new ArrayList<>();
    if (now == null) {
      changes.add("gone");
    } else {
      add(changes, "kind", !old.kindByRules().equals(now.kindByRules()));
      add(changes, "detail", !old.detailByRules().equals(now.detailByRules()));
      add(changes, "length", Math.abs(old.lengthM() - now.lengthM()) > SAME_M);
      add(changes, "place", !LineMatch.samePlace(old, now, SAME_M));
    }
    if (!changes.isEmpty()) {
      unfit.add(new Unfit(old.id(), old.decided().path("kind").asText(""), old.decided().path("detail").asText(""),
          old.decided().path("reason").asText(""), changes));
    }
  }

  private static void add(List<String> changes, String name, boolean differs) {
    if (differs) {
      changes.add(name);
    }
  }

  private static List<String> changes(LedgerReader.Line old, LedgerReader.Line now) {
    List<String> changes = new ArrayList<>();
    add(changes, "kind", !old.kind().equals(now.kind()));
    add(changes, "detail", !String.valueOf(old.detail()).equals(String.valueOf(now.detail())));
    add(changes, "length", Math.abs(old.lengthM() - now.lengthM()) > SAME_M);
    add(changes, "place", !LineMatch.samePlace(old, now, SAME_M));
    add(changes, "neighbour", !old.neighbour().equals(now.neighbour()));
    add(changes, "seals", differs(old.seals(), now.seals()));
    add(changes, "fasteners", differs(old.fasteners(), now.fasteners()));
    return changes;
  }

  private static boolean differs(JsonNode a, JsonNode b) {
    return !String.valueOf(a).equals(String.valueOf(b));
  }

  private static Line line(LedgerReader.Line l) {
    List<List<Double>> path = Arrays.stream(l.path()).map(p -> Arrays.stream(p).boxed().toList()).toList();
    return new Line(l.id(), l.kind(), l.detail() == null ? "" : l.detail(), l.lengthM(), path);
  }
}
