package org.seamledger.detail;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.progress.Progress;
import org.seamledger.shacl.Choice;
import org.seamledger.shacl.Rules;
import org.seamledger.shacl.Verdict;

/** Gives junctions their kind: that of the one kind shape which their facts conform to. */
public final class Kinds {

  /**
   * The kinds that the contract fixes, in the order in which reports list them. Rules may add others; what each is stands in
   * {@link KindBook}.
   */
  public static final List<String> ALL = List.of("ridge", "hip", "valley", "level-valley", "transition-convex", "transition-concave",
      "eave", "high-edge", "rake", "headwall", "sidewall", "low-wall", "skew-wall", "curb-upslope", "curb-side", "curb-downslope",
      "pipe", "flat-edge");

  /** Kinds of lines within a face, at which panels are divided: no junctions. */
  static final List<String> JOINTS = List.of("step-joint", "end-lap");

  public static final String UNCLASSIFIED = "unclassified";

  /** Angles of models differ by as much from one export or survey to the next. */
  private static final double NOISE_DEGREES = 0.2;
  /** More than the thousandth of a degree that shapes see. */
  private static final double BESIDE_DEGREES = 0.002;

  private final Choice shapes;
  private final KindBook book;

  /** @throws org.seamledger.shacl.BrokenRulesException where the rules have no kinds, or one that isn't described */
  public Kinds(Rules rules) {
    shapes = rules.choice("kind");
    book = KindBook.read(rules);
  }

  /** Junctions in the order given, and what there is to say about them. */
  public record Result(List<KindedJunction> junctions, List<Finding> findings) {
    public Result {
      junctions = List.copyOf(junctions);
      findings = List.copyOf(findings);
    }
  }

  /** What the rules say of each kind. */
  public KindBook book() {
    return book;
  }

  /**
   * Kinds of all junctions, with a finding for each that stays unclassified or lies at a level face.
   *
   * @param progress receives the progress, junction by junction
   */
  public static Result classify(List<Junction> junctions, Rules rules, Progress progress) {
    Kinds kinds = new Kinds(rules);
    List<KindedJunction> kinded = new ArrayList<>();
    List<Finding> findings = new ArrayList<>();
    for (Junction j : progress.over(junctions)) {
      KindedJunction k = kinds.kind(j);
      kinded.add(k);
      if (k.kind().equals(UNCLASSIFIED)) {
        findings.add(unclassified(k));
      } else if (k.type().family() == Kind.Family.LEVEL) {
        findings.add(flat(k));
      }
      kinds.nearLimit(k).ifPresent(findings::add);
    }
    return new Result(kinded, findings);
  }

  /** The kind of one junction; an unclassified one comes with its explanation. */
  public KindedJunction kind(Junction junction) {
    List<String> conforming = shapes.decide(junction.facts().asMap());
    return conforming.size() == 1
        ? new KindedJunction(junction, book.kind(conforming.get(0)), new Explanation(conforming, "", List.of()))
        : new KindedJunction(junction, Kind.UNCLASSIFIED, explain(junction.facts()));
  }

  /** The shapes that facts conform to, and the nearest that they miss. */
  public Explanation explain(Facts facts) {
    Map<String, Object> map = facts.asMap();
    Verdict verdict = shapes.explain(map);
    return new Explanation(verdict.conforming(), verdict.nearest(), verdict.missed());
  }

  /** What the shape of a kind requires and the facts don't give, in words; empty where they conform, or no shape has the kind. */
  public List<String> misses(String kind, Facts facts) {
    return shapes.misses(kind, facts.asMap());
  }

  /** Reports where the kind hangs on an angle that is nearer to a limit than models are exact. */
  private Optional<Finding> nearLimit(KindedJunction k) {
    for (Map.Entry<String, SortedSet<Double>> limits : shapes.limits().entrySet()) {
      double value = k.junction().facts().number(limits.getKey());
      if (!limits.getKey().endsWith("Degrees") || Double.isNaN(value)) {
        continue;
      }
      for (double limit : limits.getValue()) {
        String other = Math.abs(value - limit) > NOISE_DEGREES ? "" : otherKind(k, limits.getKey(), limit);
        if (!other.isEmpty()) {
          return Optional.of(Finding.of(Code.NEAR_LIMIT,
              String.format(Locale.ROOT, "a %s of %s has %s %.3f, and with the limit at %s it would be %s"
                  + " if it were measured on the other side of it", k.kind(), metres(k), limits.getKey(), value,
                  MeasureFormat.plain(limit, 3), other),
              k.junction().elements()).at(k.junction().id()));
        }
      }
    }
    return Optional.empty();
  }

  /** The kind just below and just above a limit, where that is another one. */
  private String otherKind(KindedJunction k, String fact, double limit) {
    for (int side = -1; side <= 1; side += 2) {
      Map<String, Object> facts = new TreeMap<>(k.junction().facts().asMap());
      facts.put(fact, limit + side * BESIDE_DEGREES);
      List<String> kinds = shapes.decide(facts);
      String kind = kinds.size() == 1 ? kinds.get(0) : UNCLASSIFIED;
      if (!kind.equals(k.kind())) {
        return kind;
      }
    }
    return "";
  }

  private static Finding unclassified(KindedJunction k) {
    Explanation e = k.explanation();
    String why = e.shapes().isEmpty()
        ? "no kind fits a line of " + metres(k) + "; the nearest is " + e.nearest() + ", which " + String.join(", and ", e.missed())
        : "a line of " + metres(k) + " fits several kinds: " + String.join(", ", e.shapes());
    return Finding.of(Code.UNCLASSIFIED, why, k.junction().elements()).at(k.junction().id());
  }

  private static Finding flat(KindedJunction k) {
    return Finding.of(Code.FLAT_EDGE, String.format(Locale.ROOT, "an edge of %s lies at a face that slopes %.2f degrees only", metres(k),
        k.junction().facts().number("minSlopeDegrees")), k.junction().elements()).at(k.junction().id());
  }

  private static String metres(KindedJunction k) {
    return String.format(Locale.ROOT, "%.2f m", k.junction().lengthM());
  }
}
