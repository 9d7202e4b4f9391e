package org.seamledger.export.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.drainage.Catchment;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.takeoff.Takeoff;

/**
 * Where the water goes, on a plan: one arrow for all that goes from a face to one place, and lines along which water runs, wider for more.
 */
final class PlanWater {

  /** Millimetres on paper: the widest, and the shortest arrow that can be read. */
  private static final double WIDEST = 1.2;
  private static final double NARROWEST = 0.2;
  private static final double SHORTEST = 4;
  private static final double HEAD = 1.8;
  private static final int MOST = 400;
  /** Square metres: less has no arrow. */
  private static final double LEAST = 0.05;

  private final Takeoff takeoff;
  private final PlanView view;
  private final Svg svg = new Svg();

  private PlanWater(Takeoff takeoff, PlanView view) {
    this.takeoff = takeoff;
    this.view = view;
  }

  static Svg draw(Takeoff takeoff, PlanView view) {
    PlanWater water = new PlanWater(takeoff, view);
    water.lines();
    water.arrows();
    return water.svg;
  }

  /** Sums over the parts of a face whose water goes to one place: area, and moments of its middle and of its low edge's middle. */
  private static final class Flow {
    double area;
    Vec3 middle = Vec3.ZERO;
    Vec3 low = Vec3.ZERO;

    void add(Catchment c) {
      List<Vec3> ring = c.outline();
      double twice = 0;
      Vec3 sum = Vec3.ZERO;
      for (int i = 0; i < ring.size(); i++) {
        Vec3 next = ring.get((i + 1) % ring.size());
        twice += ring.get(i).x() * next.y() - next.x() * ring.get(i).y();
        sum = sum.plus(ring.get(i));
      }
      double a = Math.abs(twice) / 2;
      area += a;
      middle = middle.plus(sum.times(a / ring.size()));
      low = low.plus(ring.get(0).plus(ring.get(1)).times(a / 2));
    }
  }

  private void arrows() {
    Map<String, Flow> flows = new TreeMap<>();
    takeoff.drainage().catchments().forEach(c -> flows.computeIfAbsent(c.face() + " " + c.to(), k -> new Flow()).add(c));
    double most = flows.values().stream().mapToDouble(f -> f.area).max().orElse(1);
    flows.values().stream().filter(f -> f.area >= LEAST).sorted(Comparator.comparingDouble(f -> -f.area)).limit(MOST).forEach(f -> {
      Vec2 from = view.paper(f.middle.times(1 / f.area));
      Vec2 to = from.towards(view.paper(f.low.times(1 / f.area)), 0.85);
      if (from.distance(to) >= SHORTEST) {
        arrow(from, to, width(f.area, most));
      }
    });
  }

  /** Twice as wide is four times the water. */
  private static double width(double area, double most) {
    return Math.max(NARROWEST, WIDEST * Math.sqrt(area / most));
  }

  private void lines() {
    Map<String, Double> amounts = new TreeMap<>();
    takeoff.drainage().arriving()
        .forEach((id, from) -> amounts.put(id, from.values().stream().mapToDouble(Double::doubleValue).sum()));
    double most = amounts.values().stream().mapToDouble(Double::doubleValue).max().orElse(1);
    for (DetailedJunction d : takeoff.detailed()) {
      double amount = amounts.getOrDefault(d.junction().junction().id(), 0.0);
      Kind.Water water = d.junction().type().water();
      if (amount > 0 && (water == Kind.Water.ALONG || water == Kind.Water.INTO)) {
        along(d.junction().junction().path(), width(amount, most));
      }
    }
  }

  /** Beside the line, not on it: its colour says what seals it. */
  private void along(List<Vec3> path, double wide) {
    List<Vec3> down = new ArrayList<>(path);
    if (path.get(0).z() < path.get(path.size() - 1).z()) {
      java.util.Collections.reverse(down);
    }
    Vec2 from = view.paper(down.get(0));
    Vec2 to = view.paper(down.get(down.size() - 1));
    double length = from.distance(to);
    if (length >= SHORTEST) {
      Vec2 beside = to.minus(from).times(1 / length).left().times(1.1);
      arrow(from.towards(to, 0.2).plus(beside), from.towards(to, 0.9).plus(beside), wide);
    }
  }

  private void arrow(Vec2 from, Vec2 to, double wide) {
    double length = from.distance(to);
    Vec2 u = to.minus(from).times(1 / length);
    Vec2 side = u.left().times(HEAD / 3);
    Vec2 neck = to.minus(u.times(HEAD));
    svg.empty("path", "class", "water", "stroke-width", Svg.number(wide), "d",
        "M" + Svg.points(List.of(from, to)) + " M" + Svg.points(List.of(neck.plus(side), to, neck.minus(side))));
  }
}
