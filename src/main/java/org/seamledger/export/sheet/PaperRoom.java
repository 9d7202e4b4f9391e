package org.seamledger.export.sheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.geometry.Vec2;

/**
 * What has been drawn in a place, so that words and leaders find room: words never overlap words, leaders or break lines, and a leader
 * never crosses words, a break line or another leader. Lines of the drawing may be crossed where nothing else is left. Looked up by
 * squares of the paper, so that a sheet of thousands of lines stays quick.
 */
public final class PaperRoom {

  /** Width of a character as a share of its height, generous for a sans serif. */
  public static final double CHARACTER = 0.6;
  private static final double CELL = 12;

  /** A segment or a convex area on paper; {@code isClosed} for what nothing may touch. */
  private record Mark(List<Vec2> points, boolean isClosed) {
  }

  private final PaperBox place;
  private final Map<Long, List<Mark>> cells = new HashMap<>();

  public PaperRoom(PaperBox place) {
    this.place = place;
  }

  /** The same room, to try something in. */
  public PaperRoom copy() {
    PaperRoom copy = new PaperRoom(place);
    cells.forEach((key, marks) -> copy.cells.put(key, new ArrayList<>(marks)));
    return copy;
  }

  public PaperBox place() {
    return place;
  }

  /** The strip that words take, turned by degrees counter-clockwise about the middle of their foot. */
  public static List<Vec2> strip(Vec2 foot, double degrees, double width, double height) {
    double t = Math.toRadians(degrees);
    Vec2 along = new Vec2(Math.cos(t), -Math.sin(t));
    Vec2 up = new Vec2(-Math.sin(t), -Math.cos(t));
    Vec2 low = foot.minus(up.times(height * 0.25));
    Vec2 high = foot.plus(up.times(height * 0.85));
    Vec2 half = along.times(width / 2);
    return List.of(low.minus(half), low.plus(half), high.plus(half), high.minus(half));
  }

  public static double width(String words, double size) {
    return words.length() * size * CHARACTER;
  }

  public static List<Vec2> square(Vec2 middle, double half) {
    return List.of(middle.plus(new Vec2(-half, -half)), middle.plus(new Vec2(half, -half)), middle.plus(new Vec2(half, half)),
        middle.plus(new Vec2(-half, half)));
  }

  /** Takes what may not be touched: words, leaders, break lines, other drawings. */
  public void close(List<Vec2> points) {
    add(new Mark(List.copyOf(points), true));
  }

  /** Takes a line of the drawing, which may be crossed if need be. */
  public void line(List<Vec2> points) {
    for (int i = 1; i < points.size(); i++) {
      add(new Mark(List.of(points.get(i - 1), points.get(i)), false));
    }
  }

  /** Whether a convex area (or a segment) lies in the place and touches nothing closed. */
  public boolean isFree(List<Vec2> area) {
    return area.stream().allMatch(place::has) && near(area).stream().noneMatch(m -> m.isClosed && touch(m.points, area));
  }

  /** How many lines of the drawing an area or segment touches. */
  public int crossed(List<Vec2> area) {
    return (int) near(area).stream().filter(m -> !m.isClosed && touch(m.points, area)).count();
  }

  private void add(Mark mark) {
    for (long key : keys(mark.points)) {
      cells.computeIfAbsent(key, k -> new ArrayList<>()).add(mark);
    }
  }

  /** What may touch it, each once. */
  private Collection<Mark> near(List<Vec2> points) {
    List<Long> keys = keys(points);
    if (keys.size() == 1) {
      return cells.getOrDefault(keys.get(0), List.of());
    }
    Set<Mark> found = Collections.newSetFromMap(new IdentityHashMap<>());
    keys.forEach(key -> found.addAll(cells.getOrDefault(key, List.of())));
    return found;
  }

  private static List<Long> keys(List<Vec2> points) {
    double minU = points.stream().mapToDouble(Vec2::u).min().orElse(0);
    double maxU = points.stream().mapToDouble(Vec2::u).max().orElse(0);
    double minV = points.stream().mapToDouble(Vec2::v).min().orElse(0);
    double maxV = points.stream().mapToDouble(Vec2::v).max().orElse(0);
    List<Long> keys = new ArrayList<>();
    for (long i = cell(minU); i <= cell(maxU); i++) {
      for (long j = cell(minV); j <= cell(maxV); j++) {
        keys.add(i * 100_003 + j);
      }
    }
    return keys;
  }

  private static long cell(double value) {
    return (long) Math.floor(Math.max(-200, Math.min(2000, value)) / CELL);
  }

  /** Whether two convex areas or segments touch: no line separates them (separating axes). */
  public static boolean touch(List<Vec2> a, List<Vec2> b) {
    return !isParted(a, b) && !isParted(b, a);
  }

  private static boolean isParted(List<Vec2> a, List<Vec2> b) {
    for (int i = 0; i < a.size(); i++) {
      Vec2 edge = a.get((i + 1) % a.size()).minus(a.get(i));
      if (edge.length() < 1e-9) {
        continue;
      }
      for (Vec2 axis : a.size() == 2 ? List.of(edge.left(), edge) : List.of(edge.left())) {
        if (least(b, axis) > most(a, axis) + 1e-9 || most(b, axis) < least(a, axis) - 1e-9) {
          return true;
        }
      }
    }
    return false;
  }

  private static double least(List<Vec2> points, Vec2 axis) {
    double least = Double.MAX_VALUE;
    for (Vec2 p : points) {
      least = Math.min(least, p.dot(axis));
    }
    return least;
  }

  private static double most(List<Vec2> points, Vec2 axis) {
    return -least(points, axis.times(-1));
  }
}
