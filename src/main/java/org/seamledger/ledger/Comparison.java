package org.seamledger.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.finding.Severity;

/**
 * The difference between two results of one building. Junctions are matched by id; what is left is matched by place (the same two end
 * points within {@value #PLACE_M} m, in either direction), and what is left then by the elements that meet there, the kind and the
 * direction of the line, the nearest first.
 */
public final class Comparison {

  /** Lengths and places that differ by less are the same: a millimetre, what a measuring tape shows. */
  static final double SAME_M = 0.001;
  static final double PLACE_M = 0.05;
  private static final double SAME_DIRECTION = Math.cos(Math.toRadians(5));

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

  private void match(List<ResultOutline.Line> before, List<ResultOutline.Line> after) {
    Map<String, ResultOutline.Line> left = new LinkedHashMap<>();
    before.forEach(l -> left.put(l.id(), l));
    Map<String, ResultOutline.Line> partner = new HashMap<>();
    Map<String, By> how = new HashMap<>();
    for (ResultOutline.Line l : after) {
      take(left, left.get(l.id()), l, By.ID, partner, how);
    }
    byPlace(left, after, partner, how);
    byElements(left, after, partner, how);
    for (ResultOutline.Line l : after) {
      ResultOutline.Line old = partner.get(l.id());
      if (old == null) {
        added.add(line(l));
      } else {
        pairs.add(new Pair(line(old), line(l), how.get(l.id()), changes(old, l),
            Figures.differing(Figures.ofLine(old), Figures.ofLine(l), true)));
      }
    }
    left.values().forEach(l -> removed.add(line(l)));
    Map<String, ResultOutline.Line> now = new HashMap<>();
    after.stream().filter(l -> partner.containsKey(l.id())).forEach(l -> now.put(partner.get(l.id()).id(), l));
    before.stream().filter(ResultOutline.Line::isOverridden).forEach(l -> override(l, now.get(l.id())));
  }

  private void override(ResultOutline.Line old, ResultOutline.Line now) {
    List<String> changes = new ArrayList<>();
    if (now == null) {
      changes.add("gone");
    } else {
      add(changes, "kind", !old.kindByRules().equals(now.kindByRules()));
      add(changes, "detail", !old.detailByRules().equals(now.detailByRules()));
      add(changes, "length", Math.abs(old.lengthM() - now.lengthM()) > SAME_M);
      add(changes, "place", !samePlace(old, now, SAME_M));
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

  private static void take(Map<String, ResultOutline.Line> left, ResultOutline.Line old, ResultOutline.Line l, By by,
      Map<String, ResultOutline.Line> partner, Map<String, By> how) {
    if (old != null && left.remove(old.id()) != null) {
      partner.put(l.id(), old);
      how.put(l.id(), by);
    }
  }

  private static void byPlace(Map<String, ResultOutline.Line> left, List<ResultOutline.Line> after, Map<String, ResultOutline.Line> partner,
      Map<String, By> how) {
    Map<String, List<ResultOutline.Line>> cells = new HashMap<>();
    left.values().forEach(l -> cells.computeIfAbsent(cell(middle(l), 0, 0, 0), k -> new ArrayList<>()).add(l));
    for (ResultOutline.Line l : after) {
      if (!partner.containsKey(l.id())) {
        ResultOutline.Line best = null;
        for (ResultOutline.Line o : around(cells, middle(l))) {
          if (left.containsKey(o.id()) && samePlace(o, l, PLACE_M) && (best == null || gap(o, l) < gap(best, l))) {
            best = o;
          }
        }
        take(left, best, l, By.PLACE, partner, how);
      }
    }
  }

  private static List<ResultOutline.Line> around(Map<String, List<ResultOutline.Line>> cells, double[] p) {
    List<ResultOutline.Line> found = new ArrayList<>();
    for (int dx = -1; dx <= 1; dx++) {
      for (int dy = -1; dy <= 1; dy++) {
        for (int dz = -1; dz <= 1; dz++) {
          found.addAll(cells.getOrDefault(cell(p, dx, dy, dz), List.of()));
        }
      }
    }
    return found;
  }

  private static String cell(double[] p, int dx, int dy, int dz) {
    return (Math.round(p[0] / PLACE_M) + dx) + "/" + (Math.round(p[1] / PLACE_M) + dy) + "/"
        + (Math.round(p[2] / PLACE_M) + dz);
  }

  private static void byElements(Map<String, ResultOutline.Line> left, List<ResultOutline.Line> after,
      Map<String, ResultOutline.Line> partner, Map<String, By> how) {
    Map<String, List<ResultOutline.Line>> groups = new HashMap<>();
    left.values().forEach(l -> groups.computeIfAbsent(company(l), k -> new ArrayList<>()).add(l));
    for (ResultOutline.Line l : after) {
      if (!partner.containsKey(l.id()) && l.elements() != null && !l.elements().isEmpty()) {
        ResultOutline.Line best = null;
        for (ResultOutline.Line o : groups.getOrDefault(company(l), List.of())) {
          if (left.containsKey(o.id()) && parallel(o, l) && (best == null || gap(o, l) < gap(best, l))) {
            best = o;
          }
        }
        take(left, best, l, By.ELEMENTS, partner, how);
      }
    }
  }

  private static String company(ResultOutline.Line l) {
    return l.kindByRules() + " " + (l.elements() == null ? "" : String.join(" ", new TreeSet<>(l.elements())));
  }

  private static double[] middle(ResultOutline.Line l) {
    double[] a = l.start();
    double[] b = l.path()[l.path().length / 2];
    double[] c = l.path().length > 2 && distance(l.start(), l.end()) < SAME_M ? b : l.end();
    return new double[] {(a[0] + c[0]) / 2, (a[1] + c[1]) / 2, (a[2] + c[2]) / 2};
  }

  private static boolean samePlace(ResultOutline.Line a, ResultOutline.Line b, double within) {
    boolean along = distance(a.start(), b.start()) <= within && distance(a.end(), b.end()) <= within;
    boolean against = distance(a.start(), b.end()) <= within && distance(a.end(), b.start()) <= within;
    return (along || against) && Math.abs(a.lengthM() - b.lengthM()) <= 2 * within;
  }

  private static double gap(ResultOutline.Line a, ResultOutline.Line b) {
    return distance(middle(a), middle(b));
  }

  private static boolean parallel(ResultOutline.Line a, ResultOutline.Line b) {
    double la = distance(a.start(), a.end());
    double lb = distance(b.start(), b.end());
    if (la < SAME_M || lb < SAME_M) {
      return la < SAME_M && lb < SAME_M;
    }
    double dot = 0;
    for (int i = 0; i < 3; i++) {
      dot += (a.end()[i] - a.start()[i]) * (b.end()[i] - b.start()[i]);
    }
    return Math.abs(dot) / (la * lb) >= SAME_DIRECTION;
  }

  private static double distance(double[] a, double[] b) {
    return Math.sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]) + (a[2] - b[2]) * (a[2] - b[2]));
  }

  private static List<String> changes(ResultOutline.Line old, ResultOutline.Line now) {
    List<String> changes = new ArrayList<>();
    add(changes, "kind", !old.kind().equals(now.kind()));
    add(changes, "detail", !String.valueOf(old.detail()).equals(String.valueOf(now.detail())));
    add(changes, "length", Math.abs(old.lengthM() - now.lengthM()) > SAME_M);
    add(changes, "place", !samePlace(old, now, SAME_M));
    add(changes, "neighbour", !old.neighbour().equals(now.neighbour()));
    add(changes, "seals", differs(old.seals(), now.seals()));
    add(changes, "fasteners", differs(old.fasteners(), now.fasteners()));
    return changes;
  }

  private static boolean differs(JsonNode a, JsonNode b) {
    return !String.valueOf(a).equals(String.valueOf(b));
  }

  private static Line line(ResultOutline.Line l) {
    List<List<Double>> path = Arrays.stream(l.path()).map(p -> Arrays.stream(p).boxed().toList()).toList();
    return new Line(l.id(), l.kind(), l.detail() == null ? "" : l.detail(), l.lengthM(), path);
  }
}
