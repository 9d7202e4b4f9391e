package org.seamledger.site;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/** What may have gone wrong between two models: movements, turns and factors that their own statements suggest. */
final class CandidateSearch {

  /** One unit taken for another: millimetres, inches, feet and metres for each other. */
  private static final double[] SLIPS = {1000, 304.8, 25.4, 12, 1 / 0.3048, 1 / 0.0254, 10, 100};
  private static final int MOST_HOLES = 40;
  private static final int MOST_THINGS = 150;
  private static final int MOST_TURNS = 4;
  private static final double[] QUARTERS = {0, 90, 180, -90};

  private final Footprint a;
  private final Footprint b;

  CandidateSearch(Footprint a, Footprint b) {
    this.a = a;
    this.b = b;
  }

  /** Whole movements in the shared coordinates, by the reason in words, in the order in which they are tried. */
  Map<String, Transform> movements() {
    Map<String, Transform> all = new LinkedHashMap<>();
    if (a.map().isPresent() && b.map().isPresent()) {
      put(all, "through their map conversions the models meet",
          a.placed().after(b.map().get().into(a.map().get())).after(b.placed().inverse()));
      put(all, "without their map conversions the models meet, so that one conversion is wrong", a.placed().after(b.placed().inverse()));
    } else if (b.map().isPresent()) {
      put(all, a.name() + " seems to lie at map coordinates (survey point), " + b.name() + " at a project base point",
          a.placed().after(toMap(b.map().get())).after(b.placed().inverse()));
    } else if (a.map().isPresent()) {
      put(all, b.name() + " seems to lie at map coordinates (survey point), " + a.name() + " at a project base point",
          a.placed().after(toMap(a.map().get()).inverse()).after(b.placed().inverse()));
    }
    a.anchors().forEach((what, at) -> {
      if (b.anchors().containsKey(what)) {
        put(all, "the placements of their " + what + " then coincide", at.after(b.anchors().get(what).inverse()));
      }
    });
    return all;
  }

  private static void put(Map<String, Transform> all, String why, Transform t) {
    boolean upright = Math.abs(t.m02()) + Math.abs(t.m12()) + Math.abs(t.m20()) + Math.abs(t.m21()) < 1e-9 && t.m22() > 0;
    boolean none = t.apply(Vec3.ZERO).length() < 1e-3 && t.applyDirection(Vec3.X).distance(Vec3.X) < 1e-6;
    boolean known = all.values().stream().anyMatch(o -> isSame(o, t));
    if (upright && !none && !known) {
      all.put(why, t);
    }
  }

  private static boolean isSame(Transform s, Transform t) {
    return s.apply(Vec3.ZERO).distance(t.apply(Vec3.ZERO)) < 1e-3 && s.applyDirection(Vec3.X).distance(t.applyDirection(Vec3.X)) < 1e-6;
  }

  private static Transform toMap(MapConversion m) {
    Vec3 origin = m.toMap(Vec3.ZERO);
    return Transform.axes(origin, m.toMap(Vec3.X).minus(origin), m.toMap(Vec3.Y).minus(origin), m.toMap(Vec3.Z).minus(origin));
  }

  /** Turn that brings true north of the one model to that of the other, degrees; zero where neither states it. */
  double northTurn() {
    if (a.north().isEmpty() && b.north().isEmpty()) {
      return 0;
    }
    return tidy(angle(a.north().orElse(Vec3.Y)) - angle(b.north().orElse(Vec3.Y)));
  }

  private static double angle(Vec3 d) {
    return Math.toDegrees(Math.atan2(d.y(), d.x()));
  }

  private static double tidy(double degrees) {
    double d = new RigidTransform(1, degrees, Vec3.ZERO).degrees();
    double near = Math.rint(d);
    return Math.abs(d - near) < 1e-7 ? near : d;
  }

  /** Turns worth trying, degrees, none first. */
  List<Double> turns() {
    List<Double> turns = new ArrayList<>();
    for (double q : QUARTERS) {
      turns.add(q);
    }
    add(turns, northTurn());
    movements().values().forEach(t -> add(turns, tidy(RigidTransform.of(t).degrees())));
    add(turns, turnOfSameElements());
    turnsOfHoles().forEach(t -> add(turns, t));
    return turns;
  }

  private static void add(List<Double> turns, double turn) {
    if (turns.stream().noneMatch(t -> Math.abs(t - turn) < 1e-4)) {
      turns.add(turn);
    }
  }

  /** The turn that fits elements with the same GlobalIds best; zero where they don't say. */
  private double turnOfSameElements() {
    Map<String, Mark> byId = new TreeMap<>();
    a.marks().forEach(m -> byId.put(m.id(), m));
    List<TransformFit.Pair> pairs = b.marks().stream().filter(m -> byId.containsKey(m.id()))
        .map(m -> new TransformFit.Pair(m.box().centre(), byId.get(m.id()).box().centre())).toList();
    return TransformFit.of(pairs).map(TransformFit::degrees).map(CandidateSearch::tidy).orElse(0.0);
  }

  /** Turns that bring upright pipes and ducts to holes in the roof that lie as far apart. */
  private List<Double> turnsOfHoles() {
    List<Mark> holes = a.marks().stream().filter(m -> m.kind().equals(Mark.HOLE)).limit(MOST_HOLES).toList();
    List<Mark> things = b.marks().stream().filter(m -> Matches.isUpright(m) && holes.stream().anyMatch(h -> Matches.mayFit(m, 1, h)))
        .limit(MOST_THINGS).toList();
    return TransformFit.turns(things.stream().map(m -> m.box().centre()).toList(), holes.stream().map(m -> m.box().centre()).toList(), 0.03,
        MOST_TURNS);
  }

  /** Factors worth trying: one, and unit slips after which the models are of like size. */
  List<Double> factors() {
    List<Double> factors = new ArrayList<>(List.of(1.0));
    double ratio = a.bulk().diagonal() / Math.max(1e-9, b.bulk().diagonal());
    double storeys = storeyRatio();
    for (double slip : SLIPS) {
      for (double f : new double[] {slip, 1 / slip}) {
        boolean sizes = (ratio > 6 || ratio < 1.0 / 6) && f / ratio > 0.15 && f / ratio < 4;
        if (sizes || Math.abs(storeys / f - 1) < 0.01) {
          factors.add(f);
        }
      }
    }
    return factors;
  }

  /** Height between the lowest and the highest storey of the same names, the one model's by the other's; NaN where there are no two. */
  private double storeyRatio() {
    double[] low = {Double.NaN, Double.NaN};
    double[] high = {Double.NaN, Double.NaN};
    a.storeys().forEach((name, z) -> {
      if (b.storeys().containsKey(name)) {
        if (!(low[0] <= z)) {
          low[0] = z;
          low[1] = b.storeys().get(name);
        }
        if (!(high[0] >= z)) {
          high[0] = z;
          high[1] = b.storeys().get(name);
        }
      }
    });
    return (high[0] - low[0]) / (high[1] - low[1]);
  }

  /** How much higher storeys of the same names are in the first model: the median; NaN where there are none. */
  double storeyShift(double factor) {
    double[] shifts = a.storeys().entrySet().stream().filter(e -> b.storeys().containsKey(e.getKey()))
        .mapToDouble(e -> e.getValue() - factor * b.storeys().get(e.getKey())).sorted().toArray();
    return shifts.length == 0 ? Double.NaN : shifts[shifts.length / 2];
  }

  /** Storeys of the same names that lie at one height after this shift. */
  int storeysAt(double factor, double shift) {
    return (int) a.storeys().entrySet().stream().filter(e -> b.storeys().containsKey(e.getKey())
        && Math.abs(e.getValue() - factor * b.storeys().get(e.getKey()) - shift) < 0.02).count();
  }

  /** What a slip of units is in words, or the empty string for another factor. */
  static String slipWords(double factor) {
    return Arrays.stream(SLIPS).anyMatch(s -> Math.abs(factor / s - 1) < 1e-6 || Math.abs(factor * s - 1) < 1e-6)
        ? "its lengths seem to be written in another unit than it states" : "";
  }
}
