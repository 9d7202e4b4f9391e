package org.seamledger.quantity.layout;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;

/** A stretch of a line u = constant inside a region, from {@code low} to {@code high} up the slope. */
public record Span(double low, double high) {

  /**
   * The stretches of u = {@code at} that have the region on both sides, from the lowest up. Where an edge of the region runs along the
   * line, only what lies inside on both its sides counts.
   *
   * @param tolerance how far to each side the region is looked at
   */
  static List<Span> inside(List<Region.Ring> rings, double at, double tolerance) {
    List<Span> left = crossing(rings, at - tolerance);
    List<Span> right = crossing(rings, at + tolerance);
    List<Span> both = new ArrayList<>();
    int i = 0;
    int j = 0;
    while (i < left.size() && j < right.size()) {
      Span a = left.get(i);
      Span b = right.get(j);
      double low = joined(a.low, b.low, Math.max(a.low, b.low), tolerance);
      double high = joined(a.high, b.high, Math.min(a.high, b.high), tolerance);
      if (high - low > tolerance) {
        both.add(new Span(low, high));
      }
      if (a.high < b.high) {
        i++;
      } else {
        j++;
      }
    }
    return both;
  }

  /** Ends that one oblique edge makes on both sides meet in the middle; ends that lie apart are a step in the outline. */
  private static double joined(double left, double right, double inner, double tolerance) {
    return Math.abs(left - right) <= 50 * tolerance ? (left + right) / 2 : inner;
  }

  private static List<Span> crossing(List<Region.Ring> rings, double at) {
    List<Double> heights = new ArrayList<>();
    for (Region.Ring ring : rings) {
      List<Vec2> points = ring.points();
      for (int i = 0; i < points.size(); i++) {
        Vec2 p = points.get(i);
        Vec2 q = points.get((i + 1) % points.size());
        // Half-open, so that a corner on the line counts once.
        if (p.u() <= at != q.u() <= at) {
          heights.add(p.towards(q, (at - p.u()) / (q.u() - p.u())).v());
        }
      }
    }
    heights.sort(null);
    List<Span> spans = new ArrayList<>();
    for (int i = 0; i + 1 < heights.size(); i += 2) {
      spans.add(new Span(heights.get(i), heights.get(i + 1)));
    }
    return spans;
  }
}
