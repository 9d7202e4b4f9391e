package org.seamledger.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

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
   * A junction in both results; {@code changes} names what differs: kind, detail, length, place, neighbour, seals, fasteners; empty where
   * nothing does.
   */
  public record Pair(Line before, Line after, By by, List<String> changes) {
    public Pair {
      changes = List.copyOf(changes);
    }
  }

  /** A number of the order in both results; NaN where one of them lacks it. */
  public record Amount(String name, double before, double after) {
  }

  /** A finding in one of the results; {@code junction} is the empty string where it is about none. */
  public record Found(String code, String severity, String message, String junction) {
  }

  private final List<Pair> pairs = new ArrayList<>();
  private final List<Line> added = new ArrayList<>();
  private final List<Line> removed = new ArrayList<>();
  private final List<Amount> quantities = new ArrayList<>();
  private final List<Found> newFindings = new ArrayList<>();
  private final List<Found> goneFindings = new ArrayList<>();
  private final Map<String, double[]> lengthByKind = new TreeMap<>();

  private Comparison() {
  }

  static Comparison of(ResultOutline before, ResultOutline after) {
    Comparison c = new Comparison();
    c.match(before.junctions(), after.junctions());
    c.compareFindings(before.findings(), after.findings());
    c.compareQuantities(before.quantities(), after.quantities());
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
    return List.copyOf(newFindings);
  }

  /** Findings that only the older result has, in its order. */
  public List<Found> goneFindings() {
    return List.copyOf(goneFindings);
  }

  /** Total length before and after, metres, by kind in alphabetical order. */
  public Map<String, double[]> lengthByKind() {
    return new LinkedHashMap<>(lengthByKind);
  }

  private void match(List<LedgerReader.Line> before, List<LedgerReader.Line> after) {
    LineMatch match = new LineMatch(before, after);
    for (LedgerReader.Line l : after) {
      match.before(l).ifPresentOrElse(old -> pairs.add(new Pair(line(old), line(l), match.how(l), changes(old, l))),
          () -> added.add(line(l)));
    }
    match.gone().forEach(l -> removed.add(line(l)));
  }

  private static List<String> changes(LedgerReader.Line old, LedgerReader.Line now) {
    List<String> changes = new ArrayList<>();
    if (!old.kind().equals(now.kind())) {
      changes.add("kind");
    }
    if (!String.valueOf(old.detail()).equals(String.valueOf(now.detail()))) {
      changes.add("detail");
    }
    if (Math.abs(old.lengthM() - now.lengthM()) > SAME_M) {
      changes.add("length");
    }
    if (!LineMatch.samePlace(old, now, SAME_M)) {
      changes.add("place");
    }
    if (!old.neighbour().equals(now.neighbour())) {
      changes.add("neighbour");
    }
    if (differs(old.seals(), now.seals())) {
      changes.add("seals");
    }
    if (differs(old.fasteners(), now.fasteners())) {
      changes.add("fasteners");
    }
    return changes;
  }

  private static boolean differs(JsonNode a, JsonNode b) {
    return !String.valueOf(a).equals(String.valueOf(b));
  }

  private static Line line(LedgerReader.Line l) {
    List<List<Double>> path = Arrays.stream(l.path()).map(p -> Arrays.stream(p).boxed().toList()).toList();
    return new Line(l.id(), l.kind(), l.detail() == null ? "" : l.detail(), l.lengthM(), path);
  }

  /** A finding stays the same where code, junction and elements do, though the figures in its message differ. */
  private void compareFindings(List<LedgerReader.Found> before, List<LedgerReader.Found> after) {
    Map<String, String> idBefore = new HashMap<>();
    pairs.forEach(p -> idBefore.put(p.after().id(), p.before().id()));
    Map<String, Integer> left = new HashMap<>();
    before.forEach(f -> left.merge(key(f, text(f.junction())), 1, Integer::sum));
    for (LedgerReader.Found f : after) {
      String key = key(f, idBefore.getOrDefault(text(f.junction()), text(f.junction())));
      if (left.merge(key, -1, Integer::sum) < 0) {
        newFindings.add(found(f));
      }
    }
    // What is left over of a key are its last ones.
    for (int i = before.size() - 1; i >= 0; i--) {
      LedgerReader.Found f = before.get(i);
      if (left.merge(key(f, text(f.junction())), -1, Integer::sum) >= 0) {
        goneFindings.add(0, found(f));
      }
    }
  }

  private static String key(LedgerReader.Found f, String junction) {
    return f.code() + "\n" + junction + "\n" + f.elements();
  }

  private static String text(String s) {
    return s == null ? "" : s;
  }

  private static Found found(LedgerReader.Found f) {
    return new Found(text(f.code()), text(f.severity()), text(f.message()), text(f.junction()));
  }

  private void compareQuantities(JsonNode before, JsonNode after) {
    Map<String, Double> a = new LinkedHashMap<>();
    Map<String, Double> b = new LinkedHashMap<>();
    numbers("", before, a);
    numbers("", after, b);
    Set<String> names = new LinkedHashSet<>(a.keySet());
    names.addAll(new HashSet<>(b.keySet()).stream().sorted().toList());
    names.forEach(n -> quantities.add(new Amount(n, a.getOrDefault(n, Double.NaN), b.getOrDefault(n, Double.NaN))));
  }

  private static void numbers(String path, JsonNode node, Map<String, Double> into) {
    if (node.isNumber()) {
      into.put(path, node.doubleValue());
    } else if (node.isObject()) {
      node.properties().forEach(e -> numbers(path.isEmpty() ? e.getKey() : path + "." + e.getKey(), e.getValue(), into));
    } else if (node.isArray()) {
      // Metal parts are a list; each is known by its name.
      node.forEach(item -> {
        if (item.path("part").isTextual()) {
          numbers(path + "." + item.path("part").textValue(), item, into);
        }
      });
    }
  }
}
