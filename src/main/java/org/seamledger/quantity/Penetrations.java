package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.DisjointSets;
import org.seamledger.geometry.Segment;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;

/**
 * Things through the roof and how far they stand from valleys and from each other, edge to edge. Sides of one thing are joined where
 * their ends meet. Distances beyond {@link #FAR} concern no flashing and are left out.
 */
final class Penetrations {

  static final double FAR = 3;
  /** Ends this close belong to one outline, metres. */
  private static final double TOUCH = 0.01;

  private final Map<String, Double> toValley = new TreeMap<>();
  private final Map<String, Double> toRidge = new TreeMap<>();
  private final Map<String, Double> toWall = new TreeMap<>();
  private final Map<String, Double> toOther = new TreeMap<>();
  private final Set<String> leading = new TreeSet<>();

  /** One thing's outline on the roof. */
  private static final class Thing {
    final List<Junction> sides = new ArrayList<>();
    final List<Segment> outline = new ArrayList<>();
    final Set<String> faces = new TreeSet<>();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;

    void add(Junction side) {
      sides.add(side);
      outline.addAll(Segment.of(side.path()));
      faces.addAll(side.faces());
      side.path().forEach(p -> {
        low = Math.min(low, p.x());
        high = Math.max(high, p.x());
      });
    }
  }

  Penetrations(List<DetailedJunction> junctions) {
    List<Junction> sides = new ArrayList<>();
    Map<String, List<Junction>> valleys = new HashMap<>();
    Map<String, List<Junction>> ridges = new HashMap<>();
    Map<String, List<Junction>> walls = new HashMap<>();
    for (DetailedJunction j : junctions) {
      Kind kind = j.junction().type();
      Junction line = j.junction().junction();
      if (kind.atPenetration()) {
        sides.add(line);
      } else if (kind.family() == Kind.Family.FACES && (kind.water() == Kind.Water.ALONG || kind.water() == Kind.Water.INTO)) {
        line.faces().forEach(f -> valleys.computeIfAbsent(f, k -> new ArrayList<>()).add(line));
      } else if (kind.line() == Kind.Line.RIDGE) {
        line.faces().forEach(f -> ridges.computeIfAbsent(f, k -> new ArrayList<>()).add(line));
      } else if (kind.family() == Kind.Family.WALL) {
        line.faces().forEach(f -> walls.computeIfAbsent(f, k -> new ArrayList<>()).add(line));
      }
    }
    List<Thing> things = things(sides);
    things.forEach(t -> leading.add(t.sides.stream().map(Junction::id).min(Comparator.naturalOrder()).orElseThrow()));
    things.forEach(t -> measure(t, valleys, toValley));
    things.forEach(t -> measure(t, ridges, toRidge));
    things.forEach(t -> measure(t, walls, toWall));
    measureEachOther(things);
  }

  Map<String, Double> toValley() {
    return toValley;
  }

  /** To ridges and hips. */
  Map<String, Double> toRidge() {
    return toRidge;
  }

  Map<String, Double> toWall() {
    return toWall;
  }

  /** One side of each thing: what is said once of the whole thing is said there. */
  Set<String> leading() {
    return leading;
  }

  Map<String, Double> toOther() {
    return toOther;
  }

  private static List<Thing> things(List<Junction> sides) {
    DisjointSets touching = new DisjointSets(sides.size());
    // Ends by rounded place; neighbours across a rounding edge are looked up, too.
    Map<List<Long>, List<Integer>> ends = new HashMap<>();
    for (int i = 0; i < sides.size(); i++) {
      List<Vec3> path = sides.get(i).path();
      for (Vec3 end : List.of(path.get(0), path.get(path.size() - 1))) {
        join(touching, ends, sides, i, end);
      }
    }
    return touching.sets().stream().map(set -> {
      Thing thing = new Thing();
      set.forEach(i -> thing.add(sides.get(i)));
      return thing;
    }).toList();
  }

  private static void join(DisjointSets touching, Map<List<Long>, List<Integer>> ends, List<Junction> sides, int i, Vec3 end) {
    long x = Math.round(end.x() / TOUCH);
    long y = Math.round(end.y() / TOUCH);
    for (long dx = -1; dx <= 1; dx++) {
      for (long dy = -1; dy <= 1; dy++) {
        for (int o : ends.getOrDefault(List.of(x + dx, y + dy), List.of())) {
          List<Vec3> path = sides.get(o).path();
          if (end.distance(path.get(0)) <= TOUCH || end.distance(path.get(path.size() - 1)) <= TOUCH) {
            touching.join(i, o);
          }
        }
      }
    }
    ends.computeIfAbsent(List.of(x, y), k -> new ArrayList<>()).add(i);
  }

  private static void measure(Thing thing, Map<String, List<Junction>> lines, Map<String, Double> into) {
    double least = Double.POSITIVE_INFINITY;
    for (String face : thing.faces) {
      for (Junction line : lines.getOrDefault(face, List.of())) {
        least = Math.min(least, Segment.distance(thing.outline, Segment.of(line.path())));
      }
    }
    put(into, thing, least);
  }

  private void measureEachOther(List<Thing> things) {
    List<Thing> byPlace = things.stream().sorted(Comparator.comparingDouble((Thing t) -> t.low)
        .thenComparing(t -> t.sides.stream().map(Junction::id).sorted().collect(Collectors.joining()))).toList();
    double widest = things.stream().mapToDouble(t -> t.high - t.low).max().orElse(0);
    double[] least = new double[byPlace.size()];
    java.util.Arrays.fill(least, Double.POSITIVE_INFINITY);
    for (int i = 0; i < byPlace.size(); i++) {
      for (int k = i + 1; k < byPlace.size() && byPlace.get(k).low - byPlace.get(i).low <= widest + FAR; k++) {
        Thing a = byPlace.get(i);
        Thing b = byPlace.get(k);
        if (b.low - a.high <= FAR && a.faces.stream().anyMatch(b.faces::contains)) {
          double d = Segment.distance(a.outline, b.outline);
          least[i] = Math.min(least[i], d);
          least[k] = Math.min(least[k], d);
        }
      }
    }
    for (int i = 0; i < least.length; i++) {
      put(toOther, byPlace.get(i), least[i]);
    }
  }

  private static void put(Map<String, Double> into, Thing thing, double distance) {
    if (distance <= FAR) {
      thing.sides.forEach(s -> into.put(s.id(), distance));
    }
  }
}
