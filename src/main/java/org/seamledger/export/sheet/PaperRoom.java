package org.seamledger.export.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

  private final PaperBox place;
  private final Map<Long, List<PaperShape>> cells = new HashMap<>();

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
    add(new PaperShape(points, true));
  }

  /** Takes a line of the drawing, which may be crossed if need be. */
  public void line(List<Vec2> points) {
    for (int i = 1; i < points.size(); i++) {
      add(new PaperShape(points.subList(i - 1, i + 1), false));
    }
  }

  /** Whether a convex area (or a segment) lies in the place and touches nothing closed. */
  public boolean isFree(List<Vec2> area) {
    for (Vec2 p : area) {
      if (!place.has(p)) {
        return false;
      }
    }
    return touched(new PaperShape(area, true), 1) == 0;
  }

  /** How many lines of the drawing an area or segment touches. */
  public int crossed(List<Vec2> area) {
    return touched(new PaperShape(area, false), Integer.MAX_VALUE);
  }

  private void add(PaperShape shape) {
    for (long i = cell(shape.minU()); i <= cell(shape.maxU()); i++) {
      for (long j = cell(shape.minV()); j <= cell(shape.maxV()); j++) {
        cells.computeIfAbsent(key(i, j), k -> new ArrayList<>()).add(shape);
      }
    }
  }

  /** How many shapes that are closed as this one is, or as little, it touches, each once; at most so many. */
  private int touched(PaperShape area, int most) {
    int touched = 0;
    for (long i = cell(area.minU()); i <= cell(area.maxU()); i++) {
      for (long j = cell(area.minV()); j <= cell(area.maxV()); j++) {
        for (PaperShape other : cells.getOrDefault(key(i, j), List.of())) {
          if (other.isClosed() == area.isClosed() && other.isNewTo(area) && other.touches(area) && ++touched == most) {
            return touched;
          }
        }
      }
    }
    return touched;
  }

  private static long key(long i, long j) {
    return i * 100_003 + j;
  }

  private static long cell(double value) {
    return (long) Math.floor(Math.max(-200, Math.min(2000, value)) / CELL);
  }

  /** Whether two convex areas or segments touch: no line separates them. */
  public static boolean touch(List<Vec2> a, List<Vec2> b) {
    return new PaperShape(a, false).touches(new PaperShape(b, false));
  }
}
